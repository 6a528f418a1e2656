import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { Tinypool } from 'tinypool';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import type { OwnBest, PracticeHole } from '../../core/practice/practice-hole.ts';
import type { RoundHole } from '../../core/review/round-file.ts';
import type { Attitude } from '../../core/strategy/attitude.ts';
import type { AskedShot } from '../../core/strategy/evaluate-shot.ts';
import type { HoleOptions } from '../../core/strategy/push-round.ts';
import { YOUNG_GENERATION_MB } from './plan-round.ts';
import {
  holeKey,
  libraryKey,
  type OwnBestTask,
  type PracticeTask,
  type QuickTask,
  type ReviewAnswer,
  type ReviewTask,
  type RoundSetting,
  type ShotAnswer,
  type ShotTask,
  solvedKey,
  type WindowAnswer,
  type WindowHole,
  type WindowTask,
} from './plan-task.ts';
import { withSharedDay } from './shared-day.ts';

/** A thread with twelve solved holes takes some 150 MB; the flights are shared. */
const MOST_THREADS = 4;

/** In this order when several wait: what the eye is on comes first. */
const RANK = { shot: 0, fit: 1, holeInView: 2, hole: 3, review: 4, headStart: 5 } as const;

type RoundJob = Readonly<{
  maps: readonly HoleMap[];
  /** What a hole is planned in: the wind may change over the round. */
  roundOf: (map: HoleMap) => RoundSetting;
  /** The hole in view, planned first. */
  focusRef?: string | undefined;
  signal: AbortSignal;
  /** Also look what other winds would choose: each hole then comes twice, first without. */
  flips: boolean;
  /** Options also for who takes a risk, to allot a target with. */
  risks?: boolean;
  attitudeOf: (map: HoleMap) => Attitude | undefined;
  onHole: (hole: WindowHole) => void;
}>;

/**
 * Keeps threads warm between questions: each remembers the throws of the day and the holes it solved last, and is given the
 * questions that fit what it remembers. Answers do not depend on the number of threads.
 */
export type PlanningDesk = Readonly<{
  /**
   * Resolves when all holes are planned, with each hole's choices by ref, to allot a target with.
   * @throws {DOMException} AbortError, soon after `signal`; {Error} when a thread fails
   */
  plan(job: RoundJob): Promise<ReadonlyMap<string, HoleOptions>>;
  /** A first answer within some hundredths of a second. @returns null when the hole is not solved for any wind */
  quick(
    map: HoleMap,
    round: RoundSetting,
    signal: AbortSignal,
    attitude?: Attitude | undefined,
  ): Promise<WindowHole | null>;
  /** @returns null when the player has no such disc from that hand */
  evaluate(map: HoleMap, round: RoundSetting, shot: AskedShot, against?: AskedShot): Promise<ShotAnswer | null>;
  /**
   * Judges a hole as it was thrown, in the round's wind; with what `staying` costs there.
   * @throws {DOMException} AbortError, soon after `signal`
   */
  review(
    map: HoleMap,
    round: RoundSetting,
    hole: RoundHole,
    signal: AbortSignal,
    staying?: AskedShot,
  ): Promise<ReviewAnswer>;
  /**
   * Plans a hole under a practice limit and plays it over and over.
   * @throws {DOMException} AbortError, soon after `signal`
   */
  practice(
    map: HoleMap,
    round: RoundSetting,
    how: Pick<PracticeTask, 'shapes' | 'plays' | 'rounds'>,
    signal: AbortSignal,
  ): Promise<PracticeHole>;
  /** The best tee shot of a hole, to measure a limit against. */
  ownBest(map: HoleMap, round: RoundSetting, signal: AbortSignal): Promise<OwnBest>;
  fit(file: PlayerFile): Promise<FittedPlayer>;
  /**
   * Solves a hole when nothing else is to be done, so that questions about it are answered at once. The newest only: one
   * that still waits is dropped.
   * @throws {DOMException} AbortError when it is dropped
   */
  headStart(map: HoleMap, round: RoundSetting): Promise<void>;
  close(): Promise<void>;
}>;

type Job = Readonly<{
  rank: number;
  task: 'windowTask' | 'shotTask' | 'quickTask' | 'reviewTask' | 'practiceTask' | 'ownBestTask' | 'fitTask';
  message: unknown;
  transferList?: readonly MessagePort[];
  libraryKey?: string;
  solvedKey?: string;
  holeKey?: string;
  settle: (answer: Promise<unknown>) => void;
}>;
type Lane = { readonly pool: Tinypool; busy: boolean; libraryKey: string; solved: readonly Solved[] };
type Solved = Readonly<{ solvedKey: string; holeKey: string }>;

/** As many as a worker keeps solved. */
const KEPT_SOLVED = 12;

const WORKER = new URL('./plan-worker.ts', import.meta.url);

/** @param options.worker - the file the threads run, where it does not stand beside this one (a bundle) */
export function openPlanningDesk(options: Readonly<{ threads?: number; worker?: URL }> = {}): PlanningDesk {
  const { threads = Math.min(MOST_THREADS, availableParallelism()), worker = WORKER } = options;
  const lanes: Lane[] = [];
  const waiting = new Set<Job>();
  let closed = false;
  let lastHeadStart = new AbortController();

  /** Threads start when there is work for them: opening the app does not wait for them. */
  function freeLanes(): Lane[] {
    if (lanes.length < threads && lanes.every(({ busy }) => busy))
      lanes.push({
        // a thread that waits on an atomic never comes to its event loop, so what it was handed would never be let go (1.3 MB a plan)
        pool: new Tinypool({
          filename: worker.href,
          runtime: 'worker_threads',
          minThreads: 1,
          maxThreads: 1,
          useAtomics: false,
          resourceLimits: { maxYoungGenerationSizeMb: YOUNG_GENERATION_MB },
        }),
        busy: false,
        libraryKey: '',
        solved: [],
      });
    return lanes.filter(({ busy }) => !busy);
  }

  function next(): void {
    while (waiting.size > 0 && !closed) {
      const free = freeLanes();
      if (free.length === 0) return;
      for (const job of waiting)
        if (!lanes.some(lane => canAnswer(lane, job)) && job.task === 'quickTask') {
          // Its lane has forgotten the hole meanwhile.
          waiting.delete(job);
          job.settle(Promise.resolve(null));
        }
      const pairs = [...waiting].flatMap(job =>
        free.filter(lane => canAnswer(lane, job)).map(lane => ({ job, lane, fit: fitness(lane, job) })),
      );
      if (pairs.length === 0) return;
      const { job, lane } = pairs.reduce((best, pair) =>
        pair.job.rank < best.job.rank || (pair.job.rank === best.job.rank && pair.fit > best.fit) ? pair : best,
      );
      waiting.delete(job);
      void run(lane, job);
    }
  }

  async function run(lane: Lane, job: Job): Promise<void> {
    lane.busy = true;
    if (job.libraryKey !== undefined) lane.libraryKey = job.libraryKey;
    const { solvedKey, holeKey } = job;
    if (solvedKey !== undefined && holeKey !== undefined)
      lane.solved = [...lane.solved.filter(hole => hole.solvedKey !== solvedKey), { solvedKey, holeKey }].slice(
        -KEPT_SOLVED,
      );
    const { message, task: name, transferList = [] } = job;
    const round = (message as Readonly<{ round?: RoundSetting }>).round;
    // in a function of its own: what goes wrong before the thread has it must reach the asker too
    const ask = async (): Promise<unknown> => {
      const sent = round === undefined ? message : withSharedDay({ ...(message as object), round });
      return lane.pool.run(sent, { name, transferList: [...transferList] });
    };
    const answer = ask();
    job.settle(answer);
    try {
      await answer;
    } catch {
      // The asker hears of it; a thread that died was replaced and remembers nothing.
      lane.libraryKey = '';
      lane.solved = [];
    }
    lane.busy = false;
    next();
  }

  /** @throws what the thread throws; AbortError at once when `signal` says so, also while a thread is still at it */
  function ask(job: Omit<Job, 'settle'>, signal?: AbortSignal): Promise<unknown> {
    return new Promise((resolve, reject) => {
      if (closed) {
        reject(new Error('the planning threads are closed'));
        return;
      }
      signal?.throwIfAborted();
      const waitingJob: Job = { ...job, settle: answer => answer.then(resolve, reject) };
      signal?.addEventListener(
        'abort',
        () => {
          waiting.delete(waitingJob);
          reject(signal.reason);
        },
        { once: true },
      );
      waiting.add(waitingJob);
      next();
    });
  }

  return {
    plan: async ({ maps, roundOf, focusRef, signal, flips, risks, attitudeOf, onHole }) => {
      const stop = stopFor(signal);
      const options = new Map<string, HoleOptions>();
      const take = ({ plan, drawing, options: own }: WindowAnswer) => {
        options.set(plan.ref, own);
        if (!signal.aborted) onHole({ plan, drawing });
      };
      await Promise.all(
        inOrder(maps, focusRef).map(async map => {
          const attitude = attitudeOf(map);
          const round = roundOf(map);
          const keys = keysOf(map, round, attitude);
          const { port1: here, port2: early } = new MessageChannel();
          here.on('message', take);
          const message: WindowTask = { map, round, ...keys, stop, flips, early, risks, ...(attitude && { attitude }) };
          const rank = map.ref === focusRef ? RANK.holeInView : RANK.hole;
          const job = { rank, task: 'windowTask', message, transferList: [early], ...keys } as const;
          try {
            take((await ask(job, signal)) as WindowAnswer);
          } finally {
            // What was said early is the same without the other winds: it must not come after them.
            here.close();
          }
        }),
      );
      return options;
    },
    evaluate: async (map, round, shot, against) => {
      const keys = keysOf(map, round);
      const message: ShotTask = { map, round, ...keys, stop: neverStopped(), shot, ...(against && { against }) };
      return (await ask({ rank: RANK.shot, task: 'shotTask', message, ...keys })) as ShotAnswer | null;
    },
    quick: async (map, round, signal, attitude) => {
      const hole = holeKey(map, round);
      if (!lanes.some(({ solved }) => solved.some(one => one.holeKey === hole))) return null;
      const message: QuickTask = { holeKey: hole, day: round.day, attitude };
      return (await ask({ rank: RANK.shot, task: 'quickTask', message, holeKey: hole }, signal)) as WindowHole | null;
    },
    review: async (map, round, hole, signal, staying) => {
      const stop = stopFor(signal);
      const keys = keysOf(map, round);
      const message: ReviewTask = { map, round, ...keys, stop, hole, ...(staying && { staying }) };
      const answer = await ask({ rank: RANK.review, task: 'reviewTask', message, ...keys }, signal);
      return answer as ReviewAnswer;
    },
    practice: async (map, round, how, signal) => {
      const message: PracticeTask = { map, round, libraryKey: libraryKey(round), stop: stopFor(signal), ...how };
      const job = { rank: RANK.hole, task: 'practiceTask', message, libraryKey: message.libraryKey } as const;
      return (await ask(job, signal)) as PracticeHole;
    },
    ownBest: async (map, round, signal) => {
      const message: OwnBestTask = { map, round, libraryKey: libraryKey(round), stop: stopFor(signal) };
      const job = { rank: RANK.hole, task: 'ownBestTask', message, libraryKey: message.libraryKey } as const;
      return (await ask(job, signal)) as OwnBest;
    },
    fit: async file => (await ask({ rank: RANK.fit, task: 'fitTask', message: file })) as FittedPlayer,
    headStart: async (map, round) => {
      lastHeadStart.abort();
      lastHeadStart = new AbortController();
      const { signal } = lastHeadStart;
      const keys = keysOf(map, round);
      const message: WindowTask = { map, round, ...keys, stop: neverStopped(), flips: false };
      await ask({ rank: RANK.headStart, task: 'windowTask', message, ...keys }, signal);
    },
    close: async () => {
      closed = true;
      for (const job of waiting) job.settle(Promise.reject(new Error('the planning threads are closed')));
      waiting.clear();
      await Promise.all(lanes.map(({ pool }) => pool.destroy()));
    },
  };
}

/** What a thread knows a hole of a round by. */
function keysOf(map: HoleMap, round: RoundSetting, attitude?: Attitude) {
  return { libraryKey: libraryKey(round), solvedKey: solvedKey(map, round, attitude), holeKey: holeKey(map, round) };
}

function neverStopped(): Int32Array {
  return new Int32Array(new SharedArrayBuffer(4));
}

/** A flag that threads see: 1 once the signal aborts. @throws {DOMException} AbortError when it did already */
function stopFor(signal: AbortSignal): Int32Array {
  signal.throwIfAborted();
  const stop = neverStopped();
  signal.addEventListener('abort', () => Atomics.store(stop, 0, 1), { once: true });
  return stop;
}

/** A first answer comes from a lane that has solved the hole; anything else from any. */
function canAnswer(lane: Lane, { task, holeKey }: Job): boolean {
  return task !== 'quickTask' || lane.solved.some(hole => hole.holeKey === holeKey);
}

/** How much of the job's work the lane has done already. */
function fitness(lane: Lane, job: Job): number {
  if (lane.solved.some(({ solvedKey }) => solvedKey === job.solvedKey)) return 2;
  return job.libraryKey !== undefined && lane.libraryKey === job.libraryKey ? 1 : 0;
}

/** The hole in view, then on through the round from there: what the player is likely to look at next. */
function inOrder(maps: readonly HoleMap[], focusRef: string | undefined): readonly HoleMap[] {
  const at = Math.max(
    0,
    maps.findIndex(({ ref }) => ref === focusRef),
  );
  return [...maps.slice(at), ...maps.slice(0, at)];
}
