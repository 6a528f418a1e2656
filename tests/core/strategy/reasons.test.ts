import { describe, expect, it } from 'vitest';
import type { Hand } from '../../../core/flight/release.ts';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { planHole } from '../../../core/strategy/plan-hole.ts';
import type { HolePlan } from '../../../core/strategy/plan-report.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { area, boxRing } from './sketched-holes.ts';
import { bareHole } from './small-world.ts';

/** Everything a hole can have, out of the way of any sensible throw: none of it may be named as what decided. */
const BESIDE: Partial<HoleMap> = {
  covers: [{ ...area(boxRing(45, 0, 58, 60)), form: 'wood', height_m: 14, base_m: 2, density: 0.6 }],
  outOfBounds: [area(boxRing(-90, -40, -50, 160))],
};
const [PUTTER, MIDRANGE, OVERSTABLE, , , DRIVER] = BAG;

type Setting = Readonly<{
  map: Partial<HoleMap> & Pick<HoleMap, 'basket'>;
  discs: typeof BAG;
  wind: readonly [speed_mps: number, from_deg: number];
  hands?: readonly Hand[];
  arm_mps?: number;
}>;

function planOf({ map, discs, wind, hands, arm_mps = 23 }: Setting): HolePlan {
  const player = inventedPlayer({ arm_mps, discs, hands });
  const libraries = makeDayLibraries(player, aDay(...wind), {}, 5, 1);
  return planHole({ map: bareHole({ ...BESIDE, ...map }), libraries });
}
const said = (plan: HolePlan) =>
  `${plan.choice.discId} ${plan.choice.hand} ${plan.expectedThrows.toFixed(2)}; ${plan.reasons.map(r => `${r.againstDiscId} ${r.hand} +${r.costs.toFixed(2)}: ${r.text}`).join(' | ')}`;

const under = (length_m: number) => [
  { ...area(boxRing(-12, 12, 12, length_m - 10)), clearance_m: 3, top_m: Number.POSITIVE_INFINITY },
];

// Each hole is drawn so that one thing turns the order and the rest lies beside it: known by construction, not measured.
describe('what decided, by taking constraints away one at a time', () => {
  it.each<{ name: string; constraint: string; chosen: string; setting: Setting; words: RegExp }>([
    {
      name: 'branches at 3 m over a putter’s whole distance: the midrange, for the branches',
      constraint: 'overhead',
      chosen: 'kettle backhand',
      setting: { map: { basket: [0, 70], ceilings: under(70) }, discs: [PUTTER, MIDRANGE], wind: [2, 90] },
      words:
        /^Kept under the branches, \d\.\d m high, it goes \d\d m; \d\.\d m high it would go \d\d m; with nothing overhead it would be the better throw by \d\.\d\d/,
    },
    {
      name: '8 m/s in the face on a putter’s hole: the midrange, for the wind',
      constraint: 'wind',
      chosen: 'kettle backhand',
      setting: { map: { basket: [0, 60] }, discs: [PUTTER, MIDRANGE], wind: [8, 0] },
      words: /wind .* in calm air it would be the better throw by \d\.\d\d/,
    },
    {
      name: 'water where the driver would land: the putter before it, for the water',
      constraint: 'penalty',
      chosen: 'thimble backhand',
      setting: {
        map: { basket: [0, 115], outOfBounds: [area(boxRing(-90, 50, 90, 92))] },
        discs: [PUTTER, DRIVER],
        wind: [2, 90],
      },
      words:
        /penalty ground and leaves \d\d m on average, else \d\d m; without the penalty ground it would be the better throw by \d\.\d\d/,
    },
    {
      name: 'a building in the elbow: the forehand that bends round it, for the building',
      constraint: 'standing',
      chosen: 'mallet forehand',
      setting: {
        map: {
          basket: [16, 74],
          line: [
            [0, 0],
            [-8, 40],
            [16, 74],
          ],
          covers: [{ ...area(boxRing(-4, 20, 40, 56)), form: 'building', height_m: 20, base_m: 0, density: 1 }],
        },
        discs: [OVERSTABLE],
        hands: ['backhand', 'forehand'],
        wind: [2, 90],
      },
      words: /stands in the way .* with nothing standing in the way it would be the better throw by \d\.\d\d/,
    },
  ])('$name', ({ constraint, chosen, setting, words }) => {
    const plan = planOf(setting);
    expect(`${plan.choice.discId} ${plan.choice.hand}`, said(plan)).toBe(chosen);
    const flips = plan.reasons.flatMap(reason => reason.facts.filter(fact => fact.flips));
    expect(new Set(flips.map(fact => fact.constraint)), said(plan)).toEqual(new Set([constraint]));
    for (const fact of flips) expect(fact.costsWithout).toBeLessThan(0);
    expect(plan.reasons[0].text, said(plan)).toMatch(words);
    for (const reason of plan.reasons) expect(reason.facts.length).toBeLessThanOrEqual(2);
  });

  it('names no constraint on an open calm hole: there is none', () => {
    const plan = planOf({
      map: { basket: [0, 82], covers: [], outOfBounds: [] },
      discs: [PUTTER, DRIVER],
      wind: [0, 0],
    });
    expect(plan.reasons.length).toBeGreaterThan(0);
    for (const fact of plan.reasons.flatMap(reason => reason.facts)) expect(fact.constraint).toBeUndefined();
  });
});
