import type { Input } from '../../backend/api/contract/api.ts';
import type { AppEvent } from '../../backend/api/contract/events.ts';
import type { PlannedHole, PlanState, PlanSummary } from '../../backend/api/contract/plans.ts';
import type { Problem } from '../../core/units/result.ts';
import type { Backend } from '../client/backend.ts';

/** What a plan is asked for; `planId` and what to plan first are added on the way. */
export type Wanted = Omit<Input<'startPlan'>, 'planId' | 'focusRef' | 'remember' | 'quick' | 'replaces' | 'holes'>;

export type Feed = Readonly<{
  /** The plan shown or being made; null before the first. */
  planId: string | null;
  /** The course the holes are of. */
  courseId: string | null;
  state: 'none' | 'running' | 'done' | 'failed' | 'cancelled';
  /** Only the hole in view, for a setting that still changes. */
  isQuick: boolean;
  done: number;
  total: number;
  /** Planned holes by ref; those in `stale` are from an earlier setting. */
  holes: ReadonlyMap<string, PlannedHole>;
  stale: ReadonlySet<string>;
  summary: PlanSummary | null;
  problems: readonly Problem[];
}>;

const EMPTY: Feed = {
  planId: null,
  courseId: null,
  state: 'none',
  isQuick: false,
  done: 0,
  total: 0,
  holes: new Map(),
  stale: new Set(),
  summary: null,
  problems: [],
};

/**
 * Keeps the plan on the screen in step with what is asked for. While a setting is dragged only the hole in view is
 * planned, one plan after the other with the newest setting, so that each answer is seen; once it settles, all holes are.
 */
export class PlanFeed {
  #backend: Backend;
  #feed: Feed = EMPTY;
  #listeners = new Set<() => void>();
  /** The hole-in-view plan under way while dragging. */
  #quick: string | null = null;
  #next: { wanted: Wanted; focusRef: string } | null = null;
  #remember: boolean;

  constructor(backend: Backend, remember: boolean) {
    this.#backend = backend;
    this.#remember = remember;
  }

  read = (): Feed => this.#feed;
  listen = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Shows a plan made before. */
  show(plan: PlanState): void {
    this.#set({
      planId: plan.planId,
      courseId: plan.request.courseId,
      state: plan.state,
      isQuick: false,
      done: plan.done,
      total: plan.total,
      holes: new Map(plan.holes.map(hole => [hole.plan.ref, hole])),
      stale: new Set(),
      summary: plan.summary,
      problems: plan.problems,
    });
  }

  /** Nothing shown any more: another course or player. */
  clear(courseId: string | null): void {
    this.#next = null;
    this.#quick = null;
    this.#set({ ...EMPTY, courseId });
  }

  /** Plans every hole, the one in view first. What is shown stays, marked stale, until its answer comes. */
  plan(wanted: Wanted, focusRef: string | null): void {
    this.#next = null;
    const running = this.#quick ?? (this.#feed.state === 'running' ? this.#feed.planId : null);
    this.#quick = null;
    const planId = crypto.randomUUID();
    this.#set({
      ...this.#feed,
      planId,
      state: 'running',
      isQuick: false,
      done: 0,
      total: 0,
      stale: new Set(this.#feed.holes.keys()),
      problems: [],
    });
    void this.#start({
      ...wanted,
      planId,
      remember: this.#remember,
      ...(focusRef !== null && { focusRef }),
      ...(running !== null && { replaces: running }),
    });
  }

  /** Plans the hole in view for a setting that is still changing. */
  planWhileDragging(wanted: Wanted, focusRef: string): void {
    if (this.#quick !== null) {
      this.#next = { wanted, focusRef };
      return;
    }
    this.#next = null;
    const running = this.#feed.state === 'running' ? this.#feed.planId : null;
    const planId = crypto.randomUUID();
    this.#quick = planId;
    this.#set({
      ...this.#feed,
      planId,
      state: 'running',
      isQuick: true,
      done: 0,
      total: 1,
      stale: new Set(this.#feed.holes.keys()),
    });
    void this.#start({
      ...wanted,
      planId,
      remember: false,
      quick: true,
      holes: [focusRef],
      ...(running !== null && { replaces: running }),
    });
  }

  cancel(): void {
    this.#next = null;
    if (this.#feed.planId !== null) void this.#backend.call.cancelPlan({ planId: this.#feed.planId });
  }

  hear(event: AppEvent): void {
    if (event.kind === 'libraryChanged' || event.planId !== this.#feed.planId) return;
    switch (event.kind) {
      case 'planProgress':
        this.#set({ ...this.#feed, done: event.done, total: event.total });
        break;
      case 'holePlanned': {
        const stale = new Set(this.#feed.stale);
        stale.delete(event.ref);
        this.#set({ ...this.#feed, stale, holes: new Map(this.#feed.holes).set(event.ref, event.hole) });
        break;
      }
      case 'planDone':
        if (this.#quick === event.planId) this.#quickDone();
        else this.#set({ ...this.#feed, state: 'done', summary: event.summary });
        break;
      case 'planFailed':
        this.#quick = null;
        this.#set({ ...this.#feed, state: 'failed', problems: event.problems });
        break;
      case 'planCancelled':
        if (this.#quick === event.planId) this.#quick = null;
        this.#set({ ...this.#feed, state: 'cancelled' });
        break;
      default:
        event satisfies never;
    }
  }

  /** After a break in the line: what was missed meanwhile. */
  async catchUp(): Promise<void> {
    const { planId, state } = this.#feed;
    if (planId === null || state !== 'running') return;
    const answer = await this.#backend.call.getPlan({ planId });
    if (answer.ok && this.#feed.planId === planId && answer.value.state !== 'running' && this.#quick === null)
      this.show(answer.value);
  }

  #quickDone(): void {
    this.#quick = null;
    if (this.#next !== null) this.planWhileDragging(this.#next.wanted, this.#next.focusRef);
    else this.#set({ ...this.#feed, state: 'done' });
  }

  async #start(input: Input<'startPlan'>): Promise<void> {
    const answer = await this.#backend.call.startPlan(input);
    if (this.#feed.planId !== input.planId) return;
    if (answer.ok) {
      if (this.#feed.state === 'running' && this.#feed.total === 0)
        this.#set({ ...this.#feed, total: answer.value.total });
      return;
    }
    this.#quick = null;
    this.#set({ ...this.#feed, state: 'failed', problems: answer.problems });
  }

  #set(feed: Feed): void {
    this.#feed = feed;
    for (const listener of this.#listeners) listener();
  }
}
