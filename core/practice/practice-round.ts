import type { Day } from '../air/day.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import { drillsOf } from './drills.ts';
import { fairTarget, roundChances } from './fair-target.ts';
import { practiceCautions } from './practice-cautions.ts';
import type { OwnBest, PracticeHole } from './practice-hole.ts';
import type { AllowedThrows } from './practice-limit.ts';
import type { PracticeHoleReport, PracticeRound } from './practice-report.ts';
import type { SessionLoad } from './session-load.ts';

/** A hole planned under the limit turns out not to suit below this: tight, or guarded, where the estimate saw length only. */
const KEEPS_FROM = 0.2;
const LEAST_SHOWN = 5e-4;

export type TeedHole = Readonly<{ tee: string; isFirstTee: boolean; hole: PracticeHole }>;

export type RoundInput = Readonly<{
  key: string;
  course: string;
  day: Day;
  player: FittedPlayer;
  allowed: AllowedThrows;
  holes: readonly TeedHole[];
  own: readonly OwnBest[];
  skip: readonly Readonly<{ ref: string; text: string }>[];
  before: SessionLoad;
}>;

/**
 * The holes to keep of those planned, in order of play, and why the others are left out: those the simulation reaches least, down
 * to the number wanted.
 */
export function keepBest(
  holes: readonly TeedHole[],
  wanted: number,
): Readonly<{ kept: TeedHole[]; left: { ref: string; text: string }[] }> {
  const ranked = [...holes].sort((a, b) => suits(b.hole) - suits(a.hole));
  const good = ranked.filter(({ hole }) => hole.reach20Chance >= KEEPS_FROM);
  const chosen = good.slice(0, wanted);
  return {
    kept: holes.filter(hole => chosen.includes(hole)),
    left: holes
      .filter(hole => !chosen.includes(hole))
      .map(({ hole }) => ({
        ref: hole.ref,
        text:
          hole.reach20Chance < KEEPS_FROM
            ? `planned, it is reached in ${percent(hole.reach20Chance)} of plays only (${percent(hole.cleanShare)} of the throws fly clean)`
            : `suits too, others suit better (reached in ${percent(hole.reach20Chance)} of plays)`,
      })),
  };
}

/** Reached, and clean: what a hole is worth to practise on. */
const suits = ({ reach20Chance, cleanShare }: PracticeHole) => reach20Chance * cleanShare;

/** Expected score, target, drills and cautions of the holes kept. @throws {RangeError} without holes */
export function practiceRound(input: RoundInput): PracticeRound {
  const { key, course, day, player, allowed, holes, own, skip, before } = input;
  const played = holes.map(({ hole }) => hole);
  const { beside, ...target } = fairTarget(played);
  const chances = roundChances(played);
  const par = sumOf(played, hole => hole.par);
  const drills = drillsOf(played, own, player.putting);
  const fullThrows = sumOf(played, hole => hole.fullThrowsAPlay);
  const plays = Math.min(...played.map(({ plays }) => plays));
  const reports = holes.map(teed => holeReport(teed, own));
  const ownThrows = reports.map(hole => hole.ownThrows);
  return {
    key,
    course,
    holes: reports,
    par,
    expectedThrows: sumOf(played, hole => hole.expectedThrows),
    sd: spread(chances),
    distribution: chances.flatMap((chance, throws) =>
      chance >= LEAST_SHOWN ? [{ throws, chance: unit(chance) }] : [],
    ),
    target: {
      ...target,
      overPar: target.throws - par,
      plays,
      rounds: played[0]!.roundScores.length,
      standardError: Math.sqrt((target.chance * (1 - target.chance)) / plays),
      beside: [...beside],
    },
    ownThrows: ownThrows.every(throws => throws !== null) ? sumOf(ownThrows, throws => throws) : null,
    fullThrows,
    armThrows: sumOf(played, hole => hole.armThrowsAPlay),
    skip: [...skip],
    drills: [...drills],
    cautions: practiceCautions(day, {
      fullThrows,
      drillThrows: THROWS_A_DRILL * drills.filter(({ kind }) => kind !== 'putt').length,
      forehandOnly: allowed.hands?.length === 1 && allowed.hands[0] === 'forehand',
      usesOtherTees: holes.some(({ isFirstTee }) => !isFirstTee),
      before,
    }),
  };
}

/** As the drills ask for. */
const THROWS_A_DRILL = 20;

function holeReport({ tee, hole }: TeedHole, own: readonly OwnBest[]): PracticeHoleReport {
  const best = own.find(({ ref }) => ref === hole.ref);
  return {
    ref: hole.ref,
    tee,
    length_m: hole.length_m,
    playLength_m: hole.playLength_m,
    bearing_deg: hole.bearing_deg,
    par: hole.par,
    parSource: hole.parSource,
    shot: hole.shot,
    next: hole.next,
    expectedThrows: hole.expectedThrows,
    plannedThrows: hole.plannedThrows,
    scoreDistribution: hole.scores.flatMap((chance, i) => (chance > 0 ? [{ throws: i + 1, chance }] : [])),
    reach20Chance: hole.reach20Chance,
    reach10Chance: hole.reach10Chance,
    cleanShare: hole.cleanShare,
    fullThrows: hole.fullThrowsAPlay,
    ownThrows: best?.expectedThrows ?? null,
    limitCosts: best === undefined ? null : hole.plannedThrows - best.expectedThrows,
    ownShot: best === undefined ? null : `${best.shot.disc}: ${best.shot.title}`,
    cautions: [...hole.cautions],
    assumptions: [...hole.assumptions],
  };
}

function spread(chances: readonly number[]): number {
  const mean = chances.reduce((sum, chance, throws) => sum + chance * throws, 0);
  return Math.sqrt(chances.reduce((sum, chance, throws) => sum + chance * (throws - mean) ** 2, 0));
}

const percent = (chance: number) => `${Math.round(100 * chance)} %`;
const unit = (chance: number) => Math.min(1, Math.max(0, chance));

function sumOf<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((sum, item) => sum + of(item), 0);
}
