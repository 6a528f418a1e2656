import { describe, expect, it } from 'vitest';
import { discModel, releaseSpeedShare } from '../../../core/flight/disc-model.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { type Hand, type Handedness, releaseSpin_radps, spinSign } from '../../../core/flight/release.ts';
import { BAG, POWER_LAW } from './throws.ts';

describe('spin, counter-clockwise from above positive', () => {
  // definition: a right-hander's backhand spins clockwise; the other hand or the other side of the body turns it round
  it.each([
    { hand: 'backhand', handedness: 'right', sign: -1 },
    { hand: 'forehand', handedness: 'right', sign: 1 },
    { hand: 'backhand', handedness: 'left', sign: 1 },
    { hand: 'forehand', handedness: 'left', sign: -1 },
  ] as const)('$hand, $handedness-handed: $sign', ({ hand, handedness, sign }) => {
    expect(spinSign(hand, handedness)).toBe(sign);
    expect(Math.sign(releaseSpin_radps(hand, handedness, 25, 0.212))).toBe(sign);
  });

  it('of a backhand at 25 m/s and 21.2 cm is 0.46·25/0.106 = 108.49 rad/s ([C] by hand; the 0.46 is assumed)', () => {
    expect(Math.abs(releaseSpin_radps('backhand', 'left', 25, 0.212) - 108.49)).toBeLessThan(0.005);
  });

  it('of a forehand is less, at every speed in proportion', () => {
    // direction: Winograd & Engsberg 2012
    const ratios = [15, 20, 30].map(
      speed_mps =>
        releaseSpin_radps('forehand', 'left', speed_mps, 0.212) /
        releaseSpin_radps('backhand', 'right', speed_mps, 0.212),
    );
    for (const ratio of ratios) expect(Math.abs(ratio - ratios[0])).toBeLessThan(1e-12);
    expect(ratios[0]).toBeLessThan(1);
    expect(ratios[0]).toBeGreaterThan(0.5);
  });
});

describe('share of the arm speed', () => {
  // [C] 1 − 0.006·(13 − S) by hand; the 6 % are assumed
  it.each([
    [2, 0.934],
    [5, 0.952],
    [9, 0.976],
    [13, 1],
  ])('speed %d leaves the hand at %d of it', (speed, want) => {
    expect(Math.abs(releaseSpeedShare(speed) - want)).toBeLessThan(1e-12);
  });
});

describe('hands', () => {
  const flier = createFlier();
  const model = discModel(BAG.overstableMid);
  const sideways_m = (hand: Hand, handedness: Handedness, hyzer_deg: number, spinOf: Hand = hand): number => {
    flier.setDisc(model);
    flier.setAir(1.2, 0, 0, POWER_LAW);
    flier.setPlane(0, 0, 0);
    flier.setStep(0.02);
    const spin = spinSign(hand, handedness) * Math.abs(releaseSpin_radps(spinOf, handedness, 24, model.diameter_m));
    expect(flier.fly(24, 0, 8, 0, hyzer_deg, spin, 1.2)).toBe(true);
    return flier.landing[LANDING.y];
  };

  it('a fading disc ends left of a right-hander’s backhand and a left-hander’s forehand, right of the other two', () => {
    expect(sideways_m('backhand', 'right', 0)).toBeGreaterThan(1);
    expect(sideways_m('forehand', 'left', 0)).toBeGreaterThan(1);
    expect(sideways_m('forehand', 'right', 0)).toBeLessThan(-1);
    expect(sideways_m('backhand', 'left', 0)).toBeLessThan(-1);
  });

  it.each([-10, 0, 12])('a forehand with a backhand’s spin mirrors it exactly, at %d° of hyzer', hyzer_deg => {
    const backhand_m = sideways_m('backhand', 'right', hyzer_deg);
    expect(Math.abs(sideways_m('forehand', 'right', hyzer_deg, 'backhand') + backhand_m)).toBeLessThan(1e-9);
    expect(Math.abs(sideways_m('backhand', 'left', hyzer_deg) + backhand_m)).toBeLessThan(1e-9);
  });

  it('a forehand with its own, lesser spin fades further than the backhand does (more spin is straighter)', () => {
    expect(-sideways_m('forehand', 'right', 0)).toBeGreaterThan(sideways_m('backhand', 'right', 0));
  });
});
