import { type Day, makeDay } from '../../core/air/day.ts';
import { byTime, playOrder, windsTrouble } from '../../core/air/round-winds.ts';
import type { Course } from '../../core/course/course.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { Result } from '../../core/units/result.ts';
import type { PlanRequestData } from '../api/contract/plans.ts';
import { type PlanRequest, refuseRound, roundSetting } from '../planning/plan-round.ts';
import type { RoundSetting } from '../planning/plan-task.ts';
import { type HoleDay, windByHole } from '../planning/wind-by-hole.ts';
import type { CourseBook } from './course-book.ts';
import type { PlayerBook } from './player-book.ts';

/** A round with everything planning it takes. */
export type ReadyRound = Readonly<{
  request: PlanRequest;
  /** What a hole is planned in: each in its own wind, where that changes over the round. */
  roundOf: (map: HoleMap) => RoundSetting;
  maps: readonly HoleMap[];
}>;

/** @returns the round, or problems with paths as in the request */
export async function readyRound(
  { courses, players }: Readonly<{ courses: CourseBook; players: PlayerBook }>,
  asked: Omit<PlanRequestData, 'attitude' | 'target'>,
): Promise<Result<ReadyRound>> {
  const { courseId, playerId, limits, holes, layout, seed } = asked;
  const course = courses.get(courseId, layout);
  const air = course.ok ? askedAir(asked, refsOf(course.value)) : null;
  const [player, all] = await Promise.all([players.fitted(playerId), courses.maps(courseId, layout)]);
  if (!course.ok) return course;
  if (air?.ok === false) return air;
  if (!player.ok) return player;
  if (!all.ok) return all;
  const request: PlanRequest = {
    course: course.value,
    player: player.value,
    ...air!.value,
    limits,
    seed,
    ...(holes && { holes }),
  };
  const refusal = refuseRound(request);
  if (refusal !== undefined) return refusal;
  const maps = all.value.filter(map => holes === undefined || holes.includes(map.ref));
  const round = roundSetting(request, all.value);
  const own = new Map<string, RoundSetting>();
  // the same object for a hole whenever it is asked for
  for (const [ref, { day }] of request.dayByHole ?? []) own.set(ref, { ...round, day });
  return { ok: true, value: { request, roundOf: map => own.get(map.ref) ?? round, maps } };
}

const refsOf = (course: Course): readonly string[] => course.holes.map(hole => hole.ref);

/**
 * The air a round is asked to be planned in.
 * @param refs - all holes of the course, in its order
 * @returns the day (with winds by tee time that of the hole thrown off first) and each hole's own; problems with paths as in the request
 */
export function askedAir(
  { day: given, winds, startRef }: Pick<PlanRequestData, 'day' | 'winds' | 'startRef'>,
  refs: readonly string[],
): Result<Pick<PlanRequest, 'day' | 'dayByHole'>> {
  if (winds === undefined) {
    if (startRef !== undefined) return refused('startRef', 'is only for a wind by tee time: give winds too');
    const day = askedDay(given);
    return day.ok ? { ok: true, value: { day: day.value } } : day;
  }
  if (startRef !== undefined && !refs.includes(startRef))
    return refused('startRef', `the course has no hole "${startRef}": start at one of ${refs.join(', ')}`);
  const trouble = windsTrouble(winds);
  if (trouble.length > 0)
    return { ok: false, problems: trouble.map(({ path, message }) => ({ path: `winds.${path}`, message })) };
  const order = playOrder(refs, startRef);
  const made = windByHole(given, { ...winds, winds: byTime(winds.list), assumed: false }, order);
  if (!made.ok)
    return {
      ok: false,
      problems: made.problems.map(({ path, message }) => ({
        path: path === 'winds' ? path : `day.${path}`,
        message,
      })),
    };
  const dayByHole: ReadonlyMap<string, HoleDay> = made.value;
  return { ok: true, value: { day: dayByHole.get(order[0]!)!.day, dayByHole } };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}

/** The day of a request; paths of its problems begin with `day`. */
export function askedDay(input: unknown): Result<Day> {
  const day = makeDay(input);
  if (day.ok) return day;
  return { ok: false, problems: day.problems.map(({ path, message }) => ({ path: `day.${path}`, message })) };
}
