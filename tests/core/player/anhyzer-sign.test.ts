import { describe, expect, it } from 'vitest';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { anhyzerSign, anhyzerText } from '../../../core/player/anhyzer-sign.ts';
import type { FittedThrow } from '../../../core/player/fitted-player.ts';
import { type PlayerFile, parsePlayer } from '../../../core/player/player-file.ts';
import { inventedPlayer, type Numbers } from '../strategy/invented-player.ts';

const METEOR: Numbers = { id: 'meteor', speed: 13, glide: 5, turn: -1, fade: 3 };
const thrown = (arm_mps: number, disc = METEOR) => inventedPlayer({ arm_mps, discs: [disc] }).throws[0] as FittedThrow;

function fileOf(throws: readonly object[], disc = METEOR): PlayerFile {
  const parsed = parsePlayer({
    name: 'Invented',
    handedness: 'right',
    discs: [{ ...disc, name: disc.id }],
    sessions: [{ throws: [{ discId: disc.id, distance_m: 60, side_m: 0 }] }, { throws }],
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
}
const noted = (shape: string, ...distances_m: number[]) =>
  distances_m.map(distance_m => ({ discId: 'meteor', shape, distance_m, side_m: 0 }));
const sign = (file: PlayerFile, t: FittedThrow) => anhyzerSign(file, t, createFlightBatch())!;

describe('the sign of a disc too fast: its distance only on anhyzer', () => {
  it('is none for a disc that suits any arm', () => {
    const slow = { ...METEOR, speed: 5 };
    expect(anhyzerSign(fileOf([], slow), thrown(19, slow), createFlightBatch())).toBeNull();
  });

  // the trade's own expectation of a fast driver from a slow arm (common practice, no source)
  it('shows from the model for a slow arm with a fast driver, and not for a strong one', () => {
    const file = fileOf([]);
    expect(sign(file, thrown(19))).toMatchObject({ basis: 'model', isShown: true, throws: 0 });
    expect(sign(file, thrown(29))).toMatchObject({ basis: 'model', isShown: false });
    expect(sign(file, thrown(29)).gain_m).toBeLessThan(sign(file, thrown(19)).gain_m);
  });

  it('is not shown where the fit knows too little', () => {
    const t = { ...thrown(19), releaseSpeedSd: 0.2, stabilityOffsetSd: 4 };
    expect(sign(fileOf([]), t).isShown).toBe(false);
  });

  it('rests on measured throws of one session once there are enough of them', () => {
    const t = { ...thrown(29), distanceSd_m: 4 };
    const measured = sign(fileOf([...noted('flat', 60, 62, 61, 59), ...noted('anhyzer', 72, 70, 71, 73)]), t);
    // [C] means 60.5 and 71.5; standard error 4·√(1/4 + 1/4)
    expect(measured).toMatchObject({ basis: 'measured', throws: 4, isShown: true });
    expect(measured.gain_m).toBeCloseTo(11, 9);
    expect(measured.gainSd_m).toBeCloseTo(4 * Math.SQRT1_2, 9);
    expect(sign(fileOf([...noted('flat', 60, 62), ...noted('anhyzer', 72, 70, 71)]), t).basis).toBe('model');
  });

  it('does not let one slip decide', () => {
    const t = { ...thrown(29), distanceSd_m: 4 };
    const slipped = sign(fileOf([...noted('flat', 70, 71, 69, 70, 20), ...noted('anhyzer', 70, 71, 69, 70)]), t);
    expect(Math.abs(slipped.gain_m)).toBeLessThan(0.5);
  });

  it('says so of the arm only where the arm is the matter', () => {
    const slow = sign(fileOf([]), thrown(19));
    const units = { length: 'm', speed: 'mps' } as const;
    expect(anhyzerText(slow, 'too fast for now', units)).toContain('a sign that it is too fast for now');
    expect(anhyzerText(slow, 'ready', units)).toContain('more stable than your arm needs');
    expect(anhyzerText(slow, 'ready', { length: 'ft', speed: 'mph' })).toMatch(/\d+ ft/);
  });
});
