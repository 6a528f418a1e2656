import { type Day, makeDay } from '../../core/air/day.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { Result } from '../../core/units/result.ts';
import type { PlanRequestData } from '../api/contract/plans.ts';
import { type PlanRequest, refuseRound, roundSetting } from '../planning/plan-round.ts';
import type { RoundSetting } from '../planning/plan-task.ts';
import type { CourseBook } from './course-book.ts';
import type { PlayerBook } from './player-book.ts';

/** A round with everything planning it takes. */
export type ReadyRound = Readonly<{ request: PlanRequest; round: RoundSetting; maps: readonly HoleMap[] }>;

/** @returns the round, or problems with paths as in the request */
export async function readyRound(
  { courses, players }: Readonly<{ courses: CourseBook; players: PlayerBook }>,
  asked: Omit<PlanRequestData, 'attitude' | 'target'>,
): Promise<Result<ReadyRound>> {
  const { courseId, playerId, limits, holes, layout, seed } = asked;
  const day = askedDay(asked.day);
  const course = courses.get(courseId, layout);
  const [player, all] = await Promise.all([players.fitted(playerId), courses.maps(courseId, layout)]);
  if (!day.ok) return day;
  if (!course.ok) return course;
  if (!player.ok) return player;
  if (!all.ok) return all;
  const request: PlanRequest = {
    course: course.value,
    player: player.value,
    day: day.value,
    limits,
    seed,
    ...(holes && { holes }),
  };
  const refusal = refuseRound(request);
  if (refusal !== undefined) return refusal;
  const maps = all.value.filter(map => holes === undefined || holes.includes(map.ref));
  return { ok: true, value: { request, round: roundSetting(request, all.value), maps } };
}

/** The day of a request; paths of its problems begin with `day`. */
export function askedDay(input: unknown): Result<Day> {
  const day = makeDay(input);
  if (day.ok) return day;
  return { ok: false, problems: day.problems.map(({ path, message }) => ({ path: `day.${path}`, message })) };
}
