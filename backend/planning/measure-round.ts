import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import { askable, type MeasureNext, measureNext } from '../../core/strategy/measure-next.ts';
import type { HoleMeasuring } from '../../core/strategy/measuring-hole.ts';
import type { Result } from '../../core/units/result.ts';
import type { MeasureTask } from './measure-task.ts';
import { type PlanOptions, type PlanRequest, refuseRound, roundSetting } from './plan-round.ts';
import { libraryKey, type RoundSetting } from './plan-task.ts';

/** Throws of the imagined session, and imagined results of it. */
const SESSION_THROWS = 10;
const RESULTS = 24;
/** A thread with its libraries takes some 250 MB. */
const MOST_THREADS = 4;

export type MeasureRequest = Pick<PlanRequest, 'course' | 'player' | 'day' | 'limits' | 'holes' | 'seed'> &
  Readonly<{
    /** Of the session; 10 when left out. */
    throws?: number;
  }>;

/**
 * Which disc to measure next for a round.
 * @returns the answer, or problems with path `holes` or `limits`
 * @throws {DOMException} AbortError, soon after `signal`; {Error} when a thread fails
 */
export async function measureRound(request: MeasureRequest, options: PlanOptions = {}): Promise<Result<MeasureNext>> {
  const { course, holes, throws = SESSION_THROWS } = request;
  const refusal = refuseRound(request);
  if (refusal !== undefined) return refusal;
  const all = course.holes.map(hole => buildHoleMap(course, hole));
  const maps = all.filter(map => holes === undefined || holes.includes(map.ref));
  const round = roundSetting(request, all);
  return { ok: true, value: await measureMaps(course.name, () => round, maps, throws, options) };
}

/**
 * Plans holes and asks of each what a session of every disc would be worth, on worker threads, longest hole first.
 * @param throws - of the session
 * @throws {DOMException} AbortError, soon after `options.signal`; {Error} when a thread fails
 */
export async function measureMaps(
  course: string,
  roundOf: (map: HoleMap) => RoundSetting,
  maps: readonly HoleMap[],
  throws: number,
  { onProgress, signal, threads = Math.min(MOST_THREADS, availableParallelism()) }: PlanOptions = {},
): Promise<MeasureNext> {
  const [first] = maps;
  if (first === undefined) throw new RangeError('maps must hold at least one hole, got none');
  const { player, limits, seed } = roundOf(first);
  const question = { throws, draws: RESULTS, seed };
  const throwIndices = askable(player, limits);
  signal?.throwIfAborted();
  const lanes = Math.max(1, Math.min(threads, maps.length));
  const pool = new Tinypool({
    filename: new URL('./measure-worker.ts', import.meta.url).href,
    runtime: 'worker_threads',
    minThreads: lanes,
    maxThreads: lanes,
  });
  const answers: HoleMeasuring[] = [];
  let done = 0;
  try {
    const longestFirst = maps
      .map((map, index) => ({ map, index }))
      .sort((a, b) => lineLength_m(b.map.line) - lineLength_m(a.map.line) || a.index - b.index);
    await Promise.all(
      longestFirst.map(async ({ map, index }) => {
        const round = roundOf(map);
        const task: MeasureTask = { map, round, libraryKey: libraryKey(round), throwIndices, question };
        answers[index] = (await pool.run(task, signal === undefined ? {} : { signal })) as HoleMeasuring;
        done++;
        onProgress?.({ done, total: maps.length, ref: map.ref });
      }),
    );
  } finally {
    await pool.destroy();
  }
  return measureNext(course, player, answers, question);
}
