import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitPlayer } from '../../core/player/fit-player.ts';
import { parsePlayerText } from '../../core/player/player-file.ts';
import { fieldworkPlayer } from './invented-fieldwork.ts';
import { branchesAt, knownPlayer, librariesFor, planOf, reachOf, said, shotWith } from './plans.ts';

// Facts of the trade: common practice, no source. Each comes out of a plan; none is a rule in the code.

describe('a driver', () => {
  it.each([22, 26])('reaches a putter’s full distance with a lower apex (arm %d m/s)', arm_mps => {
    const player = knownPlayer(arm_mps);
    const libraries = librariesFor(player);
    const length_m = 0.98 * reachOf(player, 'thimble');
    // branches ever lower ask every disc for its lowest line that still gets there
    const plans = [5, 3.5, 2.5].map(clearance_m => planOf(libraries, length_m, branchesAt(clearance_m, length_m)));
    const lowest = (discIds: readonly string[]) =>
      Math.min(
        ...plans
          .flatMap(plan => discIds.map(discId => shotWith(plan, discId)))
          .filter(shot => shot.distance_m > 0.93 * length_m)
          .map(shot => shot.apex_m),
      );
    const [putter, driver] = [lowest(['saucer', 'thimble']), lowest(['ferry', 'lighthouse', 'meteor'])];
    expect(Number.isFinite(putter) && Number.isFinite(driver)).toBe(true);
    expect(driver, `${driver} against ${putter}`).toBeLessThan(putter - 0.3);
  });

  it.each([16, 18, 20])(
    'too fast for an arm of %d m/s gives no distance over a slower one and finishes further to the fade side',
    arm_mps => {
      const player = knownPlayer(arm_mps);
      // far out of reach, so that every disc is thrown as far as it goes
      const plan = planOf(librariesFor(player), 170);
      const [slower, faster] = [shotWith(plan, 'ferry'), shotWith(plan, 'meteor')];
      expect(faster.distance_m).toBeLessThan(slower.distance_m + 0.5);
      // backhand of a right-hander: the fade side is the left, finish is right positive; a plan may bank it against the fade
      if (faster.shape === 'flat') expect(faster.finish_m).toBeLessThan(slower.finish_m - 2);
      else expect(faster.shape).toBe('anhyzer');
      const flat = (discId: string) => player.throws.find(t => t.discId === discId)?.finish_m ?? Number.NaN;
      expect(flat('meteor')).toBeLessThan(flat('ferry') - 2);
    },
  );

  it('thrown fast enough gives the distance: at 31 m/s the distance driver passes the low-speed one', () => {
    const plan = planOf(librariesFor(knownPlayer(31)), 200);
    expect(shotWith(plan, 'meteor').distance_m).toBeGreaterThan(shotWith(plan, 'ferry').distance_m + 3);
  });
});

function samplePlayer() {
  const path = new URL('../../sample-courses/newer-player.json', import.meta.url);
  const parsed = parsePlayerText(readFileSync(path, 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return fitPlayer(parsed.value);
}

const BEGINNERS = [
  { name: 'the sample’s newer player', player: samplePlayer() },
  { name: 'an invented newer player', player: fieldworkPlayer({ arm_mps: 19.2, seed: 2 }) },
];
const LENGTHS_M = [75, 110, 180];

describe.each(BEGINNERS)('$name, whose midrange goes about 60 m', ({ player }) => {
  it('has a midrange of 55 to 65 m', () => {
    const reach = Math.max(...player.throws.filter(t => t.class === 'midrange').map(t => t.averageDay_m));
    expect(reach).toBeGreaterThan(55);
    expect(reach).toBeLessThan(65);
  });

  it.each([
    { what: 'in calm air', speed_mps: 0, from_deg: 0 },
    { what: 'with the wind behind', speed_mps: 6, from_deg: 180 },
    { what: 'in a headwind', speed_mps: 6, from_deg: 0 },
    { what: 'in a wind from the right', speed_mps: 5, from_deg: 90 },
  ])('is never handed a distance driver $what, also on long holes', wind => {
    const libraries = librariesFor(player, wind);
    const plans = LENGTHS_M.map(length_m => planOf(libraries, length_m));
    expect(
      plans.map(plan => plan.choice.class),
      plans.map(said).join('\n'),
    ).not.toContain('distance');
  });
});
