import type { Result } from '../../core/units/result.ts';
import type { Checked, Output } from '../api/contract/api.ts';
import type { MeasuringState } from '../api/contract/measuring.ts';
import { measureMaps } from '../planning/measure-round.ts';
import type { CourseBook } from './course-book.ts';
import { lru } from './lru.ts';
import type { PlayerBook } from './player-book.ts';
import { type ReadyRound, readyRound } from './ready-round.ts';

const KEPT = 8;

/** Questions which disc to measure next, one under way at a time; answers are kept in memory. */
export type MeasureDesk = Readonly<{
  start(input: Checked<'startMeasuring'>): Promise<Result<Output<'startMeasuring'>>>;
  get(measuringId: string): Result<MeasuringState>;
  cancel(measuringId: string): boolean;
  /** Stops what is under way; resolves when its threads have ended. */
  close(): Promise<void>;
}>;

type Running = Readonly<{ measuringId: string; stop: AbortController; ended: Promise<void> }>;

export function measureDesk(parts: Readonly<{ courses: CourseBook; players: PlayerBook }>): MeasureDesk {
  const states = lru<MeasuringState>(KEPT);
  let running: Running | null = null;

  function update(measuringId: string, change: Partial<MeasuringState>): void {
    const state = states.get(measuringId);
    if (state !== undefined) states.set(measuringId, { ...state, ...change });
  }

  async function start({
    measuringId,
    throws,
    ...asked
  }: Checked<'startMeasuring'>): Promise<Result<Output<'startMeasuring'>>> {
    if (states.get(measuringId) !== undefined) return refused('measuringId', 'was given to a question before');
    const ready = await readyRound(parts, asked);
    if (!ready.ok) return ready;
    running?.stop.abort();
    const total = ready.value.maps.length;
    states.set(measuringId, { state: 'running', done: 0, total, answer: null, problems: [] });
    const stop = new AbortController();
    running = { measuringId, stop, ended: make(measuringId, ready.value, throws, stop.signal) };
    return { ok: true, value: { total } };
  }

  async function make(
    measuringId: string,
    { request, roundOf, maps }: ReadyRound,
    throws: number,
    signal: AbortSignal,
  ): Promise<void> {
    try {
      const answer = await measureMaps(request.course.name, roundOf, maps, throws, {
        signal,
        onProgress: ({ done }) => update(measuringId, { done }),
      });
      update(measuringId, { state: 'done', answer });
    } catch (error) {
      if (signal.aborted) return update(measuringId, { state: 'cancelled' });
      const why = error instanceof Error ? error.message : String(error);
      update(measuringId, {
        state: 'failed',
        problems: [{ path: 'measuring', message: `could not be worked out: ${why}` }],
      });
    } finally {
      if (running?.measuringId === measuringId) running = null;
    }
  }

  return {
    start,
    get: measuringId => {
      const state = states.get(measuringId);
      return state === undefined
        ? refused('measuringId', 'is no question that is kept: ask it anew')
        : { ok: true, value: state };
    },
    cancel: measuringId => {
      if (running?.measuringId !== measuringId) return false;
      running.stop.abort();
      return true;
    },
    close: async () => {
      running?.stop.abort();
      await running?.ended;
    },
  };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
