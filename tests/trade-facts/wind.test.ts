import { describe, expect, it } from 'vitest';
import { knownPlayer, librariesFor, planOf, reachOf, said, worthOf } from './plans.ts';

// Facts of the trade: common practice, no source. Each comes out of a plan; none is a rule in the code.

describe('a strong headwind', () => {
  it.each([21, 24, 27])('moves the choice from the putter to the midrange or on (arm %d m/s)', arm_mps => {
    const player = knownPlayer(arm_mps);
    const length_m = 0.9 * reachOf(player, 'thimble');
    const calm = planOf(librariesFor(player), length_m);
    const windy = planOf(librariesFor(player, { speed_mps: 9, from_deg: 0 }), length_m);
    expect(calm.choice.class, said(calm)).toBe('putter');
    expect(['midrange', 'fairway'], said(windy)).toContain(windy.choice.class);
    expect(worthOf(windy, 'midrange'), said(windy)).toBeLessThan(worthOf(windy, 'putter'));
  });

  it('costs throws, and moves the midrange up on the putter step by step', () => {
    const player = knownPlayer(24);
    const length_m = 0.9 * reachOf(player, 'thimble');
    const plans = [0, 4, 8].map(speed_mps => planOf(librariesFor(player, { speed_mps, from_deg: 0 }), length_m));
    const leads = plans.map(plan => worthOf(plan, 'putter') - worthOf(plan, 'midrange'));
    for (let i = 1; i < plans.length; i++) {
      expect(plans[i].expectedThrows, plans.map(said).join('\n')).toBeGreaterThan(plans[i - 1].expectedThrows);
      expect(leads[i], plans.map(said).join('\n')).toBeGreaterThan(leads[i - 1]);
    }
  });
});
