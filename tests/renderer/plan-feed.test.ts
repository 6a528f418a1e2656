import { describe, expect, it } from 'vitest';
import { PlanFeed, type Wanted } from '../../renderer/state/plan-feed.ts';
import { fakeBackend, plannedHole, SUMMARY } from './fake-backend.ts';

const wanted = (from_deg: number): Wanted => ({
  courseId: 'course',
  playerId: 'player',
  day: { wind: { speed_mps: 5, from_deg } },
});
const doneOf = (planId: string) => ({ kind: 'planDone', planId, summary: SUMMARY }) as const;
const holeOf = (planId: string, ref: string) => ({ kind: 'holePlanned', planId, ref, hole: plannedHole(ref) }) as const;

describe('the plan on the screen', () => {
  it('keeps showing the old plan, marked stale, until each hole’s new answer comes', () => {
    const { backend, asked } = fakeBackend();
    const feed = new PlanFeed(backend, true);
    feed.plan(wanted(0), '1');
    const first = asked[0]!.planId;
    feed.hear(holeOf(first, '1'));
    feed.hear(holeOf(first, '2'));
    feed.hear(doneOf(first));
    expect(feed.read().stale.size).toBe(0);

    feed.plan(wanted(90), '2');
    expect(asked[1]).toMatchObject({ focusRef: '2', remember: true });
    expect([...feed.read().stale]).toEqual(['1', '2']);
    feed.hear(holeOf(asked[1]!.planId, '2'));
    expect([...feed.read().stale]).toEqual(['1']);
    expect(feed.read().holes.size).toBe(2);
  });

  it('says which running plan a new one makes useless, and hears no more of it', () => {
    const { backend, asked } = fakeBackend();
    const feed = new PlanFeed(backend, true);
    feed.plan(wanted(0), '1');
    feed.plan(wanted(90), '1');
    expect(asked[1]!.replaces).toBe(asked[0]!.planId);
    feed.hear(holeOf(asked[0]!.planId, '1'));
    expect(feed.read().holes.size).toBe(0);
    feed.hear({ kind: 'planCancelled', planId: asked[0]!.planId });
    expect(feed.read().state).toBe('running');
  });

  it('asks for one plan after the other while dragging, always with the newest wind', () => {
    const { backend, asked } = fakeBackend();
    const feed = new PlanFeed(backend, true);
    for (const from_deg of [10, 20, 30, 40]) feed.planWhileDragging(wanted(from_deg), '1');
    expect(asked.length).toBe(1);
    expect(asked[0]).toMatchObject({ holes: ['1'], quick: true, remember: false });
    feed.hear(holeOf(asked[0]!.planId, '1'));
    feed.hear(doneOf(asked[0]!.planId));
    expect(asked.length).toBe(2);
    expect(asked[1]!.day.wind?.from_deg).toBe(40);
    feed.hear(doneOf(asked[1]!.planId));
    expect(asked.length).toBe(2);

    feed.planWhileDragging(wanted(50), '1');
    feed.plan(wanted(50), '1');
    expect(asked[3]).toMatchObject({ remember: true, replaces: asked[2]!.planId });
    expect(asked[3]!.holes).toBeUndefined();
    expect(feed.read().isQuick).toBe(false);
  });

  it('shows the problems of a plan that fails, and stops when cancelled', () => {
    const { backend, asked, cancelled } = fakeBackend();
    const feed = new PlanFeed(backend, true);
    feed.plan(wanted(0), '1');
    feed.cancel();
    expect(cancelled).toEqual([asked[0]!.planId]);
    feed.hear({ kind: 'planCancelled', planId: asked[0]!.planId });
    expect(feed.read().state).toBe('cancelled');
    feed.plan(wanted(0), '1');
    const problems = [{ path: 'limits', message: 'no such disc' }];
    feed.hear({ kind: 'planFailed', planId: asked[1]!.planId, problems });
    expect(feed.read()).toMatchObject({ state: 'failed', problems });
  });
});
