import { expect, it } from 'vitest';
import { SAMPLE_DIMENSIONS } from '../../../core/flight/normal-samples.ts';
import { independentThrows, throwsOfOneRound } from '../../../core/practice/draw-throw.ts';
import type { Page } from '../../../core/practice/play-book.ts';
import { randomStream } from '../../../core/practice/random-stream.ts';
import { planningScatter } from '../../../core/strategy/throw-samples.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';

const player = inventedPlayer({ arm_mps: 24, discs: BAG.slice(0, 1) });
const doubtful = { ...player, throws: player.throws.map(fitted => ({ ...fitted, releaseSpeedSd: 0.04 })) };
const shot = { throwIndex: 0, shape: 'flat', hyzer_deg: 0, launch_deg: 8, height: 'standard', power: 1 } as const;
const page = { shot } as unknown as Page;
const ROUNDS = 4000;

/** Speed samples of two throws in each of many rounds. */
function pairs(who: typeof player): [number, number][] {
  const random = randomStream(5, 1);
  const row = new Float64Array(SAMPLE_DIMENSIONS);
  return Array.from({ length: ROUNDS }, (_, round) => {
    const draw = throwsOfOneRound(who, random, 5, round);
    draw(page, row);
    const first = row[0]!;
    draw(page, row);
    return [first, row[0]!];
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

it('the same day: each throw scatters as before, and two throws of a disc share what the fit leaves unknown', () => {
  const both = pairs(doubtful);
  const variance = mean(both.flat().map(value => value ** 2));
  // standard error of the variance of 4,000 pairs that share a part: under 0.03
  expect(Math.abs(variance - 1)).toBeLessThan(0.09);
  const correlation = mean(both.map(([a, b]) => a * b));
  const fitted = doubtful.throws[0]!;
  const want = fitted.releaseSpeedSd ** 2 / planningScatter(fitted, shot).speed ** 2; // [C] share of the variance that is common
  expect(want).toBeGreaterThan(0.2);
  expect(Math.abs(correlation - want)).toBeLessThan(0.08);
});

it('independent throws share nothing', () => {
  const random = randomStream(5, 1);
  const draw = independentThrows(random);
  const row = new Float64Array(SAMPLE_DIMENSIONS);
  const speeds = Array.from({ length: 2 * ROUNDS }, () => {
    draw(page, row);
    return row[0]!;
  });
  const correlation = mean(Array.from({ length: ROUNDS }, (_, i) => speeds[2 * i]! * speeds[2 * i + 1]!));
  expect(Math.abs(correlation)).toBeLessThan(0.06);
});
