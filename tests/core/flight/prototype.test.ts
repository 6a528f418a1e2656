import { describe, expect, it } from 'vitest';
import { ratedArmSpeed_mps } from '../../../core/flight/disc-model.ts';
import { BAG, DISC_NAMES, type DiscName, farthest, thrown } from './throws.ts';

// Everything here is regression against our own prototype, which was no measurement: it proves that nothing moved.

type Cell = readonly [carry_m: number, apex_m: number, left_m: number];
/** Flat, nose 0, calm, launch re-optimised, at an arm of 16, 20, 24 and 30 m/s. */
const FLIGHTS: Readonly<Record<DiscName, readonly Cell[]>> = {
  putter: [
    [35, 3, 1.6],
    [51, 3.9, 1.9],
    [67, 5, 2.3],
    [88, 6.7, 3.3],
  ],
  drivingPutter: [
    [37, 3.2, 0.9],
    [55, 4.4, 0.6],
    [73, 5.8, -0.6],
    [98, 8.8, -3.4],
  ],
  midrange: [
    [40, 2.9, 2],
    [61, 4, 1.3],
    [83, 5.4, -1.1],
    [112, 8, -7.5],
  ],
  overstableMid: [
    [36, 2.4, 3.6],
    [56, 3.1, 3.9],
    [76, 3.9, 4.3],
    [104, 5.1, 5.1],
  ],
  fairway: [
    [41, 2.7, 3],
    [65, 3.6, 2.7],
    [89, 4.8, 0.9],
    [122, 6.8, -4.6],
  ],
  control: [
    [40, 2.5, 3.9],
    [66, 3.3, 3.9],
    [92, 4.3, 2.9],
    [128, 6.1, -1.5],
  ],
  distance: [
    [35, 2.8, 5.4],
    [62, 3.1, 6.2],
    [90, 3.8, 6.3],
    [130, 5.2, 4.8],
  ],
};

describe('farthest flat flights, regression against our own prototype', () => {
  it.each(DISC_NAMES)('%s', name => {
    [16, 20, 24, 30].forEach((arm_mps, i) => {
      const [carry_m, apex_m, left_m] = FLIGHTS[name][i];
      const got = farthest(BAG[name], { arm_mps });
      expect(Math.abs(got.along_m - carry_m), `carry at ${arm_mps}: ${got.along_m}`).toBeLessThan(1.5);
      expect(Math.abs(got.apex_m - apex_m), `apex at ${arm_mps}: ${got.apex_m}`).toBeLessThan(0.3);
      expect(Math.abs(got.left_m - left_m), `finish at ${arm_mps}: ${got.left_m}`).toBeLessThan(0.5);
    });
  });

  it.each([
    { name: 'putter', want_s: [3.6, 5.8, 7] },
    { name: 'midrange', want_s: [3.9, 6.7, 8.5] },
    { name: 'distance', want_s: [2.8, 5.6, 7.3] },
  ] as const)('$name stays up $want_s s at 16, 24 and 30 m/s', ({ name, want_s }) => {
    [16, 24, 30].forEach((arm_mps, i) => {
      expect(Math.abs(farthest(BAG[name], { arm_mps }).time_s - want_s[i])).toBeLessThan(0.2);
    });
  });
});

describe('finish at rated speed in % of the distance, left positive, regression against our own prototype', () => {
  const finish = (speed: number, turn: number, fade: number): number => {
    const setting = { arm_mps: ratedArmSpeed_mps(speed), launch_deg: 10.5 - 0.33 * speed };
    const { left_m, along_m } = thrown({ speed, glide: 5, turn, fade }, setting);
    return (100 * left_m) / along_m;
  };
  it.each([
    { speed: 2, byFade: [0.1, 1.8, 4.3, 6.9, 9.2, 11.3], byTurn: [3.1, 1.8, 0.5, -0.8, -2.1, -3.5, -4.8] },
    { speed: 7, byFade: [0.2, 2.9, 6, 8.3, 10.2, 11.8], byTurn: [5.5, 2.9, 0.3, -2.5, -5.3, -8.1, -10.7] },
    { speed: 13, byFade: [0.2, 2.6, 5.2, 7.2, 8.9, 10.3], byTurn: [7.4, 5.2, 2.9, 0.4, -2.3, -5.1, -8] },
  ])('speed $speed, fade 0 to 5 and turn +1 to −5', ({ speed, byFade, byTurn }) => {
    byFade.forEach((want, fade) => {
      expect(Math.abs(finish(speed, 0, fade) - want)).toBeLessThan(0.15);
    });
    byTurn.forEach((want, i) => {
      expect(Math.abs(finish(speed, 1 - i, speed >= 9 ? 2 : 1) - want)).toBeLessThan(0.15);
    });
  });
});

it('a headwind of 5 m/s costs what the prototype said (regression), launch re-optimised at 26 m/s', () => {
  for (const [name, lost_m] of [
    ['putter', 13],
    ['drivingPutter', 15],
    ['midrange', 16],
    ['overstableMid', 10],
    ['fairway', 13],
    ['control', 10],
    ['distance', 4],
  ] as const) {
    const calm_m = farthest(BAG[name], { arm_mps: 26 }).along_m;
    const windy_m = farthest(BAG[name], { arm_mps: 26, windX_mps: -5 }).along_m;
    expect(Math.abs(calm_m - windy_m - lost_m), `${name}: ${calm_m - windy_m}`).toBeLessThan(1);
  }
});
