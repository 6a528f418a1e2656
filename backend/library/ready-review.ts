import { checkRound } from '../../core/review/check-round.ts';
import type { Result } from '../../core/units/result.ts';
import { type ReviewRequest, refuseReview } from '../planning/review-round.ts';
import type { CourseBook } from './course-book.ts';
import type { PlayerBook } from './player-book.ts';
import { askedDay } from './ready-round.ts';
import { isInTwoWinds } from './review-desk.ts';
import type { RoundBook } from './round-book.ts';

/** The player's plans are made with this seed. */
const SEED = 1;

type Books = Readonly<{ courses: CourseBook; players: PlayerBook; rounds: RoundBook }>;

/** @returns a kept round with all its review takes, or what does not fit together any more */
export async function readyReview(
  { courses, players, rounds }: Books,
  roundId: string,
): Promise<Result<ReviewRequest>> {
  const entry = rounds.get(roundId);
  if (!entry.ok) return entry;
  const { courseId, playerId, round } = entry.value;
  const course = courses.get(courseId, round.layout);
  const file = players.get(playerId);
  const day = askedDay(round.day ?? {});
  const realDay = isInTwoWinds(round) ? askedDay(round.realDay) : null;
  if (!course.ok) return course;
  if (!file.ok) return file;
  if (!day.ok) return day;
  if (realDay?.ok === false) return realDay;
  const [player, maps] = await Promise.all([players.fitted(playerId), courses.maps(courseId, round.layout)]);
  if (!player.ok) return player;
  if (!maps.ok) return maps;
  const problems = [...checkRound(round, maps.value, file.value), ...refuseReview(player.value, round)];
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: {
      course: course.value.name,
      maps: maps.value,
      player: player.value,
      round,
      day: day.value,
      realDay: realDay?.value ?? null,
      seed: SEED,
    },
  };
}
