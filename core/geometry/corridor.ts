import { atStation } from './along-line.ts';
import { boundingBox, boxesMeet } from './bounding-box.ts';
import type { HoleMap, LocalCover, LocalPoint, LocalTree } from './hole-map.ts';
import { crossingShare } from './line-crossings.ts';
import { lineLength_m } from './line-length.ts';
import { isInPolygon } from './point-in-polygon.ts';

/** A throw leaves the hand and passes its gaps between these heights above the ground. */
const BAND_m = { low: 1, high: 3 } as const;
/** Nothing farther to the side than this is an edge of the corridor. */
const REACH_m = 30;
const STEP_m = 0.5;
/** Two trees this much before and after each other still make one gap. */
const STAGGER_m = 1.5;

/** What stands at one side: how far from the line, where, and what it is. */
export type Edge = Readonly<{ away_m: number; at: LocalPoint; source: string }>;
/** The free corridor at a station; a side is undefined when open to 30 m, `isBlocked` when the line itself is not free. */
export type CorridorSample = Readonly<{ station_m: number; isBlocked: boolean; left?: Edge; right?: Edge }>;

/**
 * Free corridor along the line of play: every half metre, square to the line, to what stands in the band of 1–3 m above the
 * ground: covers (stems count), low crowns, trunks.
 */
export function corridorAlong(map: HoleMap): CorridorSample[] {
  const length_m = lineLength_m(map.line);
  const steps = Math.max(1, Math.ceil(length_m / STEP_m));
  const near = boundingBox(map.line, REACH_m);
  const covers = map.covers.filter(
    cover => cover.height_m > BAND_m.low && (cover.base_m < BAND_m.high || cover.density > 0),
  );
  const polygons = covers.flatMap(cover =>
    cover.polygons
      .map(polygon => ({ polygon, box: boundingBox(polygon[0] ?? []), cover }))
      .filter(({ box }) => boxesMeet(box, near)),
  );
  const trees = map.trees.filter(
    tree => tree.height_m > BAND_m.low && boxesMeet(boundingBox([tree.at], tree.crownRadius_m), near),
  );
  return Array.from({ length: steps + 1 }, (_, k) => {
    const station_m = (length_m * k) / steps;
    // The last sample looks along the last leg, not past it.
    const { point, along } = atStation(map.line, Math.min(station_m, length_m * (1 - 1e-12)));
    const here = boundingBox([point], REACH_m);
    return sample(
      station_m,
      point,
      along,
      polygons.filter(({ box }) => boxesMeet(box, here)),
      trees,
    );
  });
}

function sample(
  station_m: number,
  point: LocalPoint,
  along: LocalPoint,
  polygons: readonly Readonly<{ polygon: readonly (readonly LocalPoint[])[]; cover: LocalCover }>[],
  trees: readonly LocalTree[],
): CorridorSample {
  let left: Edge | undefined;
  let right: Edge | undefined;
  const offset = (left_m: number): LocalPoint => [point[0] - along[1] * left_m, point[1] + along[0] * left_m];
  const meet = (left_m: number, source: string): void => {
    const away_m = Math.abs(left_m);
    if (left_m > 0 && away_m < (left?.away_m ?? REACH_m)) left = { away_m, at: offset(left_m), source };
    if (left_m < 0 && away_m < (right?.away_m ?? REACH_m)) right = { away_m, at: offset(left_m), source };
  };
  for (const { at, crownRadius_m, crownBase_m, trunkRadius_m, source } of trees) {
    const radius_m = crownBase_m < BAND_m.high ? Math.max(crownRadius_m, trunkRadius_m) : trunkRadius_m;
    const [dx, dy] = [at[0] - point[0], at[1] - point[1]];
    const ahead_m = Math.max(0, Math.abs(dx * along[0] + dy * along[1]) - STAGGER_m);
    if (ahead_m >= radius_m) continue;
    const left_m = along[0] * dy - along[1] * dx;
    const half_m = Math.sqrt(radius_m ** 2 - ahead_m ** 2);
    if (Math.abs(left_m) <= half_m) return { station_m, isBlocked: true };
    meet(left_m > 0 ? left_m - half_m : left_m + half_m, source);
  }
  const [from, to] = [offset(REACH_m), offset(-REACH_m)];
  for (const { polygon, cover } of polygons) {
    if (isInPolygon(point, polygon)) return { station_m, isBlocked: true };
    for (const ring of polygon)
      for (let i = 1; i < ring.length; i++) {
        const share = crossingShare(from, to, ring[i - 1]!, ring[i]!);
        if (share !== undefined) meet(REACH_m * (1 - 2 * share), cover.source);
      }
  }
  return { station_m, isBlocked: false, ...(left && { left }), ...(right && { right }) };
}
