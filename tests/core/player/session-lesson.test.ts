import { describe, expect, it } from 'vitest';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { normalSamples } from '../../../core/flight/normal-samples.ts';
import type { FittedThrow } from '../../../core/player/fitted-player.ts';
import { sessionLesson } from '../../../core/player/session-lesson.ts';
import { shiftedThrow } from '../../../core/player/shifted-throw.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';
import { fitOf } from './fit-trials.ts';
import { INVENTED_BAG, inventPlayer } from './synthetic-player.ts';

const [known] = inventedPlayer({ arm_mps: 23, discs: [BAG[1]!] }).throws as [FittedThrow];
const t: FittedThrow = { ...known, releaseSpeedSd: 0.05, stabilityOffsetSd: 0.6 };
const lesson = (throws: number, of = t) => sessionLesson(of, throws, createFlightBatch());

describe('what a session teaches', () => {
  it('leaves less doubt the more is thrown, and never more than before', () => {
    const doubts = [1, 5, 10, 40].map(throws => lesson(throws).after);
    for (const key of ['releaseSpeedSd', 'stabilityOffsetSd', 'along_m', 'left_m'] as const) {
      const values = [lesson(10).before[key], ...doubts.map(d => d[key])];
      for (let i = 1; i < values.length; i++) expect(values[i]!).toBeLessThan(values[i - 1]!);
    }
  });

  it('teaches nothing of a throw without doubt', () => {
    const { shiftOf, before, after } = lesson(10, { ...known, releaseSpeedSd: 0, stabilityOffsetSd: 0 });
    expect(shiftOf(2, -2).logSpeed).toBeCloseTo(0, 6);
    expect(shiftOf(2, -2).stability).toBeCloseTo(0, 6);
    expect(before.along_m).toBe(0);
    expect(after.along_m).toBeLessThan(1e-3); // under a millimetre
  });

  it('what is learnt and what is left make up the doubt there was (law of total variance)', () => {
    const { before, after, shiftOf } = lesson(10);
    const normals = normalSamples(4096, 3);
    let [speed, stability] = [0, 0];
    for (let i = 0; i < 4096; i++) {
      const shift = shiftOf(normals[8 * i]!, normals[8 * i + 1]!);
      speed += shift.logSpeed ** 2 / 4096;
      stability += shift.stability ** 2 / 4096;
    }
    expect(speed + after.releaseSpeedSd ** 2).toBeCloseTo(before.releaseSpeedSd ** 2, 5);
    expect(Math.abs((stability + after.stabilityOffsetSd ** 2) / before.stabilityOffsetSd ** 2 - 1)).toBeLessThan(0.01);
  });

  it('with a great doubt before, is as sure of the distance as the mean of the throws: σ/√n', () => {
    const wide = { ...t, releaseSpeedSd: 0.5, stabilityOffsetSd: 5 };
    const { after } = lesson(10, wide);
    // [C] standard error of a mean of ten
    expect(Math.abs(after.along_m / (wide.distanceSd_m / Math.sqrt(10)) - 1)).toBeLessThan(0.1);
    expect(Math.abs(after.left_m / (wide.sideSd_m / Math.sqrt(10)) - 1)).toBeLessThan(0.1);
  });

  it('foretells how sure a real fit is of the distance after the session, within a third', () => {
    const bag = (throws: number) =>
      INVENTED_BAG.filter(d => ['acorn', 'lantern', 'willow'].includes(d.id)).map(d => ({
        ...d,
        throws: d.id === 'willow' ? throws : 12,
      }));
    const file = (throws: number) => inventPlayer({ seed: 12, arm_mps: 24, discs: bag(throws) }).file;
    const pick = (throws: number) => fitOf(file(throws)).throws.find(x => x.discId === 'willow')!;
    const [few, more] = [pick(3), pick(13)];
    const foretold = lesson(10, few);
    const ratio = (few.averageDaySd_m * foretold.after.along_m) / foretold.before.along_m / more.averageDaySd_m;
    expect(Math.abs(ratio - 1)).toBeLessThan(0.33);
  });

  it('refuses a session without throws', () => {
    expect(() => lesson(0)).toThrow(RangeError);
  });
});

describe('a shifted throw', () => {
  it('flies as a disc built with that stability', () => {
    const stable = inventedPlayer({ arm_mps: 23, discs: [BAG[1]!] }).throws[0] as FittedThrow;
    const shifted = shiftedThrow(stable, { logSpeed: Math.log(1.1), stability: 1.5 });
    expect(shifted.releaseSpeed_mps).toBeCloseTo(1.1 * stable.releaseSpeed_mps, 9);
    expect(shifted.stabilityOffset).toBe(1.5);
    const back = shiftedThrow(shifted, { logSpeed: -Math.log(1.1), stability: -1.5 });
    expect(back.model.baseMoment).toBeCloseTo(stable.model.baseMoment, 12);
    expect(shifted.model.baseMoment).toBeGreaterThan(stable.model.baseMoment);
  });
});
