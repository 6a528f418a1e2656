import { describe, expect, it } from 'vitest';
import type { Input, Output } from '../../../backend/api/contract/api.ts';
import { addTinyRound, openTestBackend, type TestBackend } from './open-test-backend.ts';

const DAY = { wind: { speed_mps: 3, from_deg: 250 } };

async function ended({ ask }: TestBackend, practiceId: string): Promise<Output<'getPractice'>> {
  await expect
    .poll(async () => (await ask('getPractice', { practiceId })).state, { timeout: 60_000, interval: 30 })
    .not.toBe('running');
  return ask('getPractice', { practiceId });
}

async function asked(test: TestBackend, change: Partial<Input<'startPractice'>> = {}) {
  const { courseId, playerId } = await addTinyRound(test);
  const practiceId = crypto.randomUUID();
  const limit = { classes: ['putter' as const] };
  const input = { practiceId, playerId, courseIds: [courseId], limit, day: DAY, compare: false, ...change };
  return { courseId, playerId, practiceId, input };
}

describe('practice rounds', () => {
  it('are looked for in the background, and printed; the same question has the same answer', async () => {
    const test = openTestBackend();
    const { ask } = test;
    const { courseId, practiceId, input } = await asked(test);
    expect(await ask('startPractice', input)).toEqual({ courses: 1 });
    const begun = await ask('getPractice', { practiceId });
    expect([begun.state, begun.report]).toEqual(['running', null]);
    expect(await test.refused('renderPracticeSheet', { practiceId, courseId, length: 'm', speed: 'mps' })).toEqual([
      { path: 'practiceId', message: 'is not done: wait for it, or look again' },
    ]);
    const done = await ended(test, practiceId);
    expect([done.state, done.problems]).toEqual(['done', []]);
    const [round] = done.report!.rounds;
    expect(round!.key).toBe(courseId);
    expect(round!.holes.map(({ ref }) => ref)).toEqual(['1', '2']);
    expect(round!.ownThrows).toBeNull();

    const { html, fileName } = await ask('renderPracticeSheet', { practiceId, courseId, length: 'ft', speed: 'mph' });
    expect(fileName).toBe('practice-at-tiny-links-tiny-player-sheet.html');
    expect(html).toContain(`<b>Target</b> ${round!.target.throws}`);
    expect(html).toContain('262 ft'); // 80 m = 262.5 ft, exact: NIST SP 811 B.8
    expect(html).not.toMatch(/\d m\b(?!\/)/);

    const again = crypto.randomUUID();
    await ask('startPractice', { ...input, practiceId: again });
    expect((await ended(test, again)).report).toEqual(done.report);
    expect(test.faults).toEqual([]);
  }, 90_000);

  it('stop when told, and when another is asked for', async () => {
    const test = openTestBackend();
    const { practiceId, input } = await asked(test);
    await test.ask('startPractice', input);
    expect(await test.ask('cancelPractice', { practiceId })).toEqual({ cancelled: true });
    expect((await ended(test, practiceId)).state).toBe('cancelled');
    expect(await test.ask('cancelPractice', { practiceId })).toEqual({ cancelled: false });

    const [first, second] = [crypto.randomUUID(), crypto.randomUUID()];
    await test.ask('startPractice', { ...input, practiceId: first });
    await test.ask('startPractice', { ...input, practiceId: second });
    expect((await ended(test, first)).state).toBe('cancelled');
    expect((await ended(test, second)).state).toBe('done');
    expect(test.faults).toEqual([]);
  }, 90_000);

  it('say what is wrong and where', async () => {
    const test = openTestBackend();
    const { input, practiceId } = await asked(test);
    const unknown = crypto.randomUUID();
    expect((await test.refused('startPractice', { ...input, playerId: unknown }))[0]!.path).toBe('playerId');
    expect((await test.refused('startPractice', { ...input, courseIds: [unknown] }))[0]!.path).toBe('courseId');
    expect((await test.refused('startPractice', { ...input, day: { wind: { speed_mps: -1 } } }))[0]!.path).toMatch(
      /^day\.wind/,
    );
    expect((await test.refused('startPractice', { ...input, limit: { classes: [] } }))[0]!.path).toBe('limit.classes');
    expect(await test.refused('getPractice', { practiceId })).toEqual([
      { path: 'practiceId', message: 'is no search that is kept: look again' },
    ]);
    await test.ask('startPractice', { ...input, limit: { discIds: ['nobody'] } });
    const failed = await ended(test, practiceId);
    expect([failed.state, failed.problems[0]!.path]).toEqual(['failed', 'limit.discIds']);
    expect((await test.refused('startPractice', input))[0]!.message).toContain('was given to a search before');
    expect(test.faults).toEqual([]);
  }, 60_000);
});
