import { describe, expect, it } from 'vitest';
import { reviewHole } from '../../../core/review/review-hole.ts';
import type { HoleReview } from '../../../core/review/review-report.ts';
import type { RoundHole, RoundThrow } from '../../../core/review/round-file.ts';
import { choiceOf } from '../../../core/strategy/choose-shot.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { evaluateShot } from '../../../core/strategy/evaluate-shot.ts';
import { planHoleInFull } from '../../../core/strategy/plan-hole.ts';
import { aDay } from '../strategy/a-day.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';
import { elbow, shortOpen } from '../strategy/sketched-holes.ts';
import { bareHole } from '../strategy/small-world.ts';
import { ROLLERS, specialPlayer } from '../strategy/special-player.ts';
import { playHole, seeded } from './simulated-play.ts';

const player = inventedPlayer({ arm_mps: 23, discs: [BAG[0]!, BAG[1]!, BAG[3]!], hands: ['backhand'] });
const libraries = makeDayLibraries(player, aDay(4, 60), {}, 5, 1);
const OPEN = { map: shortOpen(), planned: planHoleInFull({ map: shortOpen(), libraries }) };
const ELBOW = { map: elbow(), planned: planHoleInFull({ map: elbow(), libraries }) };

const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
function standardError(values: readonly number[]): number {
  const m = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - m) ** 2, 0) / (values.length - 1) / values.length);
}

/** Value of the tee minus the score, less the sum over the throws: 0 but for rounding. */
const leftOver = (review: HoleReview) =>
  review.startValue.throws - review.score - review.throws.reduce((sum, t) => sum + t.gain.throws, 0);

/** The model's own bias a throw: 0.018 and 0.020 were measured on the project's prototype; 0.03 is not shown. */
const MODEL_BIAS = 0.03;

describe('a simulated player who always throws what is recommended', () => {
  const random = seeded(11);
  const reviews = Array.from({ length: 240 }, () => {
    const hole = playHole(OPEN.planned, choice => choice.best, random);
    return reviewHole(OPEN.map, OPEN.planned, hole);
  });
  const throws = reviews.flatMap(review => review.throws);

  it('pays nothing for choices', () => {
    expect(throws.every(t => t.choiceCost!.throws === 0)).toBe(true);
    expect(Math.max(...throws.map(t => Math.abs(t.choiceMeasured!)))).toBeLessThan(1e-9);
  });

  it('pays nothing for execution on average, within two standard errors and the bias of the model', () => {
    const costs = throws.map(t => t.executionCost!.throws);
    expect(Math.abs(mean(costs))).toBeLessThan(2 * standardError(costs) + MODEL_BIAS);
    // single throws do win and lose: a test of nothing but zeros would pass too
    expect(standardError(costs) * Math.sqrt(costs.length)).toBeGreaterThan(0.1);
  });

  it('scores what the tee is worth, within two standard errors and the bias of the model', () => {
    const scores = reviews.map(review => review.score);
    const start = reviews[0]!.startValue.throws;
    expect(Math.abs(mean(scores) - start)).toBeLessThan(2 * standardError(scores) + MODEL_BIAS);
  });

  it('has gains that add up to value of the tee minus score on every hole', () => {
    for (const review of reviews) expect(Math.abs(leftOver(review))).toBeLessThan(1e-9);
  });

  it('starts from what the plan expects', () => {
    expect(reviews[0]!.startValue.throws).toBe(OPEN.planned.plan.expectedThrows);
  });
}, 60_000);

describe('a player told to choose badly', () => {
  const { planned, map } = ELBOW;
  const { choice } = planned;
  // the shot of all answered ones that the plan likes least
  const worst = choice.finalists.at(-1)!;
  const { throwIndex, ...line } = worst.shot;
  const fitted = planned.solved.table.player.throws[throwIndex]!;
  const asked = { discId: fitted.discId, hand: fitted.hand, ...line, aimBearing_deg: worst.aim_deg };
  // 35° off to the out-of-bounds side
  const wild = { ...asked, aimBearing_deg: worst.aim_deg - 35 };

  it.each([
    ['the least of the plan’s finalists', asked],
    ['the same thrown at the out-of-bounds', wild],
  ])('pays the regret the plan states: %s', (_, shot) => {
    const hole: RoundHole = {
      ref: '1',
      throws: [
        { ...shot, rest: { east_m: 5, north_m: 70 } },
        { ...asked, rest: { east_m: 20, north_m: 93 } },
        { shape: 'putt', holed: true },
      ],
    };
    const review = reviewHole(map, planned, hole);
    const stated = evaluateShot(planned, shot)!.shot;
    const cost = review.throws[0]!.choiceMeasured!;
    expect(stated.regret).toBeGreaterThan(0.03);
    // the plan answers on the same samples; its choice may be simpler than its best by a tie
    expect(Math.abs(cost - stated.regret)).toBeLessThan(1e-9);
    const { gain, choiceCost, executionCost } = review.throws[0]!;
    expect(choiceCost!.throws).toBe(cost);
    expect(Math.abs(gain.throws + choiceCost!.throws + executionCost!.throws)).toBeLessThan(1e-12);
    expect(Math.abs(leftOver(review))).toBeLessThan(1e-9);
  });
});

describe('a shot that is better than the one the plan settled for', () => {
  it('costs nothing, and never less: it is the value of the lie', () => {
    const { map, planned } = ELBOW;
    const [leader, ...others] = planned.choice.finalists;
    const settled = { ...planned, choice: choiceOf(others.at(-1)!, planned.choice.finalists) };
    const { throwIndex, ...line } = leader!.shot;
    const { discId, hand } = planned.solved.table.player.throws[throwIndex]!;
    const first: RoundThrow = { discId, hand, ...line, aimBearing_deg: leader!.aim_deg, rest: { toBasket_m: 5 } };
    const review = reviewHole(map, settled, { ref: '1', throws: [first, { shape: 'putt', holed: true }] });
    expect(review.throws[0]!.choiceMeasured).toBe(0);
    expect(review.throws[0]!.choiceCost!.throws).toBe(0);
    expect(review.startValue.throws).toBeLessThan(others.at(-1)!.outcome.expectedThrows);
    expect(Math.abs(leftOver(review))).toBeLessThan(1e-9);
  });
});

describe('throws of which little is known', () => {
  const rests: RoundThrow['rest'][] = [
    { east_m: 3, north_m: 55 },
    { east_m: 18, north_m: 92 },
  ];
  const hole = (first: RoundThrow): RoundHole => ({
    ref: '1',
    throws: [
      { ...first, rest: rests[0] },
      { discId: 'thimble', rest: rests[1] },
      { shape: 'putt', holed: true },
    ],
  });
  const reviewed = (first: RoundThrow) => reviewHole(ELBOW.map, ELBOW.planned, hole(first));
  const best = ELBOW.planned.plan.choice;

  it.each([
    ['nothing', {}, 'nothing'],
    ['the disc', { discId: best.discId }, 'disc'],
    ['disc and shape', { discId: best.discId, shape: best.shape }, 'line'],
    ['a disc the player has not', { discId: 'anvil' }, 'nothing'],
    ['a hand that is not measured', { discId: 'kettle', hand: 'forehand' }, 'nothing'],
    ['a roller', { discId: 'kettle', shape: 'roller' }, 'nothing'],
  ] as const)('%s: says so, and the gains still add up', (_, first, known) => {
    const review = reviewed(first);
    const [tee] = review.throws;
    expect(tee!.known).toBe(known);
    expect(tee!.choiceCost === null).toBe(known === 'nothing');
    expect(tee!.notes.length).toBeGreaterThan(0);
    expect(Math.abs(leftOver(review))).toBeLessThan(1e-9);
    if (tee!.choiceCost === null) return;
    const parts = -tee!.choiceCost.throws - tee!.executionCost!.throws;
    expect(Math.abs(tee!.gain.throws - parts)).toBeLessThan(1e-12);
  });

  it('costs of a disc alone are a lower bound: never more than those of any line of it', () => {
    const disc = reviewed({ discId: 'ferry' }).throws[0]!.choiceMeasured!;
    for (const shape of ['flat', 'hyzer', 'anhyzer'] as const) {
      const line = reviewed({ discId: 'ferry', shape }).throws[0]!.choiceMeasured!;
      // the search for the best line of each is not the same one: 0.03 is the noise that is not shown
      expect(disc).toBeLessThanOrEqual(line + 0.03);
    }
  });

  it('the recommended disc, nothing else known, costs nothing', () => {
    expect(reviewed({ discId: best.discId, hand: best.hand }).throws[0]!.choiceCost!.throws).toBe(0);
  });
});

describe('rollers and overhead throws', () => {
  const discs = [BAG[0]!, BAG[3]!];
  const roller = specialPlayer(20, [{ discId: 'ferry', shape: 'roller', landings: ROLLERS }], discs);
  const map = bareHole({ basket: [0, 80] });
  const planned = planHoleInFull({ map, libraries: makeDayLibraries(roller, aDay(0, 0), {}, 5, 1) });
  const judged = (first: RoundThrow) =>
    reviewHole(map, planned, {
      ref: '1',
      throws: [
        { ...first, rest: { east_m: 3, north_m: 74 } },
        { shape: 'putt', holed: true },
      ],
    }).throws[0]!;

  it('are valued where the plan knows them, by their line or in full', () => {
    const line = judged({ discId: 'ferry', shape: 'roller' });
    expect(line.known).toBe('line');
    expect(line.choiceCost).not.toBeNull();
    const { shape, power, launch_deg, hyzer_deg, aimBearing_deg } = [
      planned.plan.choice,
      ...planned.plan.alternatives,
    ].find(one => one.shape === 'roller')!;
    const whole = judged({ discId: 'ferry', shape, power, launch_deg, hyzer_deg, aimBearing_deg });
    expect(whole.known).toBe('shot');
    // the plan's own roller, answered on the plan's samples
    const own = [planned.plan.choice, ...planned.plan.alternatives].find(one => one.shape === 'roller')!;
    expect(Math.abs(whole.choiceMeasured! - Math.max(0, own.expectedThrows - whole.valueBefore.throws))).toBeLessThan(
      0.01,
    );
  });

  it('are said not to be known where they were not measured', () => {
    for (const first of [
      { discId: 'thimble', shape: 'roller' },
      { discId: 'ferry', shape: 'overhead' },
    ] as const) {
      const review = judged(first);
      expect(review.known).toBe('nothing');
      expect(review.choiceCost).toBeNull();
      expect(review.notes.join()).toContain(`does not know ${first.shape}s of ${first.discId}`);
    }
  });
});

describe('penalties', () => {
  it('count as throws lost on the throw that cost them', () => {
    const hole: RoundHole = {
      ref: '1',
      throws: [
        {
          discId: 'kettle',
          rest: { east_m: -14, north_m: 50 },
          lie: { east_m: -3, north_m: 50 },
          penalties: [{ kind: 'out-of-bounds' }],
        },
        { discId: 'kettle', rest: { toBasket_m: 4 } },
        { shape: 'putt', holed: true },
      ],
    };
    const review = reviewHole(ELBOW.map, ELBOW.planned, hole);
    expect(review.score).toBe(4);
    expect(review.penalties).toBe(1);
    const [tee, next] = review.throws;
    // by definition: value before − value after − the throw − the penalty
    expect(tee!.gain.throws).toBeCloseTo(tee!.valueBefore.throws - next!.valueBefore.throws - 2, 12);
    expect(Math.abs(leftOver(review))).toBeLessThan(1e-9);
    expect(next!.notes.join()).toContain('line of play');
  });

  it('a hole not holed out is refused', () => {
    const open: RoundHole = { ref: '1', throws: [{ discId: 'kettle', rest: { toBasket_m: 12 } }] };
    expect(() => reviewHole(ELBOW.map, ELBOW.planned, open)).toThrow(RangeError);
  });
});
