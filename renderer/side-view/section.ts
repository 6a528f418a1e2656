import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import { groundHeight_m } from '../frame/ground-height.ts';
import type { HoleAxes } from '../frame/hole-axes.ts';
import { isInside } from '../frame/inside.ts';
import { type TrackPoint, trackOf, trackToBasket } from '../frame/track.ts';

/** Along the hole, and metres above the tee's ground. */
export type SidePoint = readonly [along_m: number, z_m: number];
/** Something over a stretch of the way, from `low_m` to `high_m` above the tee's ground at each station; null: no upper end. */
type SideBlock = Readonly<{
  kind: 'wood' | 'ceiling' | 'solid';
  top: readonly SidePoint[] | null;
  bottom: readonly SidePoint[];
  what: string;
}>;
type SideTree = Readonly<{
  along_m: number;
  halfWidth_m: number;
  ground_m: number;
  base_m: number;
  top_m: number;
  trunk_m: number;
  /** The flight's own way goes under or through its crown; else it stands beside. */
  over: boolean;
}>;
type SideWindow = Readonly<{ along_m: number; low_m: number; high_m: number | null }>;
type TightPlace = Readonly<{ along_m: number; flight_m: number; free_m: number; margin_m: number }>;

export type Section = Readonly<{
  ground: readonly SidePoint[];
  flight: readonly SidePoint[];
  band: readonly Readonly<{ along_m: number; low_m: number; high_m: number }>[];
  blocks: readonly SideBlock[];
  trees: readonly SideTree[];
  windows: readonly SideWindow[];
  out: readonly (readonly SidePoint[])[];
  basket: SidePoint;
  tightest: TightPlace | null;
}>;

const STEP_m = 0.5;
/** Trees this far off the way are still drawn, pale. */
const BESIDE_m = 8;
const RELEASE_LEFT_m = 3;

/**
 * The hole cut open along the way the disc flies, then on to the basket, seen from the side. Stations are laid on the
 * line tee to basket, which the map above shares.
 */
export function sectionOf(map: PlainHoleMap, axes: HoleAxes, drawing: ShotDrawing | null): Section {
  const track = drawing === null ? [] : trackOf(drawing.path, STEP_m);
  const way = track.length === 0 ? straightWay(map.basket) : trackToBasket(track, map.basket, STEP_m);
  const along = way.map(point => axes.toHole(point)[0]);
  const ground = way.map(point => groundHeight_m(map.terrain, point));
  const blocks = blocksOver(map, way, along, ground);
  const trees = treesBy(map, way, along, ground);
  return {
    ground: way.map((_, i) => [along[i]!, ground[i]!]),
    flight: track.map(point => [axes.toHole(point.at)[0], point.z_m]),
    band: drawing === null ? [] : bandOf(drawing, axes),
    blocks,
    trees,
    windows: windowsOn(map, way, along, ground),
    out: stretches(way, point => isInside(point, polygonsOf(map.outOfBounds))).map(([from, to]) =>
      way.slice(from, to + 1).map((_, i) => [along[from + i]!, ground[from + i]!] as const),
    ),
    basket: [axes.toHole(map.basket)[0], groundHeight_m(map.terrain, map.basket)],
    tightest: tightestOn(map, track, axes),
  };
}

const polygonsOf = (areas: PlainHoleMap['outOfBounds']) => areas.flatMap(area => area.polygons);

function straightWay(basket: LocalPoint): LocalPoint[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(basket[0], basket[1]) / STEP_m));
  return Array.from({ length: steps + 1 }, (_, i) => [(basket[0] * i) / steps, (basket[1] * i) / steps] as const);
}

/** Index ranges of the way for which the test holds. */
function stretches(way: readonly LocalPoint[], holds: (point: LocalPoint) => boolean): [from: number, to: number][] {
  const found: [number, number][] = [];
  way.forEach((point, i) => {
    if (!holds(point)) return;
    const last = found.at(-1);
    if (last !== undefined && last[1] === i - 1) last[1] = i;
    else found.push([i, i]);
  });
  return found;
}

/** Heights of the flights lie along the aim; the middle flight says where along the hole that is. */
function bandOf(drawing: ShotDrawing, axes: HoleAxes): Section['band'] {
  const ends = drawing.path;
  const first = ends[0]!;
  const heading = ends.find(([e, n]) => Math.hypot(e - first[0], n - first[1]) > 1) ?? ends.at(-1)!;
  const run = Math.hypot(heading[0] - first[0], heading[1] - first[1]) || 1;
  const aim: LocalPoint = [(heading[0] - first[0]) / run, (heading[1] - first[1]) / run];
  const onAim = ends.map(([e, n]) => e * aim[0] + n * aim[1]);
  let i = 1;
  return drawing.heights.map(({ along_m, low_m, high_m }) => {
    while (i < ends.length - 1 && onAim[i]! < along_m) i++;
    const [a, b] = [onAim[i - 1]!, onAim[i]!];
    const f = b > a ? Math.min(1.5, Math.max(0, (along_m - a) / (b - a))) : 0;
    const [pe, pn] = ends[i - 1]!;
    const [qe, qn] = ends[i]!;
    return { along_m: axes.toHole([pe + f * (qe - pe), pn + f * (qn - pn)])[0], low_m, high_m };
  });
}

function blocksOver(
  map: PlainHoleMap,
  way: readonly LocalPoint[],
  along: readonly number[],
  ground: readonly number[],
): SideBlock[] {
  const block = (
    kind: SideBlock['kind'],
    what: string,
    base_m: number,
    top_m: number | null,
    range: [number, number],
  ) => {
    const stations = way.slice(range[0], range[1] + 1).map((_, i) => range[0] + i);
    return {
      kind,
      what,
      bottom: stations.map(i => [along[i]!, ground[i]! + base_m] as const),
      top: top_m === null ? null : stations.map(i => [along[i]!, ground[i]! + top_m] as const),
    };
  };
  const covers = map.covers.flatMap(cover =>
    stretches(way, point => isInside(point, cover.polygons)).flatMap(range => {
      const leafy = cover.form === 'wood' || cover.form === 'scrub' || cover.form === 'treeRow';
      return [block(leafy ? 'wood' : 'solid', cover.form, cover.base_m, cover.height_m, range)];
    }),
  );
  const ceilings = map.ceilings.flatMap(ceiling =>
    stretches(way, point => isInside(point, ceiling.polygons)).map(range =>
      block('ceiling', 'low branches', ceiling.clearance_m, ceiling.top_m, range),
    ),
  );
  return [...covers, ...ceilings];
}

function treesBy(
  map: PlainHoleMap,
  way: readonly LocalPoint[],
  along: readonly number[],
  ground: readonly number[],
): SideTree[] {
  return map.trees.flatMap(tree => {
    let nearest = 0;
    let off_m = Number.POSITIVE_INFINITY;
    way.forEach((point, i) => {
      const d = Math.hypot(point[0] - tree.at[0], point[1] - tree.at[1]);
      if (d < off_m) [off_m, nearest] = [d, i];
    });
    if (off_m > tree.crownRadius_m + BESIDE_m) return [];
    const over = off_m < tree.crownRadius_m;
    const ground_m = ground[nearest]!;
    return [
      {
        along_m: along[nearest]!,
        halfWidth_m: over ? Math.sqrt(tree.crownRadius_m ** 2 - off_m ** 2) : tree.crownRadius_m,
        ground_m,
        base_m: ground_m + tree.crownBase_m,
        top_m: ground_m + tree.height_m,
        trunk_m: tree.trunkRadius_m * 2,
        over,
      },
    ];
  });
}

function windowsOn(
  map: PlainHoleMap,
  way: readonly LocalPoint[],
  along: readonly number[],
  ground: readonly number[],
): SideWindow[] {
  return map.gaps.flatMap(({ posts: [a, b], low_m, high_m }) => {
    for (let i = 1; i < way.length; i++)
      if (isCrossing(way[i - 1]!, way[i]!, a, b))
        return [
          { along_m: along[i]!, low_m: ground[i]! + low_m, high_m: high_m === null ? null : ground[i]! + high_m },
        ];
    return [];
  });
}

function isCrossing(p: LocalPoint, q: LocalPoint, a: LocalPoint, b: LocalPoint): boolean {
  const turn = (u: LocalPoint, v: LocalPoint, w: LocalPoint) =>
    (v[0] - u[0]) * (w[1] - u[1]) - (v[1] - u[1]) * (w[0] - u[0]);
  return turn(a, b, p) > 0 !== turn(a, b, q) > 0 && turn(p, q, a) > 0 !== turn(p, q, b) > 0;
}

/** Where the middle flight has the least room under what hangs over its way. */
function tightestOn(map: PlainHoleMap, track: readonly TrackPoint[], axes: HoleAxes): TightPlace | null {
  let worst: TightPlace | null = null;
  const lowest = (at: LocalPoint, flight_m: number): number => {
    let free = Number.POSITIVE_INFINITY;
    for (const tree of map.trees)
      if (Math.hypot(at[0] - tree.at[0], at[1] - tree.at[1]) < tree.crownRadius_m && flight_m < tree.height_m)
        free = Math.min(free, tree.crownBase_m);
    for (const cover of map.covers)
      if (cover.base_m > 0 && flight_m < cover.height_m && isInside(at, cover.polygons))
        free = Math.min(free, cover.base_m);
    for (const ceiling of map.ceilings)
      if (flight_m < (ceiling.top_m ?? Number.POSITIVE_INFINITY) && isInside(at, ceiling.polygons))
        free = Math.min(free, ceiling.clearance_m);
    return free;
  };
  for (const { at, z_m } of track) {
    if (Math.hypot(at[0], at[1]) < RELEASE_LEFT_m) continue;
    const ground_m = groundHeight_m(map.terrain, at);
    const free = lowest(at, z_m - ground_m);
    const margin_m = free - (z_m - ground_m);
    if (Number.isFinite(margin_m) && (worst === null || margin_m < worst.margin_m))
      worst = { along_m: axes.toHole(at)[0], flight_m: z_m, free_m: ground_m + free, margin_m };
  }
  return worst;
}
