import { describe, expect, it } from 'vitest';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { planHole } from '../../../core/strategy/plan-hole.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { shortOpen } from './sketched-holes.ts';

const player = inventedPlayer({ arm_mps: 23, discs: [BAG[0], BAG[1], BAG[3]] });
const libraries = makeDayLibraries(player, aDay(3, 60), {}, 5, 1);
const plan = planHole({ map: shortOpen(), libraries, flips: true });

describe('the choice over a rose of winds', () => {
  it('covers calm air and 16 directions at each speed, once', () => {
    const winds = plan.flips.map(flip => `${flip.wind_mps} ${flip.windFrom_deg}`);
    expect(new Set(winds).size).toBe(winds.length);
    expect(winds).toHaveLength(1 + 4 * 16);
    expect(winds).toContain('0 0');
    expect(winds).toContain('12 337.5');
  });

  it('names only discs of the bag, and a nearest change that is one of its winds', () => {
    const ids = new Set(player.throws.map(fitted => fitted.discId));
    for (const { choice } of plan.flips) expect(ids).toContain(choice.discId);
    const { nearestFlip } = plan;
    const other = plan.flips.filter(
      flip => flip.choice.discId !== plan.choice.discId || flip.choice.hand !== plan.choice.hand,
    );
    if (nearestFlip === null) {
      expect(other).toEqual([]);
      return;
    }
    const { change_mps, ...flip } = nearestFlip;
    expect(other).toContainEqual(flip);
    // own derivation: no other flip is nearer, as the length of the difference of two wind vectors (law of cosines)
    for (const { wind_mps, windFrom_deg } of other) {
      const angle = ((windFrom_deg - 60) * Math.PI) / 180;
      const change = Math.sqrt(Math.max(0, wind_mps ** 2 + 9 - 2 * wind_mps * 3 * Math.cos(angle)));
      expect(change).toBeGreaterThan(change_mps - 1e-9);
    }
  });

  it('is left out unless asked for, and does not change the plan', () => {
    const without = planHole({ map: shortOpen(), libraries });
    expect(without.flips).toEqual([]);
    expect(without.nearestFlip).toBeNull();
    expect({ ...plan, flips: [], nearestFlip: null }).toEqual(without);
  });
});
