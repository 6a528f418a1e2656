import { describe, expect, it } from 'vitest';
import { slopedTerrain } from '../core/strategy/small-world.ts';
import { knownPlayer, librariesFor, planOf, reachOf, shotWith } from './plans.ts';

// Facts of the trade: common practice, no source. Each comes out of a plan; none is a rule in the code.
const SLOPES = [-0.08, -0.04, 0, 0.04, 0.08];
const terrainOf = (slope: number) => (slope === 0 ? {} : { terrain: slopedTerrain(0, slope) });

describe.each([22, 26])('downhill plays shorter and uphill longer for an arm of %d m/s', arm_mps => {
  const player = knownPlayer(arm_mps);
  const libraries = librariesFor(player);

  it('the same disc thrown for distance goes less far with every step uphill', () => {
    // out of reach even downhill, so that every disc is thrown as far as it goes
    const plans = SLOPES.map(slope => planOf(libraries, 2 * reachOf(player, 'ferry'), terrainOf(slope)));
    for (const discId of ['thimble', 'kettle', 'lighthouse']) {
      const distances = plans.map(plan => {
        const shot = shotWith(plan, discId);
        return Math.hypot(shot.distance_m, shot.finish_m);
      });
      for (let i = 1; i < SLOPES.length; i++)
        expect(distances[i], `${discId} ${distances.join(' ')}`).toBeLessThan(distances[i - 1]);
    }
  });

  it('a hole at the midrange’s reach takes more disc uphill, less downhill, and costs more throws uphill', () => {
    const plans = SLOPES.map(slope => planOf(libraries, reachOf(player, 'kettle'), terrainOf(slope)));
    const speedOf = (i: number) =>
      player.throws.find(t => t.discId === plans[i].choice.discId)?.discSpeed ?? Number.NaN;
    const told = plans.map(p => `${p.choice.discId} ${p.expectedThrows.toFixed(3)}`).join(', ');
    expect(speedOf(0), told).toBeLessThan(speedOf(4));
    for (let i = 3; i < SLOPES.length; i++)
      expect(plans[i].expectedThrows, told).toBeGreaterThan(plans[i - 1].expectedThrows);
    expect(plans[0].expectedThrows, told).toBeLessThan(plans[2].expectedThrows);
  });
});
