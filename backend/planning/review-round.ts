import type { Day } from '../../core/air/day.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { FittedPlayer } from '../../core/player/fitted-player.ts';
import type { ReviewReport, WindReview } from '../../core/review/review-report.ts';
import { reviewReport, windReview } from '../../core/review/review-round.ts';
import { isFinished, type RoundFile, type RoundHole } from '../../core/review/round-file.ts';
import type { AskedShot } from '../../core/strategy/evaluate-shot.ts';
import type { ShotReport } from '../../core/strategy/plan-report.ts';
import { isAllowed } from '../../core/strategy/shots.ts';
import type { Problem } from '../../core/units/result.ts';
import { groundDrop_m } from './ground-drop.ts';
import type { RoundSetting } from './plan-task.ts';
import type { PlanningDesk } from './planning-desk.ts';

export type ReviewRequest = Readonly<{
  course: string;
  /** Maps of all holes of the course. */
  maps: readonly HoleMap[];
  player: FittedPlayer;
  /** Checked against the course and the player. */
  round: RoundFile;
  /** What the round was planned for. */
  day: Day;
  /** What blew; null when nothing else was given. */
  realDay: Day | null;
  seed: number;
}>;

export type ReviewOptions = Readonly<{
  signal: AbortSignal;
  /** Holes judged so far; each counts twice when two winds are looked at. */
  onProgress?: (done: number, total: number) => void;
}>;

/**
 * Judges a round hole by hole on the planning threads: in the wind it was planned for, then in the one that blew.
 * @throws {DOMException} AbortError, soon after `signal`
 */
export async function reviewRound(
  desk: Pick<PlanningDesk, 'review'>,
  request: ReviewRequest,
  { signal, onProgress }: ReviewOptions,
): Promise<ReviewReport> {
  const { course, maps, player, round, day, realDay, seed } = request;
  const holes = round.holes.filter(isFinished);
  const total = reviewSteps(round, realDay !== null);
  let done = 0;
  const drop_m = groundDrop_m(maps);
  const stayingCosts = new Map<string, number>();
  const inWind = async (air: Day, stayingOf: (ref: string) => AskedShot | undefined): Promise<WindReview> => {
    const setting: RoundSetting = { player, day: air, limits: round.limits ?? {}, drop_m, seed };
    const answers = await Promise.all(
      holes.map(async hole => {
        const answer = await desk.review(mapOf(maps, hole), setting, hole, signal, stayingOf(hole.ref));
        done++;
        onProgress?.(done, total);
        return answer;
      }),
    );
    answers.forEach(({ review, stayingCost }) => {
      if (stayingCost !== null) stayingCosts.set(review.ref, stayingCost);
    });
    return windReview(
      air,
      answers.map(({ review }) => review),
    );
  };
  const asPlanned = await inWind(day, () => undefined);
  const choices = new Map(asPlanned.holes.map(hole => [hole.ref, hole.teeChoice]));
  const asItWas = realDay === null ? null : await inWind(realDay, ref => askedOf(choices.get(ref)));
  return reviewReport({
    course,
    player: player.name,
    round,
    seed,
    asPlanned,
    asItWas,
    stayingCosts,
    notes: player.notes,
  });
}

/** @returns why a round cannot be reviewed: the player has nothing to throw that day */
export function refuseReview({ throws, name }: FittedPlayer, { limits = {} }: RoundFile): Problem[] {
  if (throws.some(fitted => isAllowed(fitted, limits))) return [];
  const why = Object.keys(limits).length > 0 ? 'within these limits' : 'that is not kept for putting';
  return [{ path: 'limits', message: `leave nothing to throw: ${name} has no disc ${why}` }];
}

/** How many steps `onProgress` counts. */
export function reviewSteps(round: RoundFile, isInTwoWinds: boolean): number {
  return round.holes.filter(isFinished).length * (isInTwoWinds ? 2 : 1);
}

function mapOf(maps: readonly HoleMap[], { ref }: RoundHole): HoleMap {
  const map = maps.find(own => own.ref === ref);
  if (map === undefined) throw new RangeError(`the course has no hole ${ref}`);
  return map;
}

function askedOf(shot: ShotReport | undefined): AskedShot | undefined {
  if (shot === undefined) return undefined;
  const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = shot;
  return { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
}
