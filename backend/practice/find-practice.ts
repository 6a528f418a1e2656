import { setImmediate } from 'node:timers/promises';
import type { Day } from '../../core/air/day.ts';
import type { Course } from '../../core/course/course.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { PlayerFile } from '../../core/player/player-file.ts';
import { type CourseFit, courseScore, fitHole, type HoleFit, holesToPlan } from '../../core/practice/course-fit.ts';
import { courseFitReport, holeText } from '../../core/practice/fit-words.ts';
import type { OwnBest, PracticeHole } from '../../core/practice/practice-hole.ts';
import { type AllowedThrows, allowedThrows, type PracticeLimit } from '../../core/practice/practice-limit.ts';
import type { PracticeReport, PracticeRound } from '../../core/practice/practice-report.ts';
import { keepBest, practiceRound, type TeedHole } from '../../core/practice/practice-round.ts';
import { practiceNotes, practiceText } from '../../core/practice/practice-words.ts';
import { type ReachLine, reachLines } from '../../core/practice/reach-lines.ts';
import { type SessionLoad, sessionLoad } from '../../core/practice/session-load.ts';
import type { Limits } from '../../core/strategy/shots.ts';
import type { Result } from '../../core/units/result.ts';
import { groundDrop_m } from '../planning/ground-drop.ts';
import type { RoundSetting } from '../planning/plan-task.ts';
import type { PlanningDesk } from '../planning/planning-desk.ts';
import type { PlayedHole } from '../sheet/sheet-of-practice.ts';

/** Plays of each hole behind a stated chance: its sampling error is then under 0.8 points. */
const PLAYS = 4000;
/** Rounds with the same player all round. */
const ROUNDS = 2000;
/** Planned beyond the holes wanted, to leave out the worst of them. */
const SPARE = 2;

/** A course of the library with what to call it: its file, or its id. */
type PracticeCourse = Readonly<{ key: string; course: Course }>;

export type PracticeRequest = Readonly<{
  courses: readonly PracticeCourse[];
  file: PlayerFile;
  player: FittedPlayer;
  day: Day;
  limit: PracticeLimit;
  /** Holes of a round, at most. */
  holes: number;
  /** Courses to plan a round on, the best first. */
  rounds: number;
  /** Also plan the holes with the whole bag, for what the limit costs. */
  compare: boolean;
  seed: number;
}>;

/** `looking`: at lengths, hole by hole; `playing`: planning and simulating; `comparing`: with the whole bag. */
export type PracticeProgress = Readonly<{
  stage: 'looking' | 'playing' | 'comparing';
  done: number;
  total: number;
  what: string;
}>;

export type PracticeFound = Readonly<{
  report: PracticeReport;
  /** What the sheet draws: the holes of each round, in order of play. */
  played: readonly (readonly PlayedHole[])[];
}>;

type Way = Readonly<{ threads: PlanningDesk; signal: AbortSignal; onProgress?: (progress: PracticeProgress) => void }>;

/**
 * Looks through the courses for a practice round: first a cheap estimate of every hole from every tee, then real plans and simulated
 * play of the best. Deterministic in its request.
 * @returns the report, or problems with paths under `limit`
 * @throws {DOMException} AbortError, soon after `signal`; {Error} when a thread fails
 */
export async function findPractice(request: PracticeRequest, way: Way): Promise<Result<PracticeFound>> {
  const { courses, file, player, day, limit, holes, seed } = request;
  const allowed = allowedThrows(player, file.discs, limit);
  if (!allowed.ok) return allowed;
  const fits = await lookAt(courses, reachLines(player, allowed.value, day), way);
  const ranked = [...fits].sort((a, b) => courseScore(b, holes) - courseScore(a, holes));
  const made = await playBest(ranked, request, allowed.value, way);
  const { wind, density_kgpm3, source, notes } = day;
  const report: PracticeReport = {
    schema: 'roundwright/practice@1',
    player: player.name,
    limit: plainLimit(limit),
    limitWords: allowed.value.words,
    discs: [...allowed.value.discNames],
    air: {
      windSpeed_mps: wind.speed_mps,
      windFrom_deg: wind.from_deg,
      gust_mps: wind.gust_mps,
      density_kgpm3,
      directionSpread_deg: wind.directionSpread_deg,
      source,
      notes: [...notes],
    },
    seed,
    wantedHoles: holes,
    courses: ranked.map(fit => courseFitReport(fit, holes)),
    rounds: made.map(({ round }) => round),
    text: practiceText(
      allowed.value.words,
      made.map(({ round }) => round),
      ranked.length,
    ),
    notes: practiceNotes(PLAYS, ROUNDS, player),
  };
  return { ok: true, value: { report, played: made.map(one => one.holes) } };
}

/** The cheap look at every hole from every tee; lets other work through between two holes. */
async function lookAt(
  courses: readonly PracticeCourse[],
  linesAt: (aim_deg: number) => ReachLine[],
  { signal, onProgress }: Way,
): Promise<CourseFit[]> {
  const total = courses.reduce((sum, { course }) => sum + course.holes.length, 0);
  const fits: CourseFit[] = [];
  let done = 0;
  for (const { key, course } of courses) {
    const holes: HoleFit[] = [];
    for (const hole of course.holes) {
      signal.throwIfAborted();
      onProgress?.({ stage: 'looking', done: done++, total, what: `${course.name}, hole ${hole.ref}` });
      holes.push(fitHole(course, hole, linesAt));
      await setImmediate();
    }
    fits.push({ key, course: course.name, holes });
  }
  return fits;
}

type Chosen = ReturnType<typeof holesToPlan>;
type Made = Readonly<{ round: PracticeRound; holes: readonly PlayedHole[] }>;

/**
 * Rounds on the best courses by the estimate, as many as wanted; a course none of whose holes suits after all gives way to the next.
 * @returns best first, by what the simulation says
 */
async function playBest(
  ranked: readonly CourseFit[],
  request: PracticeRequest,
  allowed: AllowedThrows,
  way: Way,
): Promise<Made[]> {
  const made: Made[] = [];
  for (const fit of ranked) {
    const some = holesToPlan(fit, request.holes + SPARE);
    if (some.length === 0 || made.length === request.rounds) continue;
    const round = await playRound(fit, some, request, allowed, way);
    if (round !== null) made.push(round);
  }
  return made.sort((a, b) => roundScore(b.round) - roundScore(a.round));
}

/** How well a round suits: its holes reached, and clean, added up. */
function roundScore({ holes }: PracticeRound): number {
  return holes.reduce((sum, { reach20Chance, cleanShare }) => sum + reach20Chance * cleanShare, 0);
}

/** @returns null when none of the holes suits after all */
async function playRound(
  fit: CourseFit,
  some: Chosen,
  request: PracticeRequest,
  allowed: AllowedThrows,
  way: Way,
): Promise<Made | null> {
  const { player, day, seed, holes: wanted, compare, file } = request;
  const limits: Limits = { discIds: allowed.discIds, ...(allowed.hands && { hands: allowed.hands }) };
  const setting: RoundSetting = { player, day, limits, drop_m: groundDrop_m(some.map(({ tee }) => tee.map)), seed };
  let done = 0;
  const step = (what: string) => way.onProgress?.({ stage: 'playing', done: done++, total: some.length, what });
  step(fit.course);
  const teed = await Promise.all(
    some.map(async ({ tee, tees }): Promise<TeedHole> => {
      const how = { plays: PLAYS, rounds: ROUNDS, ...(allowed.shapes && { shapes: allowed.shapes }) };
      const hole: PracticeHole = await way.threads.practice(tee.map, setting, how, way.signal);
      step(`${fit.course}, hole ${tee.map.ref}`);
      return { tee: tee.name, isFirstTee: tee === tees[0], hole };
    }),
  );
  const { kept, left } = keepBest(teed, wanted);
  if (kept.length === 0) return null;
  const own = compare ? await ownBests(fit, some, kept, { ...setting, limits: {} }, way) : [];
  const before: SessionLoad = sessionLoad(file.sessions);
  const tooLong = fit.holes.filter(({ tee }) => tee === null).map(hole => ({ ref: hole.ref, text: holeText(hole) }));
  const notLooked = fit.holes
    .filter(({ ref, tee }) => tee !== null && !some.some(hole => hole.ref === ref))
    .map(({ ref }) => ({ ref, text: 'suits too, others suit better by the estimate' }));
  const order = new Map(fit.holes.map(({ ref }, i) => [ref, i]));
  const skip = [...tooLong, ...left, ...notLooked].sort((a, b) => order.get(a.ref)! - order.get(b.ref)!);
  const { key, course } = fit;
  const mapOf = new Map(some.map(({ ref, tee }) => [ref, tee.map]));
  return {
    round: practiceRound({ key, course, day, player, allowed, holes: kept, own, skip, before }),
    holes: kept.map(one => ({ ...one, map: mapOf.get(one.hole.ref)! })),
  };
}

async function ownBests(
  fit: CourseFit,
  some: Chosen,
  kept: readonly TeedHole[],
  setting: RoundSetting,
  { threads, signal, onProgress }: Way,
): Promise<OwnBest[]> {
  let done = 0;
  return Promise.all(
    some
      .filter(({ ref }) => kept.some(({ hole }) => hole.ref === ref))
      .map(async ({ tee }) => {
        const best = await threads.ownBest(tee.map, setting, signal);
        onProgress?.({
          stage: 'comparing',
          done: ++done,
          total: kept.length,
          what: `${fit.course}, hole ${tee.map.ref}, with the whole bag`,
        });
        return best;
      }),
  );
}

/** As the report has it: lists of its own. */
function plainLimit({ classes, discIds, neutral, hands, shapes }: PracticeLimit): PracticeReport['limit'] {
  return {
    ...(classes && { classes: [...classes] }),
    ...(discIds && { discIds: [...discIds] }),
    ...(neutral !== undefined && { neutral }),
    ...(hands && { hands: [...hands] }),
    ...(shapes && { shapes: [...shapes] }),
  };
}
