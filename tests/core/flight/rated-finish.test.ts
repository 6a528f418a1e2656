import { describe, expect, it } from 'vitest';
import { ratedArmSpeed_mps } from '../../../core/flight/disc-model.ts';
import { BAG, DISC_NAMES, farthest, thrown } from './throws.ts';

// Direction of each effect: common practice, no source (the trade's meaning of its own numbers).

const SPEEDS = [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13];
/** Evenly spaced values, ends included. */
const grid = (from: number, to: number, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);

/** Finish in % of the distance, left positive, of a flat backhand at the arm speed the numbers are meant for. */
function finish_percent(speed: number, turn: number, fade: number, glide: number): number {
  // launch that suits the speed number; own prototype
  const launch_deg = 10.5 - 0.33 * speed;
  const { along_m, left_m } = thrown({ speed, glide, turn, fade }, { arm_mps: ratedArmSpeed_mps(speed), launch_deg });
  return (100 * left_m) / along_m;
}

const expectRising = (values: readonly number[], least = 0): void => {
  for (let i = 1; i < values.length; i++)
    expect(values[i] - values[i - 1], `step ${i} of ${values}`).toBeGreaterThan(least);
};

describe.each(SPEEDS)('speed %d at its rated arm speed', speed => {
  it.each([
    { turn: 0, glide: 5 },
    { turn: -2, glide: 5 },
    { turn: 0, glide: 3 },
  ])('more fade finishes further left, in steps of a quarter (turn $turn, glide $glide)', ({ turn, glide }) => {
    expectRising(grid(0, 5, 20).map(fade => finish_percent(speed, turn, fade, glide)));
  });

  it.each([1, 2, 3])('more turn finishes further right, in steps of a quarter (fade %d)', fade => {
    expectRising(grid(-5, 1, 24).map(turn => finish_percent(speed, turn, fade, 5)));
  });

  it('a whole unit of fade is worth 0.8 to 4 % of the distance, a unit of turn 0.8 to 4 %', () => {
    // regression: own prototype, table of finishes at rated speed, least and greatest step widened by a third
    for (const values of [
      [1, 2, 3, 4, 5].map(fade => finish_percent(speed, 0, fade, 5)),
      [-4, -3, -2, -1, 0].map(turn => finish_percent(speed, turn, speed >= 9 ? 2 : 1, 5)),
    ]) {
      expectRising(values, 0.8);
      for (let i = 1; i < values.length; i++) expect(values[i] - values[i - 1]).toBeLessThan(4);
    }
  });

  it('neither turn nor fade ends within half a percent of the line', () => {
    // regression: own prototype has 0.1 to 0.2 %
    expect(Math.abs(finish_percent(speed, 0, 0, 5))).toBeLessThan(0.5);
  });

  it('more glide carries farther', () => {
    const carries = grid(1, 7, 12).map(
      glide => farthest({ speed, glide, turn: -0.5, fade: 1.5 }, { arm_mps: ratedArmSpeed_mps(speed) }).along_m,
    );
    expectRising(carries);
    // regression: own prototype, 1 to 2 % of the distance a unit
    const perUnit = (carries[12] / carries[0]) ** (1 / 6) - 1;
    expect(perUnit).toBeGreaterThan(0.01);
    expect(perUnit).toBeLessThan(0.025);
  });
});

describe.each(DISC_NAMES)('%s', name => {
  it('carries farther the faster it is thrown, 12 to 36 m/s', () => {
    expectRising(grid(12, 36, 48).map(arm_mps => farthest(BAG[name], { arm_mps }).along_m));
  });

  // S-shape: published abstract, as recalled
  it('thrown with more hyzer lands further left, until the S-curve of landing against bank bends over, beyond 8°', () => {
    const { launch_deg } = farthest(BAG[name], { arm_mps: 26 });
    expectRising(grid(-8, 8, 16).map(hyzer_deg => thrown(BAG[name], { arm_mps: 26, launch_deg, hyzer_deg }).left_m));
  });

  it('measured as more stable lands further left; worn lands further right', () => {
    const { launch_deg } = farthest(BAG[name], { arm_mps: 26 });
    const left = (change: object) => thrown({ ...BAG[name], ...change }, { arm_mps: 26, launch_deg }).left_m;
    expectRising(grid(-1.5, 1.5, 12).map(stabilityOffset => left({ stabilityOffset })));
    expectRising(grid(1, 0, 10).map(wear => left({ wear })));
  });
});
