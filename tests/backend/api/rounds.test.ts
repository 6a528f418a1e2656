import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { Input } from '../../../backend/api/contract/api.ts';
import { addTinyRound, openTestBackend, type TestBackend } from './open-test-backend.ts';

type RoundEntry = Input<'saveRound'>['round'];

const ROUND: RoundEntry = {
  schema: 'roundwright/round@1',
  date: '2026-05-30',
  day: { wind: { speed_mps: 2, from_deg: 90 } },
  holes: [
    {
      ref: '1',
      throws: [
        { discId: 'mid', shape: 'flat', power: 1, aimBearing_deg: 90, rest: { east_m: 74, north_m: 5 } },
        { discId: 'putt', shape: 'putt', rest: { toBasket_m: 1 } },
        { discId: 'putt', holed: true },
      ],
    },
    { ref: '2', throws: [{ discId: 'mid', rest: { toBasket_m: 30 } }] },
  ],
};

async function reviewed({ ask }: Pick<TestBackend, 'ask'>, roundId: string) {
  await ask('startReview', { roundId });
  for (let i = 0; i < 600; i++) {
    const review = await ask('getReview', { roundId });
    if (review.state !== 'running') return review;
    await setTimeout(100);
  }
  throw new Error('the review takes more than a minute');
}

describe('rounds of the library', () => {
  it('are kept as entered, changed, listed, undone and deleted with their course', async () => {
    const there = openTestBackend();
    const { ask } = there;
    const ids = await addTinyRound(there);
    const { roundId } = await ask('saveRound', { ...ids, round: ROUND });
    const [line] = await ask('listRounds', { playerId: ids.playerId });
    // by hand: hole 1 in three throws, hole 2 not holed out
    expect(line).toMatchObject({ roundId, holes: 2, finished: 1, score: 3, reviewed: 'no', course: 'Tiny Links' });
    const { undo } = await ask('saveRound', { ...ids, roundId, round: { ...ROUND, date: '2026-06-01' } });
    expect((await ask('getRound', { roundId })).round.date).toBe('2026-06-01');
    await ask('undo', { changeId: undo.changeId });
    expect((await ask('getRound', { roundId })).round.date).toBe('2026-05-30');
    const gone = await ask('removeCourse', { courseId: ids.courseId });
    expect(await ask('listRounds', { playerId: ids.playerId })).toEqual([]);
    await ask('undo', { changeId: gone.undo.changeId });
    expect(await ask('listRounds', { playerId: ids.playerId })).toHaveLength(1);
    await ask('removeRound', { roundId });
    expect(await there.refused('getRound', { roundId })).toMatchObject([{ path: 'roundId' }]);
    expect(there.faults).toEqual([]);
  });

  it('that do not fit are refused with every place, and nothing is kept', async () => {
    const there = openTestBackend();
    const ids = await addTinyRound(there);
    const holes = [
      { ref: '9', throws: [{ holed: true }] },
      {
        ref: '1',
        throws: [{ discId: 'brick', rest: { lonLat: [60, 25] } }, { holed: true }],
      },
    ];
    const problems = await there.refused('saveRound', { ...ids, round: { ...ROUND, holes } });
    expect(problems.map(({ path }) => path)).toEqual([
      'round.holes[0].ref',
      'round.holes[1].throws[0].discId',
      'round.holes[1].throws[0].rest',
    ]);
    expect(await there.ask('listRounds', { playerId: ids.playerId })).toEqual([]);
  });

  it('come in and go out as JSON and as a table', async () => {
    const there = openTestBackend();
    const { ask } = there;
    const ids = await addTinyRound(there);
    const { roundId } = await ask('importRound', { ...ids, fileName: 'r.json', text: JSON.stringify(ROUND) });
    const { round } = await ask('getRound', { roundId });
    for (const format of ['json', 'csv'] as const) {
      const file = await ask('exportRound', { roundId, format });
      expect(file.fileName).toBe(`tiny-links-2026-05-30.${format}`);
      const preview = await ask('previewRound', { ...ids, fileName: file.fileName, text: file.text });
      expect(preview.round).toEqual(round);
    }
    // a file of another course or player is not judged on this one
    const foreign = { ...ROUND, course: 'Elsewhere', player: 'Somebody' };
    const others = await there.refused('importRound', { ...ids, fileName: 'r.json', text: JSON.stringify(foreign) });
    expect(others.map(({ path }) => path)).toEqual(['course', 'player']);
    const broken = await there.refused('importRound', { ...ids, fileName: 'r.csv', text: 'hole,disc\n1,brick\n' });
    expect(broken[0]!.path).toBe('row 2, disc');
    expect(await ask('listRounds', { playerId: ids.playerId })).toHaveLength(1);
  });

  it('travel with the library file', async () => {
    const from = openTestBackend();
    const ids = await addTinyRound(from);
    await from.ask('saveRound', { ...ids, round: ROUND });
    const { text } = await from.ask('exportLibrary', {});
    const to = openTestBackend();
    expect(await to.ask('importLibrary', { text, how: 'replace' })).toMatchObject({ rounds: 1 });
    const [line] = await to.ask('listRounds', { playerId: ids.playerId });
    expect(line).toMatchObject({ score: 3, course: 'Tiny Links' });
    expect(await to.ask('importLibrary', { text, how: 'merge' })).toMatchObject({ rounds: 0 });
    const { rounds: _, ...before } = JSON.parse(text) as Record<string, unknown>;
    expect(await to.ask('importLibrary', { text: JSON.stringify(before), how: 'replace' })).toMatchObject({
      rounds: 0,
    });
  });
});

describe('the review of a kept round', () => {
  it('is made in the background, kept, and known to be older after a change', async () => {
    const there = openTestBackend();
    const { ask } = there;
    const ids = await addTinyRound(there);
    const { roundId } = await ask('saveRound', { ...ids, round: ROUND });
    expect(await there.refused('offerRound', { roundId })).toMatchObject([{ path: 'roundId' }]);
    const review = await reviewed(there, roundId);
    expect(review).toMatchObject({ state: 'done', isOlder: false, problems: [] });
    const { asPlanned, asItWas, unfinished } = review.report!;
    expect([asPlanned.holes.length, asItWas, unfinished]).toEqual([1, null, ['2']]);
    const [hole] = asPlanned.holes;
    const sum = hole!.throws.reduce((total, t) => total + t.gain.throws, 0);
    expect(Math.abs(sum - (hole!.startValue.throws - hole!.score))).toBeLessThan(1e-9);
    expect(there.events).toContainEqual({ kind: 'libraryChanged', areas: ['rounds'] });
    // one that holds is not made again
    expect(await ask('startReview', { roundId })).toEqual({ total: 0 });

    const realDay = { wind: { speed_mps: 6, from_deg: 270 } };
    await ask('saveRound', { ...ids, roundId, round: { ...ROUND, realDay } });
    expect(await ask('getReview', { roundId })).toMatchObject({ state: 'done', isOlder: true });
    const again = await reviewed(there, roundId);
    expect(again.report!.asItWas!.air.windSpeed_mps).toBe(6);
    expect(again.report!.windHoles.map(({ ref }) => ref)).toEqual(['1']);

    const season = await ask('getSeason', { playerId: ids.playerId });
    expect(season.rounds.map(own => own.roundId)).toEqual([roundId]);
    expect(season.trends.every(trend => trend.verdict === 'tooFew')).toBe(true);
    expect(there.faults).toEqual([]);
  }, 60_000);

  it('can be cancelled, and is refused while no hole is finished', async () => {
    const there = openTestBackend();
    const ids = await addTinyRound(there);
    const { roundId } = await there.ask('saveRound', { ...ids, round: ROUND });
    await there.ask('startReview', { roundId });
    expect(await there.ask('cancelReview', { roundId })).toEqual({ cancelled: true });
    const ended = await reviewedState(there, roundId);
    expect(ended).toMatchObject({ state: 'cancelled', report: null });
    const open = await there.ask('saveRound', { ...ids, round: { ...ROUND, holes: [ROUND.holes[1]!] } });
    expect(await there.refused('startReview', { roundId: open.roundId })).toMatchObject([{ path: 'roundId' }]);
  }, 60_000);

  it('offers its throws to the fit: shown first, added only when asked, taken back by undo', async () => {
    const there = openTestBackend();
    const { ask } = there;
    const ids = await addTinyRound(there);
    const { roundId } = await ask('saveRound', { ...ids, round: ROUND });
    await reviewed(there, roundId);
    const { throws } = await ask('offerRound', { roundId });
    expect(throws.map(t => [t.key, t.distance_m, t.side_m, t.isPlain])).toEqual([
      // aim due east: 74 m along, 5 m to the left
      ['1.1', 74, -5, true],
      ['1.2', null, null, false],
      ['1.3', null, null, false],
      ['2.1', null, null, false],
    ]);
    const before = await ask('getThrows', { playerId: ids.playerId });
    const { changes } = await ask('previewFit', { roundId, keys: ['1.1'] });
    expect(changes[0]).toMatchObject({ discId: 'mid', hand: 'backhand', added: 1 });
    expect(changes[0]!.after!.n).toBeGreaterThan(changes[0]!.before!.n);
    expect(await ask('getThrows', { playerId: ids.playerId })).toEqual(before);
    expect(await there.refused('acceptFit', { roundId, keys: ['1.2'] })).toMatchObject([{ path: 'keys' }]);
    const { undo, added } = await ask('acceptFit', { roundId, keys: ['1.1'] });
    expect(added).toBe(1);
    expect((await ask('getPlayer', { playerId: ids.playerId })).sessions).toHaveLength(2);
    // not twice
    expect((await ask('offerRound', { roundId })).throws[0]).toMatchObject({ distance_m: null, isPlain: false });
    await ask('undo', { changeId: undo.changeId });
    expect(await ask('getThrows', { playerId: ids.playerId })).toEqual(before);
    expect(there.faults).toEqual([]);
  }, 60_000);
});

async function reviewedState({ ask }: Pick<TestBackend, 'ask'>, roundId: string) {
  for (let i = 0; i < 600; i++) {
    const review = await ask('getReview', { roundId });
    if (review.state !== 'running') return review;
    await setTimeout(50);
  }
  throw new Error('still running');
}
