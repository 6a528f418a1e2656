import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { type Attitude, costOf } from '../../core/strategy/attitude.ts';
import type { Candidate } from '../../core/strategy/choose-shot.ts';
import type { DayLibraries } from '../../core/strategy/day-libraries.ts';
import { planHoleInFull } from '../../core/strategy/plan-hole.ts';
import { type HoleOptions, pushedOption, pushRound } from '../../core/strategy/push-round.ts';
import { holePlayer } from './play-hole.ts';

/** Scores off the pace by up to this many throws are provided for. */
const OFF_PACE = 8;
const WORST_SHARE = 0.2;
const HOLE_SEEDS = 1_000_003;

/** Rounds played throw by throw three ways: the same scatter for the same shot, so differences are the choices' own. */
export type SimulatedRounds = Readonly<{
  holes: readonly SimulatedHole[];
  /** Total scores of every round. */
  even: readonly number[];
  guard: readonly number[];
  push: readonly number[];
  target: number;
  /** Stated by the plan: chance to make the target with `even` and with `push`. */
  statedEven: number;
  statedPush: number;
}>;

export type SimulatedHole = Readonly<{
  ref: string;
  length_m: number;
  expectedThrows: number;
  /** Stated chances of i + 1 throws. */
  stated: readonly number[];
  /** Scores of every round with the even choice. */
  scores: readonly number[];
  /** Which of the options `guard` takes, and all that `push` may take. */
  guardOption: number;
  pushOptions: readonly number[];
}>;

type Planned = Readonly<{ map: HoleMap; options: HoleOptions; expectedThrows: number; length_m: number; ref: string }>;

/**
 * @param target - throws for the round; the expected score less one, rounded, when left out
 * @param onHole - told of every hole played
 */
export function simulateRounds(
  maps: readonly HoleMap[],
  libraries: DayLibraries,
  rounds: number,
  target?: number,
  onHole: (hole: SimulatedHole) => void = () => undefined,
): SimulatedRounds {
  const planned = maps.map((map): Planned => {
    const { options, plan } = planHoleInFull({ map, libraries, risks: true });
    return { map, options, expectedThrows: plan.expectedThrows, length_m: plan.length_m, ref: plan.ref };
  });
  const expected = planned.reduce((sum, hole) => sum + hole.expectedThrows, 0);
  const aim = target ?? Math.round(expected) - 1;
  const all = planned.map(hole => hole.options);
  const pushed = pushRound(all, aim);
  const guard: Attitude = { kind: 'guard', roundSd: Math.sqrt(all.reduce((sum, [even]) => sum + varianceOf(even), 0)) };

  let pace = 0;
  const played = planned.map(({ map, options, expectedThrows, length_m, ref }, h) => {
    const costs = options.map(scores => costOf(guard, scores, meanOf(scores)));
    const guardOption = costs.indexOf(Math.min(...costs));
    const lefts = Array.from({ length: 2 * OFF_PACE + 1 }, (_, i) => Math.round(aim - pace) - OFF_PACE + i);
    const pushOptions = [...new Set(lefts.filter(left => left >= 0).map(left => pushedOption(all, pushed, h, left)))];
    pace += expectedThrows;
    // planned again, so that no more than one hole is held in memory
    const { solved, optionShots } = planHoleInFull({ map, libraries, risks: true });
    const play = holePlayer(solved);
    const scoresOf = new Map<number, Uint8Array>();
    for (const option of new Set([0, guardOption, ...pushOptions]))
      scoresOf.set(option, playAll(play, optionShots[option], h, rounds));
    const even = scoresOf.get(0) ?? new Uint8Array();
    const hole: SimulatedHole = {
      ref,
      length_m,
      expectedThrows,
      stated: options[0],
      scores: [...even],
      guardOption,
      pushOptions,
    };
    onHole(hole);
    return { hole, scoresOf, even };
  });

  const totals = (optionOf: (h: number, soFar: number) => number) =>
    Array.from({ length: rounds }, (_, r) =>
      played.reduce((soFar, { scoresOf, even }, h) => soFar + (scoresOf.get(optionOf(h, soFar)) ?? even)[r], 0),
    );
  return {
    holes: played.map(({ hole }) => hole),
    even: totals(() => 0),
    guard: totals(h => played[h].hole.guardOption),
    // out of reach of the target, or certain of it, every option does: the even one
    push: totals((h, soFar) => (aim - soFar < 0 ? 0 : pushedOption(all, pushed, h, aim - soFar))),
    target: aim,
    statedEven: pushed.chanceEven,
    statedPush: pushed.chance,
  };
}

function playAll(play: ReturnType<typeof holePlayer>, tee: Candidate, hole: number, rounds: number): Uint8Array {
  return Uint8Array.from({ length: rounds }, (_, r) => play(tee, HOLE_SEEDS * (hole + 1) + r));
}

export const meanOf = (scores: readonly number[]): number => scores.reduce((sum, p, i) => sum + p * (i + 1), 0);

function varianceOf(scores: readonly number[]): number {
  const mean = meanOf(scores);
  return scores.reduce((sum, p, i) => sum + p * (i + 1 - mean) ** 2, 0);
}

/** Mean and its standard error. */
export function sampleMean(values: readonly number[]): Readonly<{ mean: number; error: number }> {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const square = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return { mean, error: Math.sqrt(square / (values.length - 1) / values.length) };
}

export const shareWithin = (totals: readonly number[], target: number): number =>
  totals.filter(total => total <= target).length / totals.length;

export function worstFifth(totals: readonly number[]): number {
  const sorted = [...totals].sort((a, b) => b - a);
  return sampleMean(sorted.slice(0, Math.round(WORST_SHARE * sorted.length))).mean;
}
