import { describeHole } from '../geometry/describe-hole.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import { rasterize } from '../geometry/rasterize.ts';
import { type Candidate, chooseShot, TEE_EFFORT } from '../strategy/choose-shot.ts';
import type { DayLibraries } from '../strategy/day-libraries.ts';
import { holeCautions } from '../strategy/hole-cautions.ts';
import { drawShot, type ShotDrawing } from '../strategy/hole-drawing.ts';
import { type SolvedHole, solveHole } from '../strategy/hole-solver.ts';
import { nextThrows } from '../strategy/next-throws.ts';
import type { HolePlan, ShotReport } from '../strategy/plan-report.ts';
import { shapeCautions } from '../strategy/shape-cautions.ts';
import { shotReport } from '../strategy/shot-report.ts';
import { independentThrows, throwsOfOneRound } from './draw-throw.ts';
import { limitedLibraries } from './limited-libraries.ts';
import { playBook } from './play-book.ts';
import { holePlayer, MOST_THROWS, type Play } from './play-hole.ts';
import type { AllowedThrows } from './practice-limit.ts';
import { randomStream, saltOf } from './random-stream.ts';
import { type PuttUse, type ThrowUse, usesOf } from './throw-uses.ts';

const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const NARROW_UNKNOWN_M = 1000;
/** Throws that going for the green may cost against the best shot, for the hole to count as within reach (own choice). */
const GOING_COST = 0.3;
/** A throw is a full one from this share of the full power (assumed). */
const FULL_POWER = 0.85;

export type PracticeHoleInput = Readonly<{
  map: HoleMap;
  /** Made with the limit's discs and hands; its seed seeds the simulated rounds too. */
  libraries: DayLibraries;
  shapes?: AllowedThrows['shapes'];
  /** Times the hole is played with independent throws. */
  plays: number;
  /** Rounds in which what the fit leaves unknown is the same all round. */
  rounds: number;
}>;

/** One hole of a practice round, planned under the limit and played over and over. */
export type PracticeHole = Readonly<{
  ref: string;
  length_m: number;
  playLength_m: number;
  bearing_deg: number;
  par: number;
  parSource: 'tagged' | 'derived';
  shot: ShotReport;
  next: HolePlan['next'];
  /** As the plan's field has it, for the same question with other discs. */
  plannedThrows: number;
  /** Times it was played. */
  plays: number;
  /** Share of the plays: `[i]` for i + 1 throws, the last that or worse. */
  scores: readonly number[];
  expectedThrows: number;
  /**
   * Chance to be this near in the throws par allows before two putts: as played, or, on a hole of one such throw, going for it
   * where that costs at most 0.3 throws.
   */
  reach20Chance: number;
  reach10Chance: number;
  /** Share of all throws but putts that touched nothing and cost no penalty. */
  cleanShare: number;
  /** Throws but putts, and those of them at full power or nearly, in one play. */
  armThrowsAPlay: number;
  fullThrowsAPlay: number;
  /** Score in each of the rounds. */
  roundScores: readonly number[];
  throwUses: readonly ThrowUse[];
  puttUses: readonly PuttUse[];
  drawing: ShotDrawing;
  cautions: readonly string[];
  assumptions: readonly string[];
}>;

/** Solves the hole under the limit, takes the best tee shot, and plays it out again and again. Deterministic in its input. */
export function practiceHole({ map, libraries, shapes, plays, rounds }: PracticeHoleInput): PracticeHole {
  const report = describeHole(map);
  const limited = shapes === undefined ? libraries : limitedLibraries(libraries, shapes);
  const { solved, choice } = solvedTee(map, limited, report.narrowest?.width_m);
  const { best } = choice;
  const { day, seed, player } = libraries;
  const salt = saltOf(`${map.ref} ${map.origin.join(' ')}`);
  const book = playBook(solved, best);
  const counted = new Map<number, number>();
  const putted = new Map<number, number>();
  const play = holePlayer(solved, book, {
    thrown: ({ index }) => counted.set(index, (counted.get(index) ?? 0) + 1),
    putted: distance_m => putted.set(Math.round(distance_m), (putted.get(Math.round(distance_m)) ?? 0) + 1),
  });
  const random = randomStream(seed, salt, 1);
  const draw = independentThrows(random);
  const made = Array.from({ length: plays }, () => play(random, draw));
  const uses = usesOf(solved, book.pages, counted, putted, plays, seed);
  const full = book.pages.filter(page => page.shot.power >= FULL_POWER);
  const sameAllRound = randomStream(seed, salt, 2);
  const roundScores = Array.from(
    { length: rounds },
    (_, round) => play(sameAllRound, throwsOfOneRound(player, sameAllRound, seed, round)).score,
  );
  const allowed = Math.max(1, map.par - 2);
  // where the plan lays up, but going for it costs next to nothing, the hole is within reach all the same
  const going = (chanceOf: (outcome: Candidate['outcome']) => number) =>
    allowed > 1
      ? 0
      : Math.max(
          ...choice.finalists
            .filter(({ outcome }) => outcome.expectedThrows <= best.outcome.expectedThrows + GOING_COST)
            .map(({ outcome }) => Math.min(1, chanceOf(outcome))),
        );
  return {
    ref: map.ref,
    length_m: report.length_m,
    playLength_m: report.playLength_m,
    bearing_deg: report.bearing_deg,
    par: map.par,
    parSource: map.parSource,
    shot: reported(solved, best, report),
    next: nextThrows(solved.table, choice, day.wind, false),
    plannedThrows: best.outcome.expectedThrows,
    plays,
    scores: Array.from({ length: MOST_THROWS }, (_, i) => share(made, one => one.score === i + 1)),
    expectedThrows: made.reduce((sum, one) => sum + one.score, 0) / plays,
    reach20Chance: Math.max(
      share(made, one => one.within20After <= allowed),
      going(outcome => outcome.within20mChance),
    ),
    reach10Chance: Math.max(
      share(made, one => one.within10After <= allowed),
      going(outcome => outcome.within10mChance),
    ),
    cleanShare: total(made, one => one.clean) / total(made, one => one.throws),
    armThrowsAPlay: total(made, one => one.throws) / plays,
    fullThrowsAPlay:
      uses.counts.filter(([index]) => full.some(page => page.index === index)).reduce((sum, [, n]) => sum + n, 0) /
      plays,
    roundScores,
    throwUses: uses.throws,
    puttUses: uses.putts,
    drawing: drawShot(solved.table, best.shot, TEE, best.aim_deg),
    cautions: [...shapeCautions(map, solved.table, best, TEE, []), ...holeCautions(map, report, best.outcome.ends)],
    assumptions: map.assumptions,
  };
}

/** The best tee shot with everything in the bag: what the limit is measured against. */
export type OwnBest = Readonly<{ ref: string; expectedThrows: number; shot: ShotReport }>;

export function ownBest(map: HoleMap, libraries: DayLibraries): OwnBest {
  const report = describeHole(map);
  const { solved, choice } = solvedTee(map, libraries, report.narrowest?.width_m);
  return {
    ref: map.ref,
    expectedThrows: choice.best.outcome.expectedThrows,
    shot: reported(solved, choice.best, report),
  };
}

function solvedTee(map: HoleMap, libraries: DayLibraries, narrowest_m: number = NARROW_UNKNOWN_M) {
  const solved = solveHole(map, rasterize(map), libraries, narrowest_m);
  return { solved, choice: chooseShot(solved.table, TEE, TEE_EFFORT) };
}

function reported(
  solved: SolvedHole,
  best: Candidate,
  { length_m, bearing_deg }: Readonly<{ length_m: number; bearing_deg: number }>,
): ShotReport {
  // a tailwind only matters to the notes on fast drivers, which the hole's own plan gives
  const place = { fromTee: true, toBasket_m: length_m, toBasket_deg: bearing_deg, tailwind: false };
  return shotReport(solved.table, best, best, place);
}

const share = (plays: readonly Play[], is: (play: Play) => boolean) => plays.filter(is).length / plays.length;
const total = (plays: readonly Play[], of: (play: Play) => number) => plays.reduce((sum, play) => sum + of(play), 0);
