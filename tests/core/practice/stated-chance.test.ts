import { describe, expect, it } from 'vitest';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { HoleMap } from '../../../core/geometry/hole-map.ts';
import { rasterize } from '../../../core/geometry/rasterize.ts';
import { fairTarget } from '../../../core/practice/fair-target.ts';
import { type PracticeHole, practiceHole } from '../../../core/practice/practice-hole.ts';
import { chooseShot, TEE_EFFORT } from '../../../core/strategy/choose-shot.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { solveHole } from '../../../core/strategy/hole-solver.ts';
import { aDay } from '../strategy/a-day.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';
import { overWater } from '../strategy/sketched-holes.ts';
import { bareHole } from '../strategy/small-world.ts';
import { handPlayer, otherRandom } from './play-by-hand.ts';

const PLAYS = 4000;
const ROUNDS = 2000;
/** What the issue asks for: the stated chance is right within 3 points over 2,000 rounds. */
const WITHIN = 0.03;

// one slow disc on two short holes: open, and over water with a drop zone (tests/bench/practice.ts plays whole courses)
const player = inventedPlayer({ arm_mps: 24, discs: BAG.slice(1, 2) });
const holes: readonly HoleMap[] = [bareHole({ ref: '1', basket: [0, 62] }), { ...overWater(), ref: '2' }];
const libraries = makeDayLibraries(player, aDay(3, 60), {}, 5, 1);
const played = holes.map((map): PracticeHole => practiceHole({ map, libraries, plays: PLAYS, rounds: ROUNDS }));
const target = fairTarget(played);

describe('the stated chance of a target', () => {
  it('is that of 2,000 rounds played by hand with other random numbers, within 3 points', () => {
    const players = holes.map(map => {
      const solved = solveHole(map, rasterize(map), libraries, describeHole(map).narrowest?.width_m ?? 1000);
      return handPlayer(
        solved,
        chooseShot(solved.table, { east_m: 0, north_m: 0, ground_m: 0 }, TEE_EFFORT).best,
        player.putting,
      );
    });
    const random = otherRandom(20261125);
    const totals = Array.from({ length: ROUNDS }, () => players.reduce((sum, play) => sum + play(random), 0));
    for (const { throws, chance } of target.beside) {
      const share = totals.filter(total => total <= throws).length / ROUNDS;
      expect(Math.abs(share - chance), `${throws} throws: stated ${chance}, played ${share}`).toBeLessThanOrEqual(
        WITHIN,
      );
    }
  }, 120_000);

  it('is nearest to one in three of all whole scores', () => {
    const off = (chance: number) => Math.abs(chance - 1 / 3);
    for (const { throws, chance } of target.beside)
      if (throws !== target.throws) expect(off(chance)).toBeGreaterThanOrEqual(off(target.chance));
    expect(target.chance).toBeGreaterThan(0.1);
    expect(target.chance).toBeLessThan(0.65);
  });

  it('hardly changes when little is unknown of the discs', () => {
    // the invented player is known to 0.5 % of the speed; sampling alone is 1.3 points (4,000 plays against 2,000 rounds)
    for (const { chance, chanceSameDay } of target.beside) expect(Math.abs(chance - chanceSameDay)).toBeLessThan(0.04);
  });
});

it('a hole played again is the same, and another seed gives another sample of the same', () => {
  const [map] = holes;
  const again = practiceHole({ map: map!, libraries, plays: PLAYS, rounds: ROUNDS });
  expect(again.scores).toEqual(played[0]!.scores);
  expect(again.roundScores).toEqual(played[0]!.roundScores);
  const other = practiceHole({ map: map!, libraries: { ...libraries, seed: 2 }, plays: PLAYS, rounds: ROUNDS });
  expect(other.scores).not.toEqual(played[0]!.scores);
  // two samples of 4,000 scores of standard deviation about 0.5: 0.011 one sigma of the difference, [C] computed by hand
  expect(Math.abs(other.expectedThrows - played[0]!.expectedThrows)).toBeLessThan(0.045);
});
