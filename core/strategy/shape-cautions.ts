import type { HoleMap, LocalPoint } from '../geometry/hole-map.ts';
import type { Candidate, Table } from './choose-shot.ts';
import { rollCautions } from './hole-cautions.ts';
import type { Lie } from './march.ts';
import { specialCautions } from './special-words.ts';

const NO_ROWS = new Float64Array(0);

/**
 * What the shapes of the recommended throws ask to be careful about: a roller also where it runs past people's ways.
 * @param later - shapes of the throws that may follow
 */
export function shapeCautions(
  map: HoleMap,
  table: Pick<Table, 'thrower'>,
  best: Candidate,
  lie: Lie,
  later: readonly string[],
): string[] {
  const { shape } = best.shot;
  return [
    ...specialCautions([shape, ...later]),
    ...(shape === 'roller' ? rollCautions(map, trackOf(table, best, lie)) : []),
  ];
}

/** Ground under the middle of a throw, hand to rest, nothing in its way. */
function trackOf({ thrower }: Pick<Table, 'thrower'>, { shot, aim_deg }: Candidate, lie: Lie): LocalPoint[] {
  thrower.prepare(shot, lie, aim_deg);
  thrower.throwOnce(NO_ROWS, -1);
  const path = thrower.path();
  const [sin, cos] = [Math.sin((aim_deg * Math.PI) / 180), Math.cos((aim_deg * Math.PI) / 180)];
  return Array.from({ length: path.length / 3 }, (_, i): LocalPoint => {
    const [along, left] = [path[3 * i], path[3 * i + 1]];
    return [lie.east_m + sin * along - cos * left, lie.north_m + cos * along + sin * left];
  });
}
