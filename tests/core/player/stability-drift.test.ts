import { describe, expect, it } from 'vitest';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { civilDay } from '../../../core/player/civil-day.ts';
import { fitPlayer } from '../../../core/player/fit-player.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { driftText, type StabilityDrift, stabilityDrift } from '../../../core/player/stability-drift.ts';
import { INVENTED_BAG, type InventedSession, inventPlayer } from './synthetic-player.ts';

const DATES = ['2026-04-01', '2026-05-01', '2026-06-01', '2026-07-01'];
const WINDS: readonly InventedSession[] = [
  { speed_mps: 0, from_deg: 0, bearing_deg: 90 },
  { speed_mps: 3, from_deg: 0, bearing_deg: 90 },
  { speed_mps: 2, from_deg: 90, bearing_deg: 90 },
  { speed_mps: 3, from_deg: 200, bearing_deg: 90 },
];
const discs = INVENTED_BAG.filter(({ id }) => ['lantern', 'willow'].includes(id));

/** Four sessions of twelve throws, the willow's stability moved by `perSession` from one to the next. */
function driftOf(seed: number, perSession: number): StabilityDrift | null {
  const sessions = WINDS.flatMap((wind, s) => {
    const { file } = inventPlayer({
      seed: seed + s,
      arm_mps: 24,
      discs: discs.map(d => ({ ...d, turn: d.turn + (d.id === 'willow' ? s * perSession : 0), throws: 12 })),
      sessions: [wind],
      speedSpread: 0,
      stabilitySpread: 0,
    });
    return file.sessions.map(session => ({ ...session, date: DATES[s] }));
  });
  const parsed = parsePlayer({
    name: 'Invented',
    handedness: 'right',
    discs: discs.map(({ ...d }) => d),
    sessions,
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const player = fitPlayer(parsed.value);
  return stabilityDrift(parsed.value, player, player.throws.find(t => t.discId === 'willow')!, createFlightBatch());
}

describe('drift of the stability over the sessions', () => {
  it('finds a disc that loses 1.2 turn units a session, with its size', () => {
    for (const seed of [100, 200]) {
      const drift = driftOf(seed, -1.2)!;
      expect(drift.verdict).toBe('less stable');
      expect(drift.days).toBe(91); // 1 April to 1 July, by the calendar
      // the truth: three steps of 1.2; bounds are twice its interval's half width of some 1.3
      expect(Math.abs(drift.change + 3.6)).toBeLessThan(2.6);
    }
  });

  it('finds none where there is none: the interval holds 0 in at least 5 of 6', () => {
    const held = Array.from({ length: 6 }, (_, i) => driftOf(1000 + 10 * i, 0)!).filter(d => d.low <= 0 && d.high >= 0);
    // [C] binomial: 5 or more of 6 in 89 % of such tests of a 90 % interval; the assumed day-to-day spread makes it more
    expect(held.length).toBeGreaterThanOrEqual(5);
  });

  it('says nothing without dates, without sides, or within a week', () => {
    const { file } = inventPlayer({
      seed: 7,
      arm_mps: 24,
      discs: discs.map(d => ({ ...d, throws: 10 })),
      sessions: WINDS.slice(0, 2),
    });
    const ask = (sessions: object[]) => {
      const parsed = parsePlayer({ ...file, sessions });
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
      const player = fitPlayer(parsed.value);
      return stabilityDrift(parsed.value, player, player.throws[1]!, createFlightBatch());
    };
    const dated = (...dates: (string | undefined)[]) => file.sessions.map((s, i) => ({ ...s, date: dates[i] }));
    expect(ask(dated('2026-04-01', '2026-05-01'))).not.toBeNull();
    expect(ask(dated('2026-04-01', undefined))).toBeNull();
    expect(ask(dated('2026-04-01', 'last spring'))).toBeNull();
    expect(ask(dated('2026-04-01', '2026-04-05'))).toBeNull();
    const sideless = dated('2026-04-01', '2026-05-01').map(s => ({
      ...s,
      throws: s.throws.map(({ side_m: _, ...t }) => t),
    }));
    expect(ask(sideless)).toBeNull();
  });

  it('puts the change, its interval and its meaning in words', () => {
    const drift: StabilityDrift = { sessions: [], change: -1.2, low: -2, high: -0.4, days: 60, verdict: 'less stable' };
    expect(driftText(drift)).toBe(
      '−1.2 turn units in 60 days (90 %: −2.0 to −0.4, 0 sessions): it has become less stable: wear, or another way of throwing it',
    );
  });
});

describe('the day of a date', () => {
  // differences by the calendar
  it.each([
    ['2026-03-01', '2026-02-28', 1],
    ['2024-03-01', '2024-02-28', 2],
    ['2027-01-01', '2026-12-31', 1],
    ['2000-03-01', '2000-02-28', 2],
    ['1900-03-01', '1900-02-28', 1],
    ['2026-05-30T18:00', '2025-05-30', 365],
  ])('%s is so many days after %s: %d', (later, earlier, days) => {
    expect(civilDay(later)! - civilDay(earlier)!).toBe(days);
  });

  it.each(['2026-13-01', '2026-02-29', '2026-04-31', '30.05.2026', 'spring', '2026-5-3'])('"%s" is no date', text => {
    expect(civilDay(text)).toBeNull();
  });
});
