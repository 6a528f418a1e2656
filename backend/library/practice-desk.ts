import type { Course } from '../../core/course/course.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { Checked, Output } from '../api/contract/api.ts';
import type { PracticeState } from '../api/contract/practice.ts';
import type { PlanningDesk } from '../planning/planning-desk.ts';
import { findPractice, type PracticeFound, type PracticeRequest } from '../practice/find-practice.ts';
import type { Store } from '../store/open-store.ts';
import type { CourseBook } from './course-book.ts';
import { lru } from './lru.ts';
import type { PlayerBook } from './player-book.ts';
import { askedDay } from './ready-round.ts';

/** Each holds the maps of its holes: some megabytes. */
const KEPT_IN_MEMORY = 6;

/** Looks for practice rounds in the background, one at a time. */
export type PracticeDesk = Readonly<{
  start(input: Checked<'startPractice'>): Result<Output<'startPractice'>>;
  get(practiceId: string): Result<PracticeState>;
  /** What the sheet is made from. */
  found(practiceId: string): Result<PracticeFound>;
  cancel(practiceId: string): boolean;
  /** Stops what runs; resolves when it has. */
  close(): Promise<void>;
}>;

type Job = { state: PracticeState; found: PracticeFound | null; readonly stop: AbortController; ended: Promise<void> };
type Parts = Readonly<{ store: Store; courses: CourseBook; players: PlayerBook; threads: PlanningDesk }>;

export function practiceDesk({ store, courses, players, threads }: Parts): PracticeDesk {
  const jobs = lru<Job>(KEPT_IN_MEMORY);
  let current: Job | null = null;

  function start(input: Checked<'startPractice'>): Result<Output<'startPractice'>> {
    const { practiceId, playerId, courseIds } = input;
    if (jobs.get(practiceId) !== undefined)
      return refused('practiceId', 'was given to a search before: make a new one');
    const ids = courseIds ?? store.tables.courses.where().map(row => row.courseId);
    const day = askedDay(input.day);
    const file = players.get(playerId);
    const read = ids.map(courseId => ({ courseId, course: courses.get(courseId) }));
    const problems: Problem[] = [day, file, ...read.map(({ course }) => course)].flatMap(part =>
      part.ok ? [] : part.problems,
    );
    if (!day.ok || !file.ok || problems.length > 0) return { ok: false, problems };
    if (ids.length === 0) return refused('courseIds', 'the library holds no course: import one first');
    current?.stop.abort();
    const { limit, holes, rounds, compare, seed } = input;
    const ready = { file: file.value, day: day.value, limit, holes, rounds, compare, seed };
    const known = read.flatMap(({ courseId, course }) => (course.ok ? [{ key: courseId, course: course.value }] : []));
    const job: Job = { state: begun(known), found: null, stop: new AbortController(), ended: Promise.resolve() };
    jobs.set(practiceId, job);
    current = job;
    job.ended = look(job, playerId, { ...ready, courses: known });
    return { ok: true, value: { courses: ids.length } };
  }

  async function look(job: Job, playerId: string, request: Omit<PracticeRequest, 'player'>): Promise<void> {
    const { signal } = job.stop;
    const end = (state: Partial<PracticeState> & Pick<PracticeState, 'state'>) => {
      job.state = { ...job.state, ...state };
    };
    try {
      const player = await players.fitted(playerId);
      signal.throwIfAborted();
      if (!player.ok) return end({ state: 'failed', problems: [...player.problems] });
      const found = await findPractice(
        { ...request, player: player.value },
        {
          threads,
          signal,
          onProgress: progress => {
            job.state = { ...job.state, ...progress };
          },
        },
      );
      if (!found.ok) return end({ state: 'failed', problems: [...found.problems] });
      job.found = found.value;
      end({ state: 'done', report: found.value.report });
    } catch (error) {
      if (signal.aborted) return end({ state: 'cancelled' });
      const why = error instanceof Error ? error.message : String(error);
      end({ state: 'failed', problems: [{ path: 'practice', message: `could not be worked out: ${why}` }] });
    }
  }

  return {
    start,
    get: practiceId => {
      const job = jobs.get(practiceId);
      return job === undefined ? notKept : { ok: true, value: job.state };
    },
    found: practiceId => {
      const job = jobs.get(practiceId);
      if (job === undefined) return notKept;
      if (job.found === null) return refused('practiceId', 'is not done: wait for it, or look again');
      return { ok: true, value: job.found };
    },
    cancel: practiceId => {
      const job = jobs.get(practiceId);
      if (job?.state.state !== 'running') return false;
      job.stop.abort();
      return true;
    },
    close: async () => {
      current?.stop.abort();
      await current?.ended;
    },
  };
}

function begun(courses: readonly Readonly<{ course: Course }>[]): PracticeState {
  const total = courses.reduce((sum, { course }) => sum + course.holes.length, 0);
  return { state: 'running', stage: 'looking', done: 0, total, what: '', report: null, problems: [] };
}

const notKept: Result<never> = {
  ok: false,
  problems: [{ path: 'practiceId', message: 'is no search that is kept: look again' }],
};

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
