import type { FittedPlayer } from '../player/fitted-player.ts';
import type { ExactThrower } from './exact-thrower.ts';
import { isSpecialShape, kindOf, kindsOf } from './flown-as.ts';
import { everyShot, landingValues } from './landing-value.ts';
import type { Lie } from './march.ts';
import { marchPromising } from './march-promising.ts';
import { type Round, raceShots } from './race-shots.ts';
import { createRacer, type Line, type RacedShot } from './raced-shot.ts';
import type { ShotMarcher } from './shot-marcher.ts';
import { type ShotOutcome, shotOutcome } from './shot-outcome.ts';
import type { ShotSpec } from './shots.ts';
import { speedShortfall } from './throw-samples.ts';
import { expectedOf, resetThrowValue, type ThrowValue } from './throw-value.ts';
import { distanceToBasket, type ValueField, valueAt } from './value-field.ts';
import type { WindBins } from './wind-bins.ts';
import type { World } from './world.ts';

const DEGREE = Math.PI / 180;
/** Shots that would land this far beyond the basket are not looked at, unless the bag has no shorter one. */
const TOO_FAR_M = 30;

/** A shot with its aim and what it comes to. */
export type Candidate = Readonly<{ shot: ShotSpec; aim_deg: number; outcome: ShotOutcome }>;

/** The best shot from a lie and the best of every disc and hand, fewest throws first. */
export type Choice = Readonly<{
  best: Candidate;
  /** Best of each disc × hand (the chosen one among them). */
  candidates: readonly Candidate[];
  /** Everything that was answered on fresh samples, fewest throws first. */
  finalists: readonly Candidate[];
}>;

/** How hard to look. */
export type Effort = Readonly<{
  aimReach_deg: number;
  aimStep_deg: number;
  /** Pairs of shot and aim marched with samples after the middles. */
  sampled: number;
  /** Shots kept after marching. */
  short: number;
  /** Samples each of them is flown with. */
  exactRows: number;
  /** Shots that race, improved in aim, launch and power. */
  refine: number;
  rounds: readonly Round[];
  /** Fresh samples for the finalists, and for the best of the other discs. */
  answerRows: number;
  otherRows: number;
  /** Keep the best of every disc × hand. */
  perDisc: boolean;
}>;

/** For the many lies looked at within one question. */
export const QUICK_ROUNDS: readonly Round[] = [{ within: 0.3, errors: 1, keep: 3, rows: 20, sizes: [1, 0.5] }];

export const TEE_EFFORT: Effort = {
  aimReach_deg: 60,
  aimStep_deg: 4,
  sampled: 500,
  short: 60,
  exactRows: 10,
  refine: 36,
  rounds: [
    { within: 0.35, errors: 1, keep: 60, rows: 20, sizes: [] },
    { within: 0.3, errors: 1, keep: 24, rows: 20, sizes: [1] },
    { within: 0.1, errors: 1, keep: 8, rows: 64, sizes: [1, 0.5] },
  ],
  answerRows: 256,
  otherRows: 96,
  perDisc: true,
};
export const NEXT_EFFORT: Effort = {
  aimReach_deg: 90,
  aimStep_deg: 6,
  sampled: 800,
  short: 80,
  exactRows: 10,
  refine: 24,
  rounds: [
    { within: 0.3, errors: 1, keep: 24, rows: 20, sizes: [1] },
    { within: 0.1, errors: 1, keep: 6, rows: 64, sizes: [1, 0.5] },
  ],
  answerRows: 128,
  otherRows: 64,
  perDisc: false,
};
/** Throws by which the model may be off between two discs at their rated speeds, and more for one thrown with none of it (assumed). */
const MODEL_ERROR = 0.01;
const UNDERPOWERED_ERROR = 0.25;
/** The same for each m/s of wind: what a wind does to such a throw is where the model is least believed (it gains nothing downwind and loses nothing upwind). */
const UNDERPOWERED_WIND_ERROR = 0.12;
/** A roller or an overhead throw rests on a plainer model of a few throws: a lead this small over a flown disc is not believed (assumed). */
const SPECIAL_ERROR = 0.04;
/**
 * Throws above the least that a simpler disc may cost when it is preferred in a tie, besides a lead that is not believed: more may
 * be shown as a tie, but the choice stays near the least.
 */
const MOST_GIVEN_UP = 0.015;
/** Throws above the least up to which a shot is answered on the full number of fresh samples. */
const MAY_BE_CHOSEN = 0.05;
/** Finalists that get the full number of fresh samples at once. */
const FINALISTS = 6;
/** Throws behind the best on the search's samples from which on a shot is out of the race. */
const CLEARLY_BEHIND = 0.2;
/** Pairs of shot and aim of each disc that are marched with samples, at least. */
const SAMPLED_PER_DISC = 10;

/** Everything a lie's question needs; one per hole and wind. */
export type Table = Readonly<{
  world: World;
  field: ValueField;
  player: FittedPlayer;
  /** All shots: the middle and two samples of each. */
  bins: WindBins;
  marcher: ShotMarcher;
  thrower: ExactThrower;
  /** Day's mean wind at 10 m. */
  windSpeed_mps: number;
  /** Standard normals: one set to search with, another only to answer with. */
  searchNormals: Float64Array;
  answerNormals: Float64Array;
}>;

type Aimed = Line & Readonly<{ score: number }>;

/**
 * The shot with the fewest expected throws from a lie. Every shot and aim is marched (a shortlist blind to obstacles fails), the
 * best are flown exactly and refined in aim, power and launch, and the finalists answer on samples that chose nothing.
 */
export function chooseShot(table: Table, lie: Lie, effort: Effort): Choice {
  const picks = refine(table, lie, shortlist(table, lie, effort), effort);
  const { field, thrower, answerNormals, world } = table;
  const replayValue = valueAt(field, lie.east_m, lie.north_m);
  const answered = ({ shot, aim_deg }: Line, rows: number): Candidate => ({
    shot,
    aim_deg: ((aim_deg % 360) + 360) % 360,
    outcome: shotOutcome(thrower, field, shot, lie, aim_deg, answerNormals, 0, rows, world.dropZone, replayValue),
  });
  const first = picks.map((pick, rank) => answered(pick, rowsFor(rank, pick.score - picks[0].score, effort)));
  const least = Math.min(...first.map(c => c.outcome.expectedThrows));
  // whatever may be chosen is known as well as the finalists: else luck on few samples decides
  const isNearlyChosen = ({ outcome }: Candidate) =>
    outcome.perSample.length < effort.answerRows && outcome.expectedThrows < least + MAY_BE_CHOSEN;
  const candidates = first
    .map(c => (isNearlyChosen(c) ? answered(c, effort.answerRows) : c))
    .sort((a, b) => a.outcome.expectedThrows - b.outcome.expectedThrows);
  const best = simplestOfTie(table, candidates);
  return choiceOf(best, candidates);
}

/** Clear losers need fewer fresh samples to be told apart. */
function rowsFor(rank: number, behind: number, { answerRows, otherRows }: Effort): number {
  if (rank < FINALISTS) return answerRows;
  return behind < CLEARLY_BEHIND ? otherRows : Math.ceil(otherRows / 2);
}

/** The choice with another of its finalists as the best. */
export function choiceOf(best: Candidate, finalists: readonly Candidate[]): Choice {
  return { best, candidates: [best, ...bestPerDisc(finalists, best)], finalists };
}

/** Difference in expected throws on the same samples, with its standard error. */
export function pairedDifference(a: ShotOutcome, b: ShotOutcome): Readonly<{ mean: number; standardError: number }> {
  const n = Math.min(a.perSample.length, b.perSample.length);
  let sum = 0;
  let square = 0;
  for (let i = 0; i < n; i++) {
    const d = a.perSample[i] - b.perSample[i];
    sum += d;
    square += d * d;
  }
  const mean = sum / n;
  return { mean, standardError: Math.sqrt(Math.max(0, square / n - mean * mean) / Math.max(1, n - 1)) };
}

/**
 * True when the error cannot tell the two apart: one standard error of the paired difference (0.005 to 0.03), and what the model
 * itself may be off by, which grows for discs too fast for the arm (assumed).
 */
export function isTie(table: Pick<Table, 'player' | 'windSpeed_mps'>, best: Candidate, other: Candidate): boolean {
  const { mean, standardError } = pairedDifference(other.outcome, best.outcome);
  const sampling = Math.min(0.03, Math.max(0.005, standardError));
  return mean <= Math.hypot(sampling, MODEL_ERROR) + notBelieved(table, best, other);
}

/** Throws of a lead that rest on the model where it is weakest: a disc too fast for the arm, a roller or overhead throw. */
function notBelieved(
  { player, windSpeed_mps }: Pick<Table, 'player' | 'windSpeed_mps'>,
  best: Pick<Candidate, 'shot'>,
  other: Pick<Candidate, 'shot'>,
): number {
  const shortOf = ({ shot }: Pick<Candidate, 'shot'>) =>
    isSpecialShape(shot.shape) ? 0 : speedShortfall(player.throws[shot.throwIndex]);
  const shortfall = shortOf(best) - shortOf(other);
  const plainer = isSpecialShape(best.shot.shape) && !isSpecialShape(other.shot.shape) ? SPECIAL_ERROR : 0;
  return (UNDERPOWERED_ERROR + UNDERPOWERED_WIND_ERROR * windSpeed_mps) * Math.max(0, shortfall) + plainer;
}

function simplestOfTie(table: Table, sorted: readonly Candidate[]): Candidate {
  const leader = sorted[0];
  const tied = sorted.filter(
    c =>
      c === leader ||
      (isTie(table, leader, c) &&
        c.outcome.expectedThrows - leader.outcome.expectedThrows <= MOST_GIVEN_UP + notBelieved(table, leader, c)),
  );
  const complexity = (c: Candidate) =>
    table.player.throws[c.shot.throwIndex].discSpeed +
    Math.abs(c.shot.hyzer_deg) / 10 +
    (c.shot.height === 'standard' ? 0 : 0.5);
  return tied.reduce((a, b) => (complexity(b) < complexity(a) - 1e-9 ? b : a));
}

/** A disc's rollers and overhead throws are throws of their own beside its lines on the flat. */
function lineKind({ throwIndex, shape }: ShotSpec): string {
  return isSpecialShape(shape) ? `${throwIndex} ${shape}` : `${throwIndex}`;
}

function bestPerDisc(sorted: readonly Candidate[], best: Candidate): Candidate[] {
  const seen = new Set([lineKind(best.shot)]);
  return sorted.filter(c => {
    if (seen.has(lineKind(c.shot))) return false;
    seen.add(lineKind(c.shot));
    return true;
  });
}

/** All shots × aims, marched by their middle and two samples; the best of all and the best of every disc. */
function shortlist(table: Table, lie: Lie, effort: Effort): Aimed[] {
  const { world, field, player, bins, marcher } = table;
  const d = distanceToBasket(field, lie.east_m, lie.north_m);
  const toBasket = Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) / DEGREE;
  const farthest = Math.max(d, bins.leastReach_m(toBasket)) + TOO_FAR_M;
  const steps = Math.round(effort.aimReach_deg / effort.aimStep_deg);
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue: valueAt(field, lie.east_m, lie.north_m) };
  const { shots, samples } = bins.library;
  const aims_deg = Array.from({ length: 2 * steps + 1 }, (_, aim) => toBasket + (aim - steps) * effort.aimStep_deg);
  const bounds = new Float64Array(shots.length * aims_deg.length);
  landingValues(world, bins, field, lie, everyShot(bins), aims_deg, farthest, bounds);
  const marched = (shot: number, aim_deg: number, to: number) => {
    resetThrowValue(running);
    marcher.add(shot, 0, to, lie, aim_deg, field, running);
    return expectedOf(running);
  };
  const promising = marchPromising({
    shots: shots.length,
    aims: aims_deg.length,
    bounds,
    score: (shot, aim) => marched(shot, aims_deg[aim], 1),
    most: effort.sampled,
    perGroup: effort.perDisc ? SAMPLED_PER_DISC : 0,
    groupOf: shot => kindOf(shots[shot], player.throws.length),
    groups: kindsOf(player.throws),
  });
  const picks = promising.map(
    (pair): Aimed => ({
      shot: shots[pair.shot],
      aim_deg: aims_deg[pair.aim],
      score: marched(pair.shot, aims_deg[pair.aim], samples),
    }),
  );
  picks.sort((a, b) => a.score - b.score);
  return selectDiverse(picks, effort.short, effort.perDisc ? 2 : 0);
}

/** The first `most` picks, and enough more that every disc × hand has `perDisc`. */
function selectDiverse<T extends Line>(sorted: readonly T[], most: number, perDisc: number): T[] {
  const count = new Map<string, number>();
  return sorted.filter((pick, i) => {
    const kind = lineKind(pick.shot);
    const seen = count.get(kind) ?? 0;
    if (i >= most && seen >= perDisc) return false;
    count.set(kind, seen + 1);
    return true;
  });
}

/** The picks flown exactly, those near the best raced and improved. */
function refine(table: Table, lie: Lie, picks: readonly Aimed[], effort: Effort): RacedShot[] {
  const racer = createRacer(table, lie);
  const starters = picks.map(pick => racer.start(pick));
  for (const shot of starters) racer.fly(shot, effort.exactRows);
  starters.sort((a, b) => a.score - b.score);
  return raceShots(racer, selectDiverse(starters, effort.refine, effort.perDisc ? 1 : 0), effort.rounds);
}
