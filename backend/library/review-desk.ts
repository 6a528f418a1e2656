import { createHash } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { type ReviewReport, ReviewReportSchema } from '../../core/review/review-report.ts';
import { isFinished, type RoundFile } from '../../core/review/round-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { ReviewState } from '../api/contract/rounds.ts';
import type { PlanningDesk } from '../planning/planning-desk.ts';
import { type ReviewRequest, reviewRound, reviewSteps } from '../planning/review-round.ts';
import type { Store } from '../store/open-store.ts';
import type { CourseBook } from './course-book.ts';
import { lru } from './lru.ts';
import type { PlayerBook } from './player-book.ts';
import { readyReview } from './ready-review.ts';
import type { RoundBook } from './round-book.ts';

const KEPT_DIGESTS = 16;

/** Reviews in the making and made. */
export type ReviewDesk = Readonly<{
  /** @returns how many steps it takes; one that still holds takes none */
  start(roundId: string): Result<number>;
  cancel(roundId: string): boolean;
  get(roundId: string): Result<ReviewState>;
  /** The last report made of the round, and whether it still holds. */
  report(roundId: string): Readonly<{ report: ReviewReport; isOlder: boolean }> | undefined;
  /** Whether there is a report, and whether it is of the round as it stands; costs little. */
  standing(roundId: string): 'no' | 'yes' | 'older';
  /** Stops what is being made; resolves when nothing writes any more. */
  close(): Promise<void>;
}>;

type Parts = Readonly<{
  store: Store;
  courses: CourseBook;
  players: PlayerBook;
  rounds: RoundBook;
  threads: PlanningDesk;
  /** Told when a review was made. */
  onMade: () => void;
  version: string;
  now_ms: () => number;
}>;
type Job = { done: number; total: number; stop: AbortController; ended: Promise<void> };
type Ending = Readonly<{ state: 'failed' | 'cancelled'; problems: readonly Problem[] }>;

export function reviewDesk(parts: Parts): ReviewDesk {
  const { store, rounds, threads, onMade, version, now_ms } = parts;
  const running = new Map<string, Job>();
  const endings = new Map<string, Ending>();

  const digests = lru<string>(KEPT_DIGESTS);

  /** Of a course's or player's file: long, and the same for many rounds. */
  function digestOf(text: string | undefined): string {
    if (text === undefined) return '';
    const known = digests.get(text) ?? digest(text);
    digests.set(text, known);
    return known;
  }

  /** Everything a report depends on. */
  function keyOf(roundId: string): string {
    const row = store.tables.rounds.get({ roundId });
    if (row === undefined) return '';
    const { courseId, playerId } = row;
    const course = store.tables.courses.get({ courseId });
    const text = digestOf(store.tables.courseFiles.get({ courseId })?.text);
    const ground = store.tables.grounds.get({ courseId })?.digest;
    const player = digestOf(store.tables.players.get({ playerId })?.file);
    return digest(JSON.stringify([version, course?.name, text, ground, player, row.file]));
  }

  function standing(roundId: string): 'no' | 'yes' | 'older' {
    const key = store.reviews.key(roundId);
    if (key === undefined) return 'no';
    return key === keyOf(roundId) ? 'yes' : 'older';
  }

  function report(roundId: string) {
    const row = store.reviews.get(roundId);
    if (row === undefined) return undefined;
    const read = ReviewReportSchema.safeParse(JSON.parse(row.report));
    // One of another version of the app, with other fields, is made anew.
    return read.success ? { report: read.data, isOlder: row.reviewKey !== keyOf(roundId) } : undefined;
  }

  function start(roundId: string): Result<number> {
    const entry = rounds.get(roundId);
    if (!entry.ok) return entry;
    const { round } = entry.value;
    if (!round.holes.some(isFinished))
      return refused('roundId', 'has no finished hole yet: enter a hole until it is holed out');
    const before = running.get(roundId);
    if (before !== undefined) return { ok: true, value: before.total };
    if (report(roundId)?.isOlder === false) return { ok: true, value: 0 };
    const total = reviewSteps(round, isInTwoWinds(round));
    const job: Job = { done: 0, total, stop: new AbortController(), ended: Promise.resolve() };
    endings.delete(roundId);
    running.set(roundId, job);
    job.ended = make(roundId, job);
    return { ok: true, value: total };
  }

  async function make(roundId: string, job: Job): Promise<void> {
    const { signal } = job.stop;
    const end = (ending: Ending) => endings.set(roundId, ending);
    try {
      await setImmediate();
      const reviewKey = keyOf(roundId);
      const request = await readyReview(parts, roundId);
      signal.throwIfAborted();
      if (!request.ok) end({ state: 'failed', problems: request.problems });
      else await keep(roundId, reviewKey, request.value, job);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      end(
        signal.aborted
          ? { state: 'cancelled', problems: [] }
          : { state: 'failed', problems: [{ path: 'review', message: `could not be made: ${why}` }] },
      );
      // Its other holes are of no use now.
      job.stop.abort();
    } finally {
      running.delete(roundId);
    }
  }

  async function keep(roundId: string, reviewKey: string, request: ReviewRequest, job: Job): Promise<void> {
    const made = await reviewRound(threads, request, {
      signal: job.stop.signal,
      onProgress: done => {
        job.done = done;
      },
    });
    store.reviews.put({ roundId, reviewKey, madeAt_ms: now_ms(), report: JSON.stringify(made) });
    running.delete(roundId);
    onMade();
  }

  return {
    standing,
    start,
    cancel: roundId => {
      const job = running.get(roundId);
      job?.stop.abort();
      return job !== undefined;
    },
    get: roundId => {
      const entry = rounds.get(roundId);
      if (!entry.ok) return entry;
      const job = running.get(roundId);
      const made = report(roundId);
      const ending = endings.get(roundId);
      return {
        ok: true,
        value: {
          roundId,
          state: job !== undefined ? 'running' : (ending?.state ?? (made === undefined ? 'none' : 'done')),
          done: job?.done ?? 0,
          total: job?.total ?? reviewSteps(entry.value.round, isInTwoWinds(entry.value.round)),
          report: made?.report ?? null,
          isOlder: made?.isOlder ?? false,
          problems: (ending?.problems ?? []).map(({ path, message }) => ({ path, message })),
        },
      };
    },
    report,
    close: async () => {
      const jobs = [...running.values()];
      for (const { stop } of jobs) stop.abort();
      await Promise.all(jobs.map(({ ended }) => ended));
    },
  };
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');

export const isInTwoWinds = ({ day, realDay }: Pick<RoundFile, 'day' | 'realDay'>): boolean =>
  realDay !== undefined && JSON.stringify(realDay) !== JSON.stringify(day ?? {});

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
