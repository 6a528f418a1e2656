import { describe, expect, it } from 'vitest';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { normalSamples } from '../../../core/flight/normal-samples.ts';
import type { FittedPlayer, FittedThrow } from '../../../core/player/fitted-player.ts';
import { sessionLesson } from '../../../core/player/session-lesson.ts';
import { shiftedThrow } from '../../../core/player/shifted-throw.ts';
import { chooseShot, TEE_EFFORT } from '../../../core/strategy/choose-shot.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { evaluateShot } from '../../../core/strategy/evaluate-shot.ts';
import { askable, measureNext } from '../../../core/strategy/measure-next.ts';
import { type HoleMeasuring, measuringHole } from '../../../core/strategy/measuring-hole.ts';
import { mixSeed } from '../../../core/strategy/mix-seed.ts';
import { planHoleInFull } from '../../../core/strategy/plan-hole.ts';
import { smoothOverResults } from '../../../core/strategy/smooth-over-results.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { bareHole } from './small-world.ts';
import { ROLLERS, specialPlayer } from './special-player.ts';

const QUESTION = { throws: 10, draws: 16, seed: 5 };
const MAP = bareHole({ basket: [0, 84] });
const known = inventedPlayer({ arm_mps: 23, discs: [BAG[0]!, BAG[1]!] });
/** The same player, of whose midrange hardly anything is known. */
const unsure: FittedPlayer = {
  ...known,
  throws: known.throws.map(t =>
    t.discId === 'kettle' ? { ...t, basis: 'predicted' as const, releaseSpeedSd: 0.09, stabilityOffsetSd: 1 } : t,
  ),
};
const plannedFor = (player: FittedPlayer) =>
  planHoleInFull({ map: MAP, libraries: makeDayLibraries(player, aDay(0), {}, 5, 1) });
const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('a hole where a roller is thrown', () => {
  it('has no worth in flat throws of its disc that the roller would not feel, and breaks nothing', () => {
    const rolling = specialPlayer(20, [{ discId: 'ferry', shape: 'roller', landings: ROLLERS }], [BAG[0]!, BAG[3]!]);
    const planned = plannedFor(rolling);
    expect(planned.choice.best.shot.shape).toBe('roller');
    const { worths } = measuringHole(planned, [0, 1], QUESTION);
    for (const { gains } of worths) for (const gain of gains) expect(Number.isFinite(gain)).toBe(true);
    expect(Math.abs(meanOf(worths[1]!.gains))).toBeLessThan(0.02);
  });
});

describe('the worth of measuring on one hole', () => {
  const planned = plannedFor(unsure);
  const { worths } = measuringHole(planned, [0, 1], QUESTION);

  it('is the same for the same seed, and one gain a result', () => {
    expect(measuringHole(planned, [0, 1], QUESTION).worths).toEqual(worths);
    expect(worths.map(w => w.gains.length)).toEqual([16, 16]);
  });

  it('is more for the disc hardly known than for the well-known one', () => {
    const [thimble, kettle] = worths.map(w => meanOf(w.gains));
    expect(kettle!).toBeGreaterThan(thimble!);
    expect(worths[1]!.changes).toBeGreaterThan(0.05);
  });

  it('is nothing where nothing is left to learn', () => {
    const sure = {
      ...known,
      throws: known.throws.map(t => ({ ...t, releaseSpeedSd: 0, stabilityOffsetSd: 0 })),
    };
    const { worths: none } = measuringHole(plannedFor(sure), [0, 1], QUESTION);
    for (const { gains } of none) expect(Math.abs(meanOf(gains))).toBeLessThan(0.005);
  });

  it('agrees with choosing anew in full under each result, within the sampling error', () => {
    // [C] the other way: the whole search of shots run again for the player each result would show, on 512 samples
    const k = 1;
    const lesson = sessionLesson(unsure.throws[k]!, QUESTION.throws, createFlightBatch());
    const results = normalSamples(QUESTION.draws, mixSeed(QUESTION.seed, 11));
    const { choice } = planned;
    const gains = [...Array(8).keys()].map(j => {
      const moved: FittedThrow = {
        ...shiftedThrow(unsure.throws[k]!, lesson.shiftOf(results[8 * j]!, results[8 * j + 1]!)),
        releaseSpeedSd: lesson.after.releaseSpeedSd,
        stabilityOffsetSd: lesson.after.stabilityOffsetSd,
      };
      const player = { ...unsure, throws: unsure.throws.map((t, i) => (i === k ? moved : t)) };
      const again = plannedFor(player);
      // later lies valued as the plan does, so that only the tee shot differs
      const table = { ...again.solved.table, field: planned.solved.table.field };
      const best = chooseShot(table, { east_m: 0, north_m: 0, ground_m: 0 }, TEE_EFFORT).best;
      const { shot, aim_deg } = choice.best;
      const { discId, hand } = player.throws[shot.throwIndex]!;
      const { throwIndex: _, ...line } = shot;
      const stayed = evaluateShot(
        { ...again, solved: { ...again.solved, table } },
        { ...line, discId, hand, aimBearing_deg: aim_deg },
      )!;
      return Math.max(0, stayed.shot.expectedThrows - best.outcome.expectedThrows);
    });
    const mine = worths[k]!.gains.slice(0, 8);
    const error = Math.sqrt(mine.reduce((sum, g) => sum + (g - meanOf(mine)) ** 2, 0) / 7 / 8);
    // ours looks among a few shots only, so it may find less, never much more
    expect(meanOf(mine)).toBeLessThan(meanOf(gains) + 2 * error + 0.02);
    expect(meanOf(mine)).toBeGreaterThan(0.3 * meanOf(gains) - 2 * error - 0.02);
  });
});

describe('what to measure next', () => {
  const hole = (ref: string, ...gains: number[][]): HoleMeasuring => ({
    ref,
    worths: gains.map((own, throwIndex) => ({ throwIndex, gains: own, changes: meanOf(own) > 0 ? 0.5 : 0 })),
  });

  it('sums holes result by result, most worth first, with the error of the sum', () => {
    const answer = measureNext('Here', unsure, [hole('1', [0, 0], [0.2, 0.4]), hole('2', [0.1, -0.1], [0.1, 0.1])], {
      throws: 10,
      draws: 2,
      seed: 1,
    });
    expect(answer.rows.map(row => row.discId)).toEqual(['kettle', 'thimble']);
    // [C] by hand: 0.3 and 0.5, mean 0.4, standard error 0.1; and 0.1, −0.1
    expect(answer.rows[0]!.worth).toBeCloseTo(0.4, 12);
    expect(answer.rows[0]!.standardError).toBeCloseTo(0.1, 12);
    expect(answer.rows[0]).toMatchObject({ isClear: true, isAsGoodAsFirst: true });
    expect(answer.rows[0]!.holes.map(h => h.ref)).toEqual(['1', '2']);
    expect(answer.rows[1]).toMatchObject({ isClear: false, isAsGoodAsFirst: false });
    expect(answer.rows[1]!.worth).toBeCloseTo(0, 12);
    expect(answer.rows[0]!.averageDaySd_m.after).toBeLessThan(answer.rows[0]!.averageDaySd_m.before);
  });

  it('calls equal what the error cannot tell apart', () => {
    const answer = measureNext('Here', unsure, [hole('1', [0.1, 0.5, 0.2], [0.5, 0.1, 0.3])], {
      throws: 10,
      draws: 3,
      seed: 1,
    });
    expect(answer.rows.map(row => row.isAsGoodAsFirst)).toEqual([true, true]);
  });

  it('asks of allowed throwing discs only: never of the putting putter', () => {
    const throws = unsure.throws.map((t, i) => (i === 0 ? { ...t, role: 'putting' as const } : t));
    expect(askable({ ...unsure, throws }, {})).toEqual([1]);
    expect(askable(unsure, { classes: ['putter'] })).toEqual([0]);
  });
});

describe('smoothing over results', () => {
  const normals = normalSamples(24, 9);
  const points = Array.from({ length: 24 }, (_, i) => [normals[8 * i]!, normals[8 * i + 1]!] as const);

  it('gives a quadratic back as it is', () => {
    const truth = points.map(([a, b]) => 0.3 - 0.2 * a + 0.1 * b + 0.05 * a * a - 0.02 * a * b + 0.07 * b * b);
    smoothOverResults(points, truth).forEach((value, i) => {
      expect(Math.abs(value - truth[i]!)).toBeLessThan(1e-5);
    });
  });

  it('takes most of the noise away', () => {
    const noise = points.map((_, i) => normals[8 * i + 2]!);
    const left = smoothOverResults(points, noise);
    const power = (values: readonly number[]) => values.reduce((sum, v) => sum + v * v, 0);
    // [C] 6 of 24 degrees of freedom stay
    expect(power(left)).toBeLessThan(0.5 * power(noise));
  });

  it('refuses fewer results than it has unknowns', () => {
    expect(() => smoothOverResults(points.slice(0, 6), [0, 0, 0, 0, 0, 0])).toThrow(RangeError);
  });
});
