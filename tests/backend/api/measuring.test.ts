import { describe, expect, it } from 'vitest';
import { addTinyRound, openTestBackend, type TestBackend } from './open-test-backend.ts';

const DAY = { wind: { speed_mps: 3, from_deg: 40 } };

async function ended({ ask }: TestBackend, measuringId: string) {
  await expect
    .poll(async () => (await ask('getMeasuring', { measuringId })).state, { timeout: 110_000, interval: 50 })
    .not.toBe('running');
  return ask('getMeasuring', { measuringId });
}

describe('what to measure next', () => {
  it('is worked out in the background, tells how far it is, and never offers the putting putter', async () => {
    const test = openTestBackend();
    const { courseId, playerId } = await addTinyRound(test);
    const measuringId = crypto.randomUUID();
    const asked = { measuringId, courseId, playerId, day: DAY, limits: { hands: ['backhand' as const] } };
    expect(await test.ask('startMeasuring', asked)).toEqual({ total: 2 });
    const state = await ended(test, measuringId);
    expect(state).toMatchObject({ state: 'done', done: 2, total: 2, problems: [] });
    const answer = state.answer!;
    expect(answer).toMatchObject({ course: 'Tiny Links', holes: ['1', '2'], throws: 10 });
    expect(answer.rows.map(row => `${row.discId} ${row.hand}`).sort()).toEqual(['mid backhand', 'throw backhand']);
    expect(test.faults).toEqual([]);
  }, 120_000);

  it('can be given up, and gives way to the next question', async () => {
    const test = openTestBackend();
    const { courseId, playerId } = await addTinyRound(test);
    const [first, second] = [crypto.randomUUID(), crypto.randomUUID()];
    await test.ask('startMeasuring', { measuringId: first, courseId, playerId, day: DAY });
    await test.ask('startMeasuring', { measuringId: second, courseId, playerId, day: DAY });
    expect((await ended(test, first)).state).toBe('cancelled');
    expect(await test.ask('cancelMeasuring', { measuringId: second })).toEqual({ cancelled: true });
    expect(await ended(test, second)).toMatchObject({ state: 'cancelled', answer: null });
    expect(await test.ask('cancelMeasuring', { measuringId: second })).toEqual({ cancelled: false });
    expect(test.faults).toEqual([]);
  }, 120_000);

  it('names what is wrong with a question', async () => {
    const test = openTestBackend();
    const { courseId, playerId } = await addTinyRound(test);
    const measuringId = crypto.randomUUID();
    const paths = async (change: object) =>
      (await test.refused('startMeasuring', { measuringId, courseId, playerId, day: DAY, ...change })).map(p => p.path);
    expect(await paths({ courseId: crypto.randomUUID() })).toEqual(['courseId']);
    expect(await paths({ playerId: crypto.randomUUID() })).toEqual(['playerId']);
    expect(await paths({ throws: 2 })).toEqual(['throws']);
    expect(await paths({ holes: ['99'] })).toEqual(['holes']);
    expect((await test.refused('getMeasuring', { measuringId })).map(p => p.path)).toEqual(['measuringId']);
  });
});

describe('the range table', () => {
  it('carries intervals, the layout of the bag, readiness and signs', async () => {
    const test = openTestBackend();
    const { playerId } = await addTinyRound(test);
    const report = await test.ask('getThrows', { playerId });
    const mid = report.throws.find(t => t.discId === 'mid' && t.hand === 'backhand')!;
    expect(mid.interval90.averageDay_m.low).toBeLessThan(mid.averageDay_m);
    expect(mid.interval90.best_m.high).toBeGreaterThan(mid.best_m);
    expect(mid.readiness).toMatchObject({ verdict: 'ready', gate: null });
    expect(mid.anhyzer).toBeNull();
    expect(mid.drift).toBeNull();
    expect(report.layout.spots.map(s => s.discId)).not.toContain('putt');
    expect(report.layout.gaps[0]).toMatchObject({ shorter: 'Throwing putter', longer: 'Plain midrange' });
  });
});
