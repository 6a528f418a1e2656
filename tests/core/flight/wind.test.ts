import { describe, expect, it } from 'vitest';
import { BAG, DISC_NAMES, type DiscName, farthest, thrown } from './throws.ts';

// Directions: common practice, no source. The launch is chosen again for every wind: at a fixed launch they do not all hold.

const ARM_MPS = 26;
const CALM = Object.fromEntries(DISC_NAMES.map(name => [name, farthest(BAG[name], { arm_mps: ARM_MPS })]));
const into = (name: DiscName, windX_mps: number) => farthest(BAG[name], { arm_mps: ARM_MPS, windX_mps });
const finish = ({ left_m, along_m }: { left_m: number; along_m: number }): number => left_m / along_m;

describe.each([2, 4, 5, 6, 8])('a headwind of %d m/s', wind_mps => {
  it('takes the greatest share from the putter, then midrange, fairway, control and distance driver', () => {
    const losses = (['putter', 'midrange', 'fairway', 'control', 'distance'] as const).map(
      name => 1 - into(name, -wind_mps).along_m / CALM[name].along_m,
    );
    for (let i = 1; i < losses.length; i++) expect(losses[i], `${losses}`).toBeLessThan(losses[i - 1]);
    expect(losses.at(-1)).toBeGreaterThan(0);
  });

  it.each(DISC_NAMES)('makes the %s less stable, and as a tailwind more', name => {
    expect(finish(into(name, -wind_mps))).toBeLessThan(finish(CALM[name]) - 0.0003);
    expect(finish(into(name, wind_mps))).toBeGreaterThan(finish(CALM[name]) + 0.0003);
  });

  it.each(DISC_NAMES)('asks for a lower launch with the %s, a tailwind for a higher', name => {
    expect(into(name, -wind_mps).launch_deg).toBeLessThan(CALM[name].launch_deg);
    expect(into(name, wind_mps).launch_deg).toBeGreaterThan(CALM[name].launch_deg);
  });
});

describe.each(DISC_NAMES)('%s in a wind from the side', name => {
  it('is carried the way the wind blows, further in more wind', () => {
    const { launch_deg, left_m } = CALM[name];
    const drifts = [-8, -5, -2, 2, 5, 8].map(
      windY_mps => thrown(BAG[name], { arm_mps: ARM_MPS, launch_deg, windY_mps }).left_m - left_m,
    );
    for (let i = 1; i < drifts.length; i++) expect(drifts[i], `${drifts}`).toBeGreaterThan(drifts[i - 1] + 1);
    expect(drifts[2]).toBeLessThan(0);
    expect(drifts[3]).toBeGreaterThan(0);
  });
});

it('at the same launch a headwind lifts an overstable disc, which then ends further left: why the launch is chosen again', () => {
  const { launch_deg, left_m } = CALM.overstableMid;
  const lifted = thrown(BAG.overstableMid, { arm_mps: ARM_MPS, launch_deg, windX_mps: -5 });
  // regression against our own prototype: 4.5 m left in calm, 6.8 m in the wind
  expect(Math.abs(left_m - 4.5)).toBeLessThan(0.5);
  expect(Math.abs(lifted.left_m - 6.8)).toBeLessThan(0.5);
  expect(lifted.apex_m).toBeGreaterThan(CALM.overstableMid.apex_m);
});

it('a tailwind helps slow discs, and the model lets fast drivers lose by it: the weak spot that plans call uncertain', () => {
  // regression against our own prototype, 5 m/s at an arm of 26 m/s: +10 % putter, +5 % midrange, +1 % fairway, −6 % distance
  const gain = (name: DiscName) => 100 * (into(name, 5).along_m / CALM[name].along_m - 1);
  for (const [name, want] of [
    ['putter', 10],
    ['midrange', 5],
    ['fairway', 1],
    ['control', -2],
    ['distance', -6],
  ] as const)
    expect(Math.abs(gain(name) - want), `${name} ${gain(name)}`).toBeLessThan(1);
});
