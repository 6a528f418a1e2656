import { atStation } from './along-line.ts';
import type { HoleMap, LocalCover, LocalPoint } from './hole-map.ts';
import type { HoleReport } from './hole-report.ts';
import { stretchesInside } from './line-crossings.ts';
import { distance_m, lineLength_m } from './line-length.ts';
import { groundHeight } from './terrain.ts';

const EYE_m = 1.6;
/** People and discs on a landing area are seen when this much above its ground is. */
const TARGET_m = 0.5;
/** A sight line through stems is lost when fewer than this share of it would get through. */
const LEAST_SHARE_SEEN = 0.5;
/** Leaves hide what lies behind this much of them. */
const MOST_CROWN_m = 3;
const STEP_m = 0.5;

/** Landing areas (at bends, at the basket) that cannot be seen from the tee: over the ground, or through what stands there. */
export function findBlindSpots(map: HoleMap, bends: HoleReport['bends']): HoleReport['blindSpots'] {
  const targets = [
    ...bends.map(({ station_m }) => ({ target: 'bend' as const, station_m })),
    { target: 'basket' as const, station_m: lineLength_m(map.line) },
  ];
  return targets.flatMap(({ target, station_m }) => {
    const block = firstBlock(map, atStation(map.line, station_m).point);
    return block === undefined ? [] : [{ target, station_m, ...block }];
  });
}

function firstBlock(map: HoleMap, target: LocalPoint): { blockedAt_m: number; blockedBy: string } | undefined {
  const tee = map.line[0]!;
  const sight_m = distance_m(tee, target);
  if (sight_m < 1) return undefined;
  const ground = (p: LocalPoint): number => groundHeight(map.terrain, p[0], p[1]);
  const [eye_m, target_m] = [ground(tee) + EYE_m, ground(target) + TARGET_m];
  const pointAt = (s: number): LocalPoint => [
    tee[0] + ((target[0] - tee[0]) * s) / sight_m,
    tee[1] + ((target[1] - tee[1]) * s) / sight_m,
  ];
  const aboveGround_m = (s: number): number => eye_m + ((target_m - eye_m) * s) / sight_m - ground(pointAt(s));
  const blocks: { blockedAt_m: number; blockedBy: string }[] = [];
  if (map.terrain.known)
    for (let s = STEP_m; s < sight_m; s += STEP_m)
      if (aboveGround_m(s) < 0) {
        blocks.push({ blockedAt_m: s, blockedBy: 'the ground' });
        break;
      }
  for (const cover of map.covers) {
    const blockedAt_m = blockedBy(cover, stretchesInside([tee, target], cover.polygons), aboveGround_m);
    if (blockedAt_m !== undefined) blocks.push({ blockedAt_m, blockedBy: `${cover.form}: ${cover.source}` });
  }
  return blocks.sort((a, b) => a.blockedAt_m - b.blockedAt_m)[0];
}

function blockedBy(
  cover: LocalCover,
  stretches: readonly Readonly<{ from_m: number; to_m: number }>[],
  aboveGround_m: (s: number) => number,
): number | undefined {
  const isSolid =
    cover.form === 'wall' || cover.form === 'building' || cover.form === 'hedge' || cover.form === 'fence';
  let [crown_m, stems_m] = [0, 0];
  for (const { from_m, to_m } of stretches) {
    const steps = Math.max(1, Math.ceil((to_m - from_m) / STEP_m));
    for (let k = 0; k < steps; k++) {
      const s = from_m + ((k + 0.5) * (to_m - from_m)) / steps;
      const z = aboveGround_m(s);
      if (z >= cover.base_m && z < cover.height_m) {
        if (isSolid) return s;
        crown_m += (to_m - from_m) / steps;
      } else if (z < cover.base_m) stems_m += (to_m - from_m) / steps;
      if (crown_m > MOST_CROWN_m || (1 - cover.density) ** (stems_m / 10) < LEAST_SHARE_SEEN) return s;
    }
  }
  return undefined;
}
