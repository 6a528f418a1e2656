import { relativeWind } from '../air/relative-wind.ts';
import { describeHole } from '../geometry/describe-hole.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import { rasterize } from '../geometry/rasterize.ts';
import type { DiscClass } from '../player/fitted-player.ts';
import { type Attitude, costOf, EVEN } from './attitude.ts';
import { type Candidate, type Choice, choiceOf, chooseShot, QUICK_ROUNDS, TEE_EFFORT } from './choose-shot.ts';
import type { DayLibraries } from './day-libraries.ts';
import { holeCautions } from './hole-cautions.ts';
import { type SolvedHole, solveHole } from './hole-solver.ts';
import { improveLies } from './improve-lies.ts';
import { type Lie, RESULT } from './march.ts';
import { nextThrows } from './next-throws.ts';
import type { HolePlan, ShotReport } from './plan-report.ts';
import { holedWithin } from './policy.ts';
import type { HoleOptions } from './push-round.ts';
import { puttingDistribution } from './putting-value.ts';
import { reasonsAgainst } from './reasons.ts';
import { attitudesInDoubt, riskShots } from './risk-shots.ts';
import { shapeCautions } from './shape-cautions.ts';
import { type ShotPlace, shotReport } from './shot-report.ts';
import { windFlips } from './wind-flips.ts';

/** Scores are told apart up to here; worse ones are one entry. */
const MOST_THROWS = 12;
const MOST_REASONS = 6;
const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
const NARROW_UNKNOWN_M = 1000;
/** Finds where the tee shot goes, to value the lies there well before it is answered. */
const ROUGH_EFFORT = {
  ...TEE_EFFORT,
  sampled: 100,
  short: 12,
  refine: 2,
  rounds: QUICK_ROUNDS,
  answerRows: 64,
  otherRows: 32,
  perDisc: false,
};
/** Standard deviation of a round's score while its holes are not planned: eighteen of 0.6 (assumed). */
const USUAL_ROUND_SD = 2.5;

export type PlanHoleInput = Readonly<{
  map: HoleMap;
  libraries: DayLibraries;
  attitude?: Attitude /** Also look what other winds would choose. */;
  flips?: boolean;
  /** Also value the next throws with every disc, to choose a bag by. */
  bag?: boolean;
  /** Also look for shots that other attitudes would throw, to allot a round's target with; done anyway for another attitude than `even`. */
  risks?: boolean;
}>;

/** A hole's plan with what it was made from: further questions about the hole need not solve it again. */
export type PlannedHole = Readonly<{
  plan: HolePlan;
  solved: SolvedHole;
  choice: Choice;
  /** Chances of scores of every finalist, the even choice first: what a round's target is allotted with. */
  options: HoleOptions;
  /** The shots of these options, in their order. */
  optionShots: readonly Candidate[];
}>;

/** Plans one hole: the shot, what follows, what else there is and what it costs. Deterministic in its input. */
export function planHole(input: PlanHoleInput): HolePlan {
  return planHoleInFull(input).plan;
}

export function planHoleInFull({
  map,
  libraries,
  attitude = EVEN,
  flips = false,
  bag = false,
  risks = false,
}: PlanHoleInput): PlannedHole {
  const report = describeHole(map);
  const solved = solveHole(map, rasterize(map), libraries, report.narrowest?.width_m ?? NARROW_UNKNOWN_M);
  improveLies(solved, chooseShot(solved.table, TEE, ROUGH_EFFORT).best.outcome.ends);
  const even = chooseShot(solved.table, TEE, TEE_EFFORT);
  const scoresOf = scoring(solved);
  const others = even.finalists.filter(c => c !== even.best);
  const asked = attitude.kind === 'even' ? [] : [attitude];
  const attitudes = risks ? attitudesInDoubt(scoresOf(even.best), USUAL_ROUND_SD) : asked;
  const bolder = riskShots(solved.table, TEE, [even.best, ...others], attitudes, scoresOf);
  const finalists = [...even.finalists, ...bolder].sort((a, b) => a.outcome.expectedThrows - b.outcome.expectedThrows);
  const ordered = [even.best, ...others, ...bolder];
  const options = ordered.map(scoresOf);
  const choice = attitude.kind === 'even' ? even : choiceOf(leastCost(attitude, ordered, options), finalists);
  const { day } = libraries;
  const toBasket_deg = report.bearing_deg;
  const wind = relativeWind(day, toBasket_deg);
  const place: ShotPlace = { fromTee: true, toBasket_m: report.length_m, toBasket_deg, tailwind: wind.head_mps < -2 };
  const shots = new Map<Candidate, ShotReport>(
    choice.candidates.map(c => [c, shotReport(solved.table, c, choice.best, place)]),
  );
  const turned = flips ? windFlips(solved, libraries, choice) : { flips: [], nearest: null };
  const next = nextThrows(solved.table, choice, day.wind, bag);
  const plan: HolePlan = {
    ref: map.ref,
    name: map.name,
    length_m: report.length_m,
    playLength_m: report.playLength_m,
    bearing_deg: report.bearing_deg,
    rise_m: report.rise_m,
    par: map.par,
    parSource: map.parSource,
    exposure: solved.exposure,
    headwind_mps: wind.head_mps,
    windFromRight_mps: wind.right_mps,
    choice: reported(shots, choice.best),
    next,
    alternatives: choice.candidates.slice(1).map(c => reported(shots, c)),
    byClass: bestByClass(solved, choice, shots),
    scoreDistribution: options[ordered.indexOf(choice.best)].map((chance, i) => ({ throws: i + 1, chance })),
    expectedThrows: choice.best.outcome.expectedThrows,
    reasons: reasonsAgainst({
      solved,
      lie: TEE,
      best: choice.best,
      others: mainAlternatives(solved, choice),
      toBasket_m: report.length_m,
      par: map.par,
      even: attitude.kind === 'even',
      scoresOf,
    }),
    flips: turned.flips,
    nearestFlip: turned.nearest,
    cautions: [
      ...shapeCautions(
        map,
        solved.table,
        choice.best,
        TEE,
        next.flatMap(({ shot }) => (shot ? [shot.shape] : [])),
      ),
      ...holeCautions(map, report, choice.best.outcome.ends),
    ],
    assumptions: [...map.assumptions, ...noWay(choice.best)],
  };
  return { plan, solved, choice, options, optionShots: ordered };
}

/** Says so when the map leaves no way to the basket. */
function noWay(best: Candidate): string[] {
  if (best.outcome.expectedThrows < MOST_THROWS - 0.5) return [];
  return [
    'No way to the basket was found on the map as drawn: check what stands around the tee, out-of-bounds and mandos.',
  ];
}

function reported(shots: ReadonlyMap<Candidate, ShotReport>, candidate: Candidate): ShotReport {
  const found = shots.get(candidate);
  if (!found) throw new RangeError('a candidate without a report');
  return found;
}

function bestByClass(
  solved: SolvedHole,
  choice: Choice,
  shots: ReadonlyMap<Candidate, ShotReport>,
): HolePlan['byClass'] {
  const best: Partial<Record<DiscClass, ShotReport>> = {};
  for (const candidate of choice.candidates) {
    const discClass = solved.table.player.throws[candidate.shot.throwIndex].class;
    best[discClass] ??= reported(shots, candidate);
  }
  return best;
}

/** The best of every other class, then the next discs, each once. */
function mainAlternatives(solved: SolvedHole, choice: Choice): Candidate[] {
  const classOf = (c: Candidate) => solved.table.player.throws[c.shot.throwIndex].class;
  const seen = new Set([classOf(choice.best)]);
  const others = choice.candidates.slice(1);
  const byClass = others.filter(c => {
    if (seen.has(classOf(c))) return false;
    seen.add(classOf(c));
    return true;
  });
  const rest = others.filter(c => !byClass.includes(c)).slice(0, 1);
  return [...rest, ...byClass].slice(0, MOST_REASONS);
}

function leastCost(attitude: Attitude, candidates: readonly Candidate[], options: HoleOptions): Candidate {
  const costs = candidates.map((c, i) => costOf(attitude, options[i], c.outcome.expectedThrows));
  return candidates[costs.indexOf(Math.min(...costs))];
}

/** Chance of each score with a tee shot and the best play after it: `[i]` for i + 1 throws, the last entry that or worse. */
export function scoring(solved: SolvedHole): (shot: Candidate) => number[] {
  const { field, policy } = solved.solution;
  const layers = policy.distribution(MOST_THROWS);
  const putts = puttingDistribution(field.putting, MOST_THROWS);
  return shot => {
    const within = new Array<number>(MOST_THROWS + 1).fill(0);
    for (let n = 1; n <= MOST_THROWS; n++) {
      let chance = 0;
      for (const end of shot.outcome.ends) {
        const left = n - 1 - end.penalty;
        if (end.kind === RESULT.holed) {
          chance += end.weight;
          continue;
        }
        if (left <= 0) continue;
        // a throw played again starts from the tee: its own chance with fewer throws left
        chance +=
          end.weight *
          (Number.isNaN(end.nextX_m)
            ? within[left]
            : holedWithin(field, layers, putts, left, end.nextX_m, end.nextY_m));
      }
      within[n] = Math.min(1, Math.max(within[n - 1], chance));
    }
    return Array.from({ length: MOST_THROWS }, (_, i) => (i + 1 === MOST_THROWS ? 1 : within[i + 1]) - within[i]);
  };
}
