import { createHash } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { Attitude } from '../../core/strategy/attitude.ts';
import type { PushedRound } from '../../core/strategy/push-round.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { Checked, Output } from '../api/contract/api.ts';
import type { AppEvent } from '../api/contract/events.ts';
import { type PlannedHole, type PlanRequestData, type PlanState, PlanStateSchema } from '../api/contract/plans.ts';
import { allotTarget, guarding, type PlanRequest, refuseRound, reportOf, withOwnWind } from '../planning/plan-round.ts';
import type { PlanningDesk } from '../planning/planning-desk.ts';
import type { Store } from '../store/open-store.ts';
import type { CourseBook } from './course-book.ts';
import { lru } from './lru.ts';
import type { PlayerBook } from './player-book.ts';
import { askedAir, askedDay, readyRound } from './ready-round.ts';

const KEPT_IN_MEMORY = 24;
const MOST_RUNNING = 6;

/** Plans in the making and made; says what happens as events. */
export type PlanDesk = Readonly<{
  start(input: Checked<'startPlan'>): Result<Output<'startPlan'>>;
  cancel(planId: string): boolean;
  get(planId: string): Result<PlanState>;
  /** The hole in view is then solved again in the background: the player is likely to ask about it next. */
  latest(courseId: string, playerId: string, ref: string | null): PlanState | null;
  /** Stops what is being made; resolves when nothing writes any more. */
  close(): Promise<void>;
}>;

type Parts = Readonly<{
  store: Store;
  courses: CourseBook;
  players: PlayerBook;
  threads: PlanningDesk;
  emit: (event: AppEvent) => void;
  version: string;
  now_ms: () => number;
}>;
/** How a round's target was allotted last, by ref: for those holes where it asks for another shot. */
type Pace = ReadonlyMap<string, Attitude>;
type Running = { state: PlanState; stop: AbortController; ended: Promise<void> };

export function planDesk(parts: Parts): PlanDesk {
  const { store, courses, players, threads, emit, version, now_ms } = parts;
  const running = new Map<string, Running>();
  const made = lru<PlanState>(KEPT_IN_MEMORY);
  const paces = lru<Pace>(KEPT_IN_MEMORY);

  /** Everything the answer depends on. */
  function keyOf(request: PlanRequestData, flips: boolean): string {
    const { courseId, playerId } = request;
    const course = store.tables.courses.get({ courseId });
    const text = store.tables.courseFiles.get({ courseId })?.text;
    const ground = store.tables.grounds.get({ courseId })?.digest;
    const player = store.tables.players.get({ playerId })?.file;
    return digest(JSON.stringify([version, course?.name, text, ground, player, request, flips]));
  }

  function stored(planId: string): PlanState | undefined {
    const row = store.plans.get(planId);
    return row === undefined ? undefined : PlanStateSchema.parse(JSON.parse(row.state));
  }

  const known = (planId: string) => running.get(planId)?.state ?? made.get(planId) ?? stored(planId);

  function start({
    planId,
    focusRef,
    remember,
    quick,
    replaces,
    ...request
  }: Checked<'startPlan'>): Result<Output<'startPlan'>> {
    if (known(planId) !== undefined) return refused('planId', 'was given to a plan before: make a new one');
    const total = checkRequest(request);
    if (!total.ok) return total;
    if (focusRef !== undefined && !courseHas(request, focusRef))
      return refused('focusRef', `the course has no hole "${focusRef}"`);
    if (replaces !== undefined) cancel(replaces);
    if (running.size >= MOST_RUNNING)
      return refused('planId', `${MOST_RUNNING} plans are being made already: cancel one, or wait`);
    const state: PlanState = {
      planId,
      request,
      state: 'running',
      madeAt_ms: now_ms(),
      done: 0,
      total: total.value,
      holes: [],
      summary: null,
      problems: [],
    };
    const job: Running = { state, stop: new AbortController(), ended: Promise.resolve() };
    running.set(planId, job);
    job.ended = make(job, focusRef, remember, quick);
    return { ok: true, value: { planId, total: total.value } };
  }

  const courseHas = ({ courseId, layout }: PlanRequestData, ref: string) => {
    const course = courses.get(courseId, layout);
    return course.ok && course.value.holes.some(hole => hole.ref === ref);
  };

  /** What can be said without a thread. @returns the number of holes */
  function checkRequest(request: PlanRequestData): Result<number> {
    const { courseId, playerId, holes, layout, attitude, target } = request;
    const course = courses.get(courseId, layout);
    const player = players.get(playerId);
    const refs = course.ok ? course.value.holes.map(hole => hole.ref) : null;
    const air = refs === null ? askedDay(request.day) : askedAir(request, refs);
    const problems = [course, player, air].flatMap(part => (part.ok ? [] : part.problems));
    if (target !== undefined && attitude !== 'push')
      problems.push({ path: 'target', message: 'is only for the attitude "push"' });
    if (target === undefined && attitude === 'push')
      problems.push({ path: 'target', message: 'is missing: "push" needs a number of throws to finish in' });
    if (!course.ok || problems.length > 0) return { ok: false, problems };
    const unknown = (holes ?? []).filter(ref => !course.value.holes.some(hole => hole.ref === ref));
    if (unknown.length > 0) return refused('holes', `the course has no hole ${unknown.join(', ')}`);
    return { ok: true, value: holes === undefined ? course.value.holes.length : new Set(holes).size };
  }

  async function make(job: Running, focusRef: string | undefined, remember: boolean, quick: boolean): Promise<void> {
    const { planId, request, total } = job.state;
    const { signal } = job.stop;
    const planKey = keyOf(request, remember);
    try {
      await setImmediate();
      signal.throwIfAborted();
      emit({ kind: 'planProgress', planId, done: 0, total });
      const before = store.plans.byKey(planKey);
      const first = before === undefined && quick ? await planQuickly(job) : null;
      const outcome =
        first ?? (before === undefined ? await plan(job, focusRef, remember, quick) : again(job, before.state));
      if (!outcome.ok) return fail(job, outcome.problems);
      const state: PlanState = { ...job.state, state: 'done', summary: outcome.value };
      running.delete(planId);
      made.set(planId, state);
      if (first === null)
        store.plans.put({
          planId,
          courseId: request.courseId,
          playerId: request.playerId,
          planKey,
          remembered: remember ? 1 : 0,
          madeAt_ms: state.madeAt_ms,
          state: JSON.stringify(state),
        });
      emit({ kind: 'planDone', planId, summary: outcome.value });
    } catch (error) {
      if (signal.aborted) {
        running.delete(planId);
        made.set(planId, { ...job.state, state: 'cancelled' });
        emit({ kind: 'planCancelled', planId });
        return;
      }
      const why = error instanceof Error ? error.message : String(error);
      fail(job, [{ path: 'plan', message: `could not be made: ${why}` }]);
    }
  }

  function fail(job: Running, problems: readonly Problem[]): void {
    const { planId } = job.state;
    // Its other holes are of no use now.
    job.stop.abort();
    const copies = problems.map(({ path, message }) => ({ path, message }));
    running.delete(planId);
    made.set(planId, { ...job.state, state: 'failed', problems: copies });
    emit({ kind: 'planFailed', planId, problems: copies });
  }

  async function plan(
    job: Running,
    focusRef: string | undefined,
    flips: boolean,
    quick: boolean,
  ): Promise<Result<NonNullable<PlanState['summary']>>> {
    const { attitude, target } = job.state.request;
    const prepared = await readyRound(parts, job.state.request);
    if (!prepared.ok) return prepared;
    const { roundOf, maps } = prepared.value;
    const request: PlanRequest = { ...prepared.value.request, attitude, ...(target !== undefined && { target }) };
    const refusal = refuseRound(request);
    if (refusal !== undefined) return refusal;
    const before = attitudesBefore(job, request, quick ? request.course.holes.length : maps.length);
    const onHole = (hole: PlannedHole) => add(job, inOwnWind(hole, request));
    const common = { roundOf, focusRef, signal: job.stop.signal, flips, onHole };
    const risks = attitude === 'push';
    const options = await threads.plan({ ...common, maps, risks, attitudeOf: ({ ref }) => before(ref) });
    let pushed: PushedRound | undefined;
    if (attitude === 'push' && !quick) {
      const allotted = allotTarget(
        maps.map(({ ref }) => options.get(ref) ?? []),
        target!,
      );
      pushed = allotted.pushed;
      const now = (map: HoleMap) => allotted.attitudes[maps.indexOf(map)];
      const changed = maps.filter(map => !isDeepStrictEqual(now(map), before(map.ref)));
      await threads.plan({ ...common, maps: changed, attitudeOf: now });
      paces.set(paceKey(job.state.request), paceOf(maps, allotted.attitudes));
    }
    const { holes: _, ...summary } = reportOf(
      request,
      job.state.holes.map(hole => hole.plan),
      pushed,
    );
    return { ok: true, value: summary };
  }

  /**
   * What a hole is played for before the round's target is allotted: at the pace it had in the wind before, where there is one,
   * so that the hole in view does not turn to even play and back.
   * @param holes - of the round, also where only the one in view is asked for
   */
  function attitudesBefore(job: Running, request: PlanRequest, holes: number): (ref: string) => Attitude | undefined {
    const guard = guarding(request, holes);
    const pace = request.attitude === 'push' ? paces.get(paceKey(job.state.request)) : undefined;
    return ref => guard ?? pace?.get(ref);
  }

  /** @returns null when one of the holes is not solved for any wind: it must be planned in full */
  async function planQuickly(job: Running): Promise<Result<NonNullable<PlanState['summary']>> | null> {
    const prepared = await readyRound(parts, job.state.request);
    if (!prepared.ok) return prepared;
    const { request, roundOf, maps } = prepared.value;
    const attitudeOf = attitudesBefore(
      job,
      { ...request, attitude: job.state.request.attitude },
      request.course.holes.length,
    );
    for (const map of maps) {
      const hole = await threads.quick(map, roundOf(map), job.stop.signal, attitudeOf(map.ref));
      if (hole === null) return null;
      add(job, inOwnWind(hole, request));
    }
    const { holes: _, ...summary } = reportOf(
      request,
      job.state.holes.map(hole => hole.plan),
    );
    return { ok: true, value: summary };
  }

  function again(job: Running, state: string): Result<NonNullable<PlanState['summary']>> {
    const before = PlanStateSchema.parse(JSON.parse(state));
    for (const hole of before.holes) add(job, hole);
    return { ok: true, value: before.summary! };
  }

  /** A hole may come again: with the other winds looked at, or played another way for the round's target. */
  function add(job: Running, hole: PlannedHole): void {
    const { planId, total, request } = job.state;
    const course = courses.get(request.courseId, request.layout);
    const order = course.ok ? course.value.holes.map(({ ref }) => ref) : [];
    const before = job.state.holes.filter(({ plan }) => plan.ref !== hole.plan.ref);
    const isNew = before.length === job.state.holes.length;
    const holes = [...before, hole].sort((a, b) => order.indexOf(a.plan.ref) - order.indexOf(b.plan.ref));
    job.state = { ...job.state, holes, done: holes.length };
    emit({ kind: 'holePlanned', planId, ref: hole.plan.ref, hole });
    if (isNew) emit({ kind: 'planProgress', planId, done: holes.length, total });
  }

  function cancel(planId: string): boolean {
    const job = running.get(planId);
    job?.stop.abort();
    return job !== undefined;
  }

  async function headStart({ request, holes }: PlanState, ref: string | null): Promise<void> {
    const prepared = await readyRound(parts, request);
    if (!prepared.ok) return;
    const { maps, roundOf } = prepared.value;
    const inView = maps.find(map => map.ref === ref) ?? maps.find(map => map.ref === holes[0]?.plan.ref);
    if (inView !== undefined) await threads.headStart(inView, roundOf(inView));
  }

  function latest(courseId: string, playerId: string, ref: string | null): PlanState | null {
    const row = store.plans.remembered(courseId, playerId);
    if (row === undefined) return null;
    const state = made.get(row.planId) ?? PlanStateSchema.parse(JSON.parse(row.state));
    if (keyOf(state.request, true) !== row.planKey) return null;
    // Only a head start: without it the same questions take longer, and say what is wrong themselves.
    headStart(state, ref).catch(() => {});
    return state;
  }

  return {
    start,
    cancel,
    get: planId => {
      const state = known(planId);
      return state === undefined
        ? refused('planId', 'is no plan that is kept: make it anew')
        : { ok: true, value: state };
    },
    latest,
    close: async () => {
      const jobs = [...running.values()];
      for (const { stop } of jobs) stop.abort();
      await Promise.all(jobs.map(({ ended }) => ended));
    },
  };
}

/** The same for rounds whose target is allotted alike, but for the wind. */
const paceKey = ({ courseId, playerId, layout, limits, target }: PlanRequestData): string =>
  JSON.stringify([courseId, playerId, layout, limits, target]);

const paceOf = (maps: readonly HoleMap[], attitudes: readonly (Attitude | undefined)[]): Pace =>
  new Map(
    maps.flatMap(({ ref }, i) => {
      const attitude = attitudes[i];
      return attitude === undefined ? [] : [[ref, attitude]];
    }),
  );

const inOwnWind = ({ plan, drawing }: PlannedHole, { dayByHole }: PlanRequest): PlannedHole => ({
  plan: withOwnWind(plan, dayByHole?.get(plan.ref)),
  drawing,
});

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
