import type { Feature, Geometry, Position } from 'geojson';
import type { Problem, Result } from '../../units/result.ts';
import { atStation } from '../along-line.ts';
import type { LocalPoint } from '../hole-map.ts';
import { localFrame, toLonLat } from '../local-frame.ts';
import { ringBeside } from './beside-line.ts';
import { checkWalkedHole } from './check-walked-hole.ts';
import { metresPerDistance, metresPerSize, type WalkedHole } from './walked-hole-input.ts';

/** A branch met while walking is taken to reach so far along the line, and so far to both sides together (assumed). */
const CEILING_m = { deep: 2, wide: 10 } as const;
/** Water or ground across the line is drawn this far to each side (assumed). */
const ACROSS_HALF_m = 20;
/** Ground behind the basket is drawn this deep and wide (assumed). */
const BEYOND_m = { deep: 30, wide: 60 } as const;

export type WalkedFeatures = Readonly<{
  /** Tee, basket and line of play first. */
  features: readonly Feature[];
  /** What was assumed in drawing them, in words. */
  notes: readonly string[];
}>;

/**
 * A hole from paced or taped numbers, as features of a course file that give these numbers back in `describeHole`.
 * @param start - of the tee, degrees; null: nowhere yet, the hole is drawn at `madeUp` and marked `placed=no`
 * @param madeUp - where to draw a hole that has no place
 * @returns the features, or problems with paths as in the input
 */
export function walkHole(
  hole: WalkedHole,
  start: readonly [lon_deg: number, lat_deg: number] | null,
  madeUp: readonly [lon_deg: number, lat_deg: number],
): Result<WalkedFeatures> {
  const problems = checkWalkedHole(hole);
  const at = start ?? madeUp;
  if (Math.abs(at[1]) > 85)
    problems.push({ path: 'start', message: 'lies too near a pole: a course between 85° south and north is expected' });
  if (problems.length > 0) return { ok: false, problems };
  const perDistance_m = metresPerDistance(hole.distances);
  const perSize_m = metresPerSize(hole.sizes);
  const frame = localFrame(at[0], at[1]);
  // A tenth of a millimetre.
  const position = (point: LocalPoint): Position => toLonLat(frame, point).map(degrees => Number(degrees.toFixed(9)));
  const size = (value: number): number => Number((value * perSize_m).toFixed(3));
  const line = lineOf(hole, perDistance_m);
  const source = sourceOf(hole);
  const make = (geometry: Geometry, tags: Readonly<Record<string, string | number | undefined>>): Feature => ({
    type: 'Feature',
    properties: { ...Object.fromEntries(Object.entries(tags).filter(([, value]) => value !== undefined)), source },
    geometry,
  });
  const point = (p: LocalPoint): Geometry => ({ type: 'Point', coordinates: position(p) });
  const area = (ring: readonly LocalPoint[]): Geometry => ({ type: 'Polygon', coordinates: [ring.map(position)] });
  const { ref } = hole;
  const length_m = hole.length * perDistance_m;
  const tee_m = hole.teeHeight === undefined ? 0 : size(hole.teeHeight);
  const isHigh = hole.rise !== undefined || hole.teeHeight !== undefined;

  const features: Feature[] = [
    make(
      { type: 'LineString', coordinates: line.map(position) },
      {
        disc_golf: 'hole',
        ref,
        name: hole.name === '' ? undefined : hole.name,
        par: hole.par,
        placed: start === null ? 'no' : undefined,
      },
    ),
    make(point(line[0]!), { disc_golf: 'tee', ref, ele: isHigh ? tee_m : undefined }),
    make(point(line.at(-1)!), {
      disc_golf: 'basket',
      ref,
      ele: hole.rise === undefined ? undefined : Number((tee_m + size(hole.rise)).toFixed(3)),
    }),
  ];
  for (const { at, deep, clearance, top } of hole.ceilings) {
    const half_m = (deep === undefined ? CEILING_m.deep : size(deep)) / 2;
    const middle_m = at * perDistance_m;
    const [from_m, to_m] = [Math.max(0, middle_m - half_m), Math.min(length_m, middle_m + half_m)];
    const ring = across(line, from_m, to_m, CEILING_m.wide / 2);
    features.push(
      make(area(ring), {
        obstacle: 'ceiling',
        min_height: size(clearance),
        height: top === undefined ? undefined : size(top),
      }),
    );
  }
  for (const { at, width, low, high } of hole.gaps) {
    const station = onLine(line, at * perDistance_m, length_m);
    const posts = [1, -1].map(side => aside(station, (side * width * perSize_m) / 2));
    features.push(
      make(
        { type: 'LineString', coordinates: posts.map(position) },
        {
          obstacle: 'gap',
          min_height: low === undefined ? undefined : size(low),
          height: high === undefined ? undefined : size(high),
        },
      ),
    );
  }
  for (const tree of hole.trees) {
    const sign = tree.side === 'left' ? 1 : -1;
    const place = aside(onLine(line, tree.at * perDistance_m, length_m), sign * tree.aside * perDistance_m);
    features.push(
      make(point(place), {
        natural: 'tree',
        height: tree.height === undefined ? undefined : size(tree.height),
        diameter_crown: tree.crown === undefined ? undefined : size(tree.crown),
        min_height: tree.branches === undefined ? undefined : size(tree.branches),
      }),
    );
  }
  const rooms: Problem[] = [];
  for (const [i, { what, side, from = 0, to = 0, away = 0 }] of hole.out.entries()) {
    const [from_m, to_m, away_m] = [from * perDistance_m, to * perDistance_m, away * perDistance_m];
    const ring =
      side === 'beyond'
        ? beyond(line, length_m, away_m)
        : side === 'across'
          ? across(line, from_m, to_m, ACROSS_HALF_m)
          : ringBeside(line, from_m, to_m, away_m, side === 'left' ? 1 : -1);
    if (ring === undefined)
      rooms.push({
        path: `out[${i}].away`,
        message: `the inside of the bend has no room for an edge ${away} from the line: end it before the bend, or bring it nearer`,
      });
    else
      features.push(
        make(
          area(ring),
          what === 'water'
            ? { natural: 'water', out_of_bounds: 'yes', name: 'water', ref }
            : { disc_golf: 'out_of_bounds', ref },
        ),
      );
  }
  if (rooms.length > 0) return { ok: false, problems: rooms };
  return { ok: true, value: { features, notes: notesOf(hole, start === null, length_m) } };
}

function lineOf({ bends, length, bearing_deg }: WalkedHole, perDistance_m: number): LocalPoint[] {
  const line: LocalPoint[] = [[0, 0]];
  let [bearing, walked] = [(bearing_deg * Math.PI) / 180, 0];
  for (const { at, turn_deg } of [...bends, { at: length, turn_deg: 0 }]) {
    const [x, y] = line.at(-1)!;
    const leg_m = (at - walked) * perDistance_m;
    line.push([x + leg_m * Math.sin(bearing), y + leg_m * Math.cos(bearing)]);
    bearing += (turn_deg * Math.PI) / 180;
    walked = at;
  }
  return line;
}

type Place = Readonly<{ point: LocalPoint; along: LocalPoint }>;

/** At the basket the last leg's direction counts, not one past it. */
const onLine = (line: readonly LocalPoint[], station_m: number, length_m: number): Place =>
  atStation(line, Math.min(station_m, length_m * (1 - 1e-12)));

const aside = ({ point, along }: Place, left_m: number): LocalPoint => [
  point[0] - along[1] * left_m,
  point[1] + along[0] * left_m,
];

/** A ring over the line between two stations, its ends square to it; a bend between them is cut straight. */
function across(line: readonly LocalPoint[], from_m: number, to_m: number, half_m: number): LocalPoint[] {
  const [a, b] = [atStation(line, from_m), atStation(line, to_m - 1e-9)];
  const ring = [aside(a, half_m), aside(a, -half_m), aside(b, -half_m), aside(b, half_m)];
  return [...ring, ring[0]!];
}

function beyond(line: readonly LocalPoint[], length_m: number, away_m: number): LocalPoint[] {
  const { point, along } = onLine(line, length_m, length_m);
  const on = (ahead_m: number): Place => ({
    along,
    point: [point[0] + along[0] * ahead_m, point[1] + along[1] * ahead_m],
  });
  const half_m = BEYOND_m.wide / 2;
  const [near, far] = [on(away_m), on(away_m + BEYOND_m.deep)];
  const ring = [aside(near, half_m), aside(near, -half_m), aside(far, -half_m), aside(far, half_m)];
  return [...ring, ring[0]!];
}

function sourceOf({ distances }: WalkedHole): string {
  return distances.unit === 'paces' ? `paced, ${distances.pace_m} m a pace` : 'taped';
}

function notesOf(hole: WalkedHole, isNowhere: boolean, length_m: number): string[] {
  const { distances } = hole;
  return [
    ...(distances.unit === 'paces'
      ? [
          `${hole.length} paces of ${distances.pace_m} m are ${length_m.toFixed(0)} m: paces stray, and so do these lengths`,
        ]
      : []),
    ...(isNowhere
      ? ['the hole has no place on the map: its lengths and directions hold, its place does not (placed=no)']
      : []),
    ...(hole.rise !== undefined && hole.teeHeight === undefined
      ? ['the height of the tee above sea level is not given: heights are counted from the tee']
      : []),
    ...(hole.ceilings.some(({ deep }) => deep === undefined)
      ? [`low branches are drawn ${CEILING_m.deep} m deep`]
      : []),
    ...(hole.ceilings.length > 0
      ? [`low branches are drawn ${CEILING_m.wide} m wide, ${CEILING_m.wide / 2} m to each side of the line`]
      : []),
    ...(hole.ceilings.some(({ top }) => top === undefined)
      ? ['branches without a top are closed above: nothing is thrown over them']
      : []),
    ...(hole.out.length > 0
      ? ['out-of-bounds is drawn with straight edges, and as deep as there is room, up to 30 m']
      : []),
  ];
}
