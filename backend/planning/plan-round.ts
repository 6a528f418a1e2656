import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import { dayCautions } from '../../core/air/cautions.ts';
import type { Day } from '../../core/air/day.ts';
import type { Course } from '../../core/course/course.ts';
import { buildHoleMap } from '../../core/geometry/build-hole-map.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import { type Attitude, costOf } from '../../core/strategy/attitude.ts';
import { chooseBag } from '../../core/strategy/choose-bag.ts';
import type { HolePlan, PlanReport } from '../../core/strategy/plan-report.ts';
import { type HoleOptions, type PushedRound, pushRound } from '../../core/strategy/push-round.ts';
import { roundOf } from '../../core/strategy/round-distribution.ts';
import { isAllowed, type Limits } from '../../core/strategy/shots.ts';
import type { Result } from '../../core/units/result.ts';
import { groundDrop_m } from './ground-drop.ts';
import { libraryKey, type PlanTask, type PlanWithOptions, type RoundSetting } from './plan-task.ts';
import { withSharedDay } from './shared-day.ts';
import type { HoleDay } from './wind-by-hole.ts';

/** What a thread makes is short-lived: more room for it costs memory (643 MB in all, not 503) and gains no time. */
export const YOUNG_GENERATION_MB = 6;

/** A hole's score strays by about this much (assumed, for the spread of a round before it is planned). */
const HOLE_SD = 0.6;

export type PlanRequest = Readonly<{
  course: Course;
  player: FittedPlayer;
  day: Day;
  /** Each hole's own air, by ref, where the wind changes over the round; the day's for all when left out. */
  dayByHole?: ReadonlyMap<string, HoleDay>;
  limits: Limits;
  /** Refs of the holes to plan, as the course spells them; all when left out. A hole's plan is the same either way. */
  holes?: readonly string[];
  seed: number;
  /** What the choices are for; the fewest expected throws when left out. */
  attitude?: AttitudeName;
  /** Throws for all the holes planned; only with `push`, which needs it. */
  target?: number;
  /** Also look what other winds would choose on each hole. */
  flips?: boolean;
  /** Carry the best so many discs only, the putting putters among them. */
  bag?: number;
}>;

export type AttitudeName = Attitude['kind'];

export type PlanProgress = Readonly<{ done: number; total: number /** The hole just planned. */; ref: string }>;

export type PlanOptions = Readonly<{
  onProgress?: (progress: PlanProgress) => void;
  /** Aborting stops the threads; the promise then rejects with an AbortError. */
  signal?: AbortSignal;
  /** Worker threads; as many as the machine runs at once when left out. The plan does not depend on it. */
  threads?: number;
}>;

/**
 * Plans the holes of a round on worker threads, longest hole first so that no thread ends up alone with it.
 * @returns the plan in course order, or problems with path `holes` or `limits`
 * @throws {Error} when the worker threads cannot be started, or a hole's planning fails unexpectedly
 */
export async function planRound(request: PlanRequest, options: PlanOptions = {}): Promise<Result<PlanReport>> {
  return request.bag === undefined ? planWithAll(request, options) : planWithBest(request, request.bag, options);
}

/** Plans with everything, picks the discs, and plans again with those only. */
async function planWithBest(request: PlanRequest, count: number, options: PlanOptions): Promise<Result<PlanReport>> {
  const { player } = request;
  const putting = new Set(player.throws.filter(fitted => fitted.role === 'putting').map(fitted => fitted.discId));
  if (count <= putting.size)
    return refused(
      'bag',
      `must leave room for discs to throw: ${putting.size} are kept for putting, so carry ${putting.size + 1} or more`,
    );
  const all = await planWithAll({ ...request, attitude: 'even', target: undefined, flips: false }, options);
  if (!all.ok) return all;
  const chosen = chooseBag(all.value.holes, count - putting.size);
  const limits: Limits = { ...request.limits, discIds: chosen.carried.map(disc => disc.discId) };
  const again = await planWithAll({ ...request, bag: undefined, limits }, options);
  if (!again.ok) return again;
  const bag = {
    ...chosen,
    carried: [...chosen.carried],
    expectedThrows: again.value.round.expectedThrows,
    expectedWithAll: all.value.round.expectedThrows,
  };
  return { ok: true, value: { ...again.value, bag } };
}

async function planWithAll(request: PlanRequest, options: PlanOptions): Promise<Result<PlanReport>> {
  const { course, holes } = request;
  const refusal = refuseRound(request);
  if (refusal !== undefined) return refusal;
  options.signal?.throwIfAborted();
  const count = holes?.length ?? course.holes.length;
  // the threads start while the maps are made
  const pool = startPool(Math.max(1, Math.min(options.threads ?? availableParallelism(), count)));
  try {
    return { ok: true, value: await planOn(pool, request, options) };
  } finally {
    await pool.destroy();
  }
}

async function planOn(pool: Tinypool, request: PlanRequest, options: PlanOptions): Promise<PlanReport> {
  const { course, holes } = request;
  const all = course.holes.map(hole => buildHoleMap(course, hole));
  const round = roundSetting(request, all);
  const maps = all.filter(map => holes === undefined || holes.includes(map.ref));
  const tasks = maps.map((map): PlanTask => {
    const own = { ...round, day: request.dayByHole?.get(map.ref)?.day ?? round.day };
    return {
      map,
      round: own,
      libraryKey: libraryKey(own),
      attitude: guarding(request, maps.length),
      flips: request.flips,
      bag: request.bag !== undefined,
    };
  });
  if (request.attitude === 'push') return planPush(pool, request, tasks, options);
  return reportOf(request, await runTasks<HolePlan>(pool, tasks, 'default', options));
}

/** What `guard` minimises; nothing for the other attitudes. */
export function guarding({ attitude }: PlanRequest, holes: number): Attitude | undefined {
  return attitude === 'guard' ? { kind: 'guard', roundSd: HOLE_SD * Math.sqrt(holes) } : undefined;
}

/** Plans every hole evenly, allots the target, and plans those holes again where the pace asks for another shot. */
async function planPush(
  pool: Tinypool,
  request: PlanRequest,
  tasks: readonly PlanTask[],
  options: PlanOptions,
): Promise<PlanReport> {
  const even = await runTasks<PlanWithOptions>(pool, tasks, 'optionsTask', options);
  const { pushed, attitudes } = allotTarget(
    even.map(hole => hole.options),
    request.target ?? 0,
  );
  const plans = even.map(hole => hole.plan);
  const changed = tasks.flatMap((task, i) => {
    const attitude = attitudes[i];
    return attitude === undefined ? [] : [{ i, task: { ...task, attitude } }];
  });
  const again = await runTasks<HolePlan>(
    pool,
    changed.map(({ task }) => task),
    'default',
    { ...options, onProgress: undefined },
  );
  changed.forEach(({ i }, k) => {
    const plan = again[k];
    if (plan !== undefined) plans[i] = plan;
  });
  return reportOf(request, plans, pushed);
}

/** Allots a round's target over its holes. @returns `attitudes`: for those holes where the pace asks for another shot */
export function allotTarget(holes: readonly HoleOptions[], target: number): AllottedTarget {
  const pushed = pushRound(holes, target);
  const attitudes = holes.map((options, i) => {
    const attitude: Attitude = { kind: 'push', after: pushed.after[i] ?? [] };
    const costs = options.map(scores => costOf(attitude, scores, meanScore(scores)));
    return costs.some(cost => cost < (costs[0] ?? 0) - 1e-9) ? attitude : undefined;
  });
  return { pushed, attitudes };
}

export type AllottedTarget = Readonly<{ pushed: PushedRound; attitudes: readonly (Attitude | undefined)[] }>;

function meanScore(scores: readonly number[]): number {
  return scores.reduce((sum, chance, i) => sum + chance * (i + 1), 0);
}

/** @returns why the round cannot be planned, with path `holes` or `limits` */
export function refuseRound({
  course,
  player,
  limits,
  holes,
  attitude,
  target,
}: PlanRequest): Result<never> | undefined {
  if (attitude === 'push' && target === undefined) return refused('target', 'needs a number of throws to finish in');
  if (attitude !== 'push' && target !== undefined) return refused('target', 'is only for the attitude push');
  const unknown = (holes ?? []).filter(ref => !course.holes.some(hole => hole.ref === ref));
  if (unknown.length > 0)
    return refused('holes', `the course has no hole ${unknown.join(', ')}: ${course.holes.map(h => h.ref).join(', ')}`);
  if (!player.throws.some(fitted => isAllowed(fitted, limits)))
    return refused('limits', nothingToThrow(player, limits));
  return undefined;
}

/** @param all - maps of all holes, also of those not asked for: the libraries then are the same, and so is each hole's plan */
export function roundSetting({ player, day, limits, seed }: PlanRequest, all: readonly HoleMap[]): RoundSetting {
  return { player, day, limits, drop_m: groundDrop_m(all), seed };
}

/** The report over all planned holes. */
export function reportOf(
  { course, player, day, dayByHole, seed, attitude = 'even', target }: PlanRequest,
  plans: readonly HolePlan[],
  pushed?: PushedRound,
): PlanReport {
  const round = roundOf([...plans]);
  return {
    schema: 'roundwright/plan@1',
    course: course.name,
    player: player.name,
    air: {
      density_kgpm3: day.density_kgpm3,
      windSpeed_mps: day.wind.speed_mps,
      windFrom_deg: day.wind.from_deg,
      gust_mps: day.wind.gust_mps,
      directionSpread_deg: day.wind.directionSpread_deg,
      source: day.source,
      notes: [...day.notes],
    },
    attitude,
    seed,
    holes: plans.map(plan => withOwnWind(plan, dayByHole?.get(plan.ref))),
    round:
      pushed === undefined || target === undefined
        ? round
        : { ...round, target: { throws: target, chance: pushed.chance, chanceEven: pushed.chanceEven } },
    cautions: cautionsOf([day, ...[...(dayByHole?.values() ?? [])].map(own => own.day)]),
    notes: [...player.notes],
  };
}

/** Everything any of the days asks to be careful about, each once. */
function cautionsOf(days: readonly Day[]): string[] {
  return [...new Set(days.flatMap(day => dayCautions(day).map(caution => caution.text)))];
}

/** A hole's plan with its own wind, where it has one. */
export function withOwnWind(plan: HolePlan, own: HoleDay | undefined): HolePlan {
  if (own === undefined) return plan;
  const { speed_mps, from_deg, gust_mps } = own.day.wind;
  return { ...plan, wind: { at: own.at, speed_mps, from_deg, gust_mps } };
}

/** Runs tasks on worker threads, longest hole first; answers in the order of the tasks. */
async function runTasks<Answer>(
  pool: Tinypool,
  tasks: readonly PlanTask[],
  name: 'default' | 'optionsTask',
  { onProgress, signal }: PlanOptions,
): Promise<Answer[]> {
  signal?.throwIfAborted();
  const longestFirst = tasks
    .map((task, index) => ({ task, index }))
    .sort((a, b) => lineLength_m(b.task.map.line) - lineLength_m(a.task.map.line) || a.index - b.index);
  const answers: Answer[] = [];
  let done = 0;
  await Promise.all(
    longestFirst.map(async ({ task, index }) => {
      answers[index] = (await pool.run(
        withSharedDay(task),
        signal === undefined ? { name } : { name, signal },
      )) as Answer;
      done++;
      onProgress?.({ done, total: tasks.length, ref: task.map.ref });
    }),
  );
  return answers;
}

function startPool(threads: number): Tinypool {
  try {
    return new Tinypool({
      filename: new URL('./plan-worker.ts', import.meta.url).href,
      runtime: 'worker_threads',
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG_GENERATION_MB },
      minThreads: threads,
      maxThreads: threads,
    });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`the planning threads could not be started: ${why}`, { cause });
  }
}

function nothingToThrow(player: FittedPlayer, limits: Limits): string {
  if (player.throws.every(fitted => fitted.role === 'putting'))
    return `every disc of ${player.name} is kept for putting: give one the role "throwing"`;
  const { classes, hands } = limits;
  return `${player.name} has no disc to throw that is ${[classes?.join(' or '), hands?.join(' or ')].filter(Boolean).join(', ')}`;
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
