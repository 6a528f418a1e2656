import { describe, expect, it } from 'vitest';
import type { HolePlan } from '../../core/strategy/plan-report.ts';
import { area, boxRing } from '../core/strategy/sketched-holes.ts';
import { knownPlayer, librariesFor, mean, planOf, reachOf, said } from './plans.ts';

// Facts of the trade: common practice, no source. Each comes out of a plan; none is a rule in the code.

/** Mean place of rest right of the line to the basket. */
function restsRight_m({ choice }: HolePlan): number {
  const aim = (choice.aimFromBasket_deg * Math.PI) / 180;
  return choice.distance_m * Math.sin(aim) + choice.finish_m * Math.cos(aim);
}

describe('out-of-bounds all along the left', () => {
  const left = (edge_m: number) => ({ outOfBounds: [area(boxRing(-300, -100, -edge_m, 500))] });
  const right = (edge_m: number) => ({ outOfBounds: [area(boxRing(edge_m, -100, 300, 500))] });
  const variations = [22, 26].flatMap(arm_mps => {
    const player = knownPlayer(arm_mps);
    return [1, 2].map(seed => ({ player, libraries: librariesFor(player, undefined, seed) }));
  });

  it.each([
    { what: 'a putter’s length', share: 0.95, disc: 'saucer', edge_m: 6, least_m: 1 },
    { what: 'a midrange’s length', share: 1, disc: 'kettle', edge_m: 6, least_m: 1.5 },
    { what: 'two throws', share: 1.45, disc: 'ferry', edge_m: 8, least_m: 6 },
  ])(
    'is played away from on $what: rests further right on average, and rarely out',
    ({ share, disc, edge_m, least_m }) => {
      const shifts: number[] = [];
      const chances: number[] = [];
      const told: string[] = [];
      for (const { player, libraries } of variations) {
        const length_m = share * reachOf(player, disc);
        const open = planOf(libraries, length_m);
        const beside = planOf(libraries, length_m, left(edge_m));
        shifts.push(restsRight_m(beside) - restsRight_m(open));
        chances.push(beside.choice.outOfBoundsChance);
        told.push(`${said(beside)} shift ${shifts.at(-1)?.toFixed(1)} out ${chances.at(-1)?.toFixed(3)}`);
        // never easier, beyond the sampling error of two plans
        expect(beside.expectedThrows, told.join('\n')).toBeGreaterThan(open.expectedThrows - 0.02);
      }
      expect(mean(shifts), told.join('\n')).toBeGreaterThan(least_m);
      // an aim is found to about two degrees: no single one may lean in by more than that
      expect(Math.min(...shifts), told.join('\n')).toBeGreaterThan(-2);
      expect(mean(chances), told.join('\n')).toBeLessThan(0.12);
    },
  );

  it('and on the right is played away from to the left', () => {
    const shifts = variations.map(({ player, libraries }) => {
      const length_m = 1.45 * reachOf(player, 'ferry');
      return restsRight_m(planOf(libraries, length_m, right(8))) - restsRight_m(planOf(libraries, length_m));
    });
    expect(mean(shifts), shifts.join(' ')).toBeLessThan(-4);
  });
});
