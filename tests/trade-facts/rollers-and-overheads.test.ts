import { describe, expect, it } from 'vitest';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { BAG } from '../core/strategy/invented-player.ts';
import { area, boxRing } from '../core/strategy/sketched-holes.ts';
import { slopedTerrain } from '../core/strategy/small-world.ts';
import { OVERHEADS, ROLLERS, specialPlayer } from '../core/strategy/special-player.ts';
import { librariesFor, planOf } from './plans.ts';

// Common practice, no source: a roller goes where nothing flies, over short ground; an overhead throw goes over what stands near
// the tee and comes down steeply. How much each is worth is not claimed, only which is thrown.
const LIBRARIES = librariesFor(
  specialPlayer(
    20,
    [
      { discId: 'ferry', shape: 'roller', landings: ROLLERS },
      { discId: 'mallet', shape: 'overhead', landings: OVERHEADS },
    ],
    [BAG[0]!, BAG[1]!, BAG[2]!, BAG[3]!],
  ),
);
const shapeOn = (length_m: number, parts: Partial<HoleMap>) => planOf(LIBRARIES, length_m, parts).choice.shape;

/** Branches too low to throw under, from just off the tee to the green, as wide as the hole. */
const lowBranches: Partial<HoleMap> = {
  ceilings: [{ ...area(boxRing(-30, 4, 30, 68)), clearance_m: 1, top_m: Number.POSITIVE_INFINITY }],
};
const wood = (south: number, north: number, height_m: number) => ({
  ...area(boxRing(-60, south, 60, north)),
  form: 'wood' as const,
  height_m,
  base_m: 0.2,
  density: 0.99,
});

describe('rollers', () => {
  it('go under long low branches over short ground', () => {
    const plan = planOf(LIBRARIES, 80, lowBranches);
    expect(plan.choice.shape).toBe('roller');
    expect(plan.choice.cleanChance).toBeGreaterThan(0.9);
    expect(plan.cautions.join(' ')).toContain('ROLLER');
    expect(plan.cautions.join(' ')).not.toContain('runs over');
    const path = { source: 'features[9]', assumed: [], what: 'path', closed: false };
    const crossed = planOf(LIBRARIES, 80, {
      ...lowBranches,
      people: [
        {
          ...path,
          lines: [
            [
              [-20, 40],
              [20, 44],
            ],
          ],
        },
      ],
    });
    expect(crossed.cautions.join(' ')).toMatch(/The roller runs over or close past path .*, 3\d m from the tee/);
    const away = planOf(LIBRARIES, 80, {
      ...lowBranches,
      people: [
        {
          ...path,
          lines: [
            [
              [40, 0],
              [40, 90],
            ],
          ],
        },
      ],
    });
    expect(away.cautions.join(' ')).not.toContain('runs over');
    const flown = plan.alternatives.filter(({ shape }) => shape !== 'roller');
    for (const shot of flown) expect(shot.expectedThrows).toBeGreaterThan(plan.choice.expectedThrows + 0.1);
  });

  it('go there on a slope and on hard ground too, where they roll another way than measured', () => {
    for (const parts of [
      { terrain: slopedTerrain(0, 0.03) },
      { fairways: [{ ...area(boxRing(-40, -10, 40, 140)), surface: 'hardpan' as const, ownHole: true }] },
    ])
      expect(shapeOn(80, { ...lowBranches, ...parts })).toBe('roller');
  });

  it('do not go through a wall or undergrowth under the same branches', () => {
    const free = planOf(LIBRARIES, 80, lowBranches).expectedThrows;
    const wall = { ...area(boxRing(-60, 30, 60, 31)), form: 'wall' as const, height_m: 0.6, base_m: 0, density: 1 };
    const walled = planOf(LIBRARIES, 80, { ...lowBranches, covers: [wall] });
    // nothing flies there either: it may still be rolled up to the wall
    expect(walled.expectedThrows).toBeGreaterThan(free + 0.4);
    const scrub = { ...area(boxRing(-60, 12, 60, 66)), form: 'scrub' as const, height_m: 0.7, base_m: 0, density: 0.9 };
    expect(shapeOn(80, { ...lowBranches, covers: [scrub] })).not.toBe('roller');
  });

  it('give way where the ground is out-of-bounds on their way', () => {
    const ditch: Partial<HoleMap> = { outOfBounds: [area(boxRing(-60, 30, 60, 40))] };
    expect(shapeOn(80, ditch)).not.toBe('roller');
  });

  it('lose their length in long grass', () => {
    const grass: Partial<HoleMap> = {
      fairways: [{ ...area(boxRing(-3, -3, 3, 3)), surface: 'turf', ownHole: true }],
    };
    const [onTurf, inGrass] = [planOf(LIBRARIES, 80), planOf(LIBRARIES, 80, grass)].map(
      plan => [plan.choice, ...plan.alternatives].find(({ shape }) => shape === 'roller')!,
    );
    expect(inGrass!.distance_m).toBeLessThan(0.75 * onTurf!.distance_m);
  });
});

describe('overhead throws', () => {
  it('go over a tall wood close to the tee', () => {
    const plan = planOf(LIBRARIES, 58, { covers: [wood(12, 22, 9)] });
    expect(plan.choice.shape).toBe('overhead');
    expect(plan.choice.apex_m).toBeGreaterThan(9);
    expect(plan.cautions.join(' ')).toContain('OVERHEAD');
    const others = plan.alternatives.filter(({ shape }) => shape !== 'overhead');
    for (const shot of others) expect(shot.expectedThrows).toBeGreaterThan(plan.choice.expectedThrows + 0.1);
  });

  it('are not thrown where nothing is in the way, nor over trees that are too tall', () => {
    expect(shapeOn(58, {})).not.toBe('overhead');
    expect(shapeOn(58, { covers: [wood(12, 22, 25)] })).not.toBe('overhead');
  });
});
