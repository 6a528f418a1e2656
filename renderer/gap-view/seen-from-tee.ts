import type { PlainHoleMap } from '../../backend/api/contract/hole-map.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';
import { groundHeight_m } from '../frame/ground-height.ts';

/** A direction from the thrower's eye: degrees right of the basket, degrees above level. */
export type Sight = readonly [right_deg: number, up_deg: number];
type SeenThing = Readonly<{
  kind: 'crown' | 'trunk' | 'wood' | 'solid' | 'ceiling' | 'gap' | 'out';
  away_m: number;
  /** Outline, closed. */
  outline: readonly Sight[];
}>;
export type SeenFromTee = Readonly<{
  things: readonly SeenThing[];
  flight: readonly Sight[];
  basket: Sight;
  ground: readonly Sight[];
}>;

/** Eye height of an adult, common practice: the height the release height and sight lines of the hole report use. */
const EYE_m = 1.6;
const NEAREST_m = 1.5;
const FARTHEST_m = 220;
const OPEN_TOP_m = 40;
const HALF_FIELD_deg = 42;

/** What the thrower sees from the tee towards the basket, in degrees, farthest first. */
export function seenFromTee(map: PlainHoleMap, drawing: ShotDrawing | null): SeenFromTee {
  const straight_deg = bearingOf(map.basket);
  const sight = (at: LocalPoint, z_m: number): Sight => {
    const away = Math.max(NEAREST_m, Math.hypot(at[0], at[1]));
    return [wrap(bearingOf(at) - straight_deg), (Math.atan2(z_m - EYE_m, away) * 180) / Math.PI];
  };
  const ground = (at: LocalPoint) => groundHeight_m(map.terrain, at);
  const inField = (at: LocalPoint) =>
    Math.hypot(at[0], at[1]) < FARTHEST_m && Math.abs(wrap(bearingOf(at) - straight_deg)) < HALF_FIELD_deg + 15;
  const things: SeenThing[] = [];
  for (const tree of map.trees) {
    if (!inField(tree.at)) continue;
    const away_m = Math.hypot(tree.at[0], tree.at[1]);
    if (away_m < NEAREST_m) continue;
    const foot = ground(tree.at);
    things.push(
      box('trunk', sight(tree.at, foot), sight(tree.at, foot + tree.crownBase_m), tree.trunkRadius_m, away_m),
    );
    things.push(
      oval(sight(tree.at, foot + tree.crownBase_m), sight(tree.at, foot + tree.height_m), tree.crownRadius_m, away_m),
    );
  }
  const curtains = [
    ...map.covers.map(c => ({
      kind: c.form === 'wood' || c.form === 'scrub' || c.form === 'treeRow' ? ('wood' as const) : ('solid' as const),
      polygons: c.polygons,
      low_m: c.base_m,
      high_m: c.height_m,
    })),
    ...map.ceilings.map(c => ({
      kind: 'ceiling' as const,
      polygons: c.polygons,
      low_m: c.clearance_m,
      high_m: c.top_m ?? OPEN_TOP_m,
    })),
  ];
  for (const { kind, polygons, low_m, high_m } of curtains)
    for (const [ring] of polygons) {
      if (ring === undefined) continue;
      for (let i = 1; i < ring.length; i++)
        for (const [a, b] of pieces(ring[i - 1]!, ring[i]!)) {
          if (!inField(a) || !inField(b)) continue;
          things.push({
            kind,
            away_m: Math.hypot((a[0] + b[0]) / 2, (a[1] + b[1]) / 2),
            outline: [
              sight(a, ground(a) + low_m),
              sight(b, ground(b) + low_m),
              sight(b, ground(b) + high_m),
              sight(a, ground(a) + high_m),
            ],
          });
        }
    }
  for (const {
    posts: [a, b],
    low_m,
    high_m,
  } of map.gaps) {
    if (!inField(a) && !inField(b)) continue;
    const top = high_m ?? OPEN_TOP_m;
    things.push({
      kind: 'gap',
      away_m: Math.hypot((a[0] + b[0]) / 2, (a[1] + b[1]) / 2),
      outline: [
        sight(a, ground(a) + low_m),
        sight(b, ground(b) + low_m),
        sight(b, ground(b) + top),
        sight(a, ground(a) + top),
      ],
    });
  }
  things.sort((a, b) => b.away_m - a.away_m);
  const skyline: Sight[] = [];
  for (let right = -HALF_FIELD_deg; right <= HALF_FIELD_deg; right += 2) {
    const bearing = ((right + straight_deg) * Math.PI) / 180;
    let up = -90;
    for (let away = 5; away <= FARTHEST_m; away += 5) {
      const at: LocalPoint = [away * Math.sin(bearing), away * Math.cos(bearing)];
      up = Math.max(up, sight(at, ground(at))[1]);
    }
    skyline.push([right, up]);
  }
  return {
    things,
    flight: (drawing?.path ?? []).filter(([e, n]) => Math.hypot(e, n) > NEAREST_m).map(([e, n, z]) => sight([e, n], z)),
    basket: sight(map.basket, ground(map.basket) + 1),
    ground: skyline,
  };
}

const bearingOf = ([east, north]: LocalPoint): number => (Math.atan2(east, north) * 180) / Math.PI;
const wrap = (deg: number): number => ((((deg + 180) % 360) + 360) % 360) - 180;
const halfAngle = (radius_m: number, away_m: number) =>
  (Math.atan2(radius_m, Math.max(radius_m, away_m)) * 180) / Math.PI;

function box(kind: SeenThing['kind'], low: Sight, high: Sight, radius_m: number, away_m: number): SeenThing {
  const half = Math.max(0.08, halfAngle(radius_m, away_m));
  return {
    kind,
    away_m,
    outline: [
      [low[0] - half, low[1]],
      [low[0] + half, low[1]],
      [high[0] + half, high[1]],
      [high[0] - half, high[1]],
    ],
  };
}

function oval(low: Sight, high: Sight, radius_m: number, away_m: number): SeenThing {
  const half = halfAngle(radius_m, away_m);
  const [middle, tall] = [(low[1] + high[1]) / 2, (high[1] - low[1]) / 2];
  return {
    kind: 'crown',
    away_m,
    outline: Array.from({ length: 20 }, (_, i) => {
      const turn = (i / 20) * 2 * Math.PI;
      return [low[0] + half * Math.cos(turn), middle + tall * Math.sin(turn)] as const;
    }),
  };
}

/** An edge cut into pieces of at most 6 m, so that a long one bends as it does to the eye. */
function pieces(a: LocalPoint, b: LocalPoint): [LocalPoint, LocalPoint][] {
  const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 6));
  const at = (i: number): LocalPoint => [a[0] + ((b[0] - a[0]) * i) / count, a[1] + ((b[1] - a[1]) * i) / count];
  return Array.from({ length: count }, (_, i) => [at(i), at(i + 1)]);
}
