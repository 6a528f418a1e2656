import type { PlayerFile } from '../../core/player/player-file.ts';
import { type OfferedThrow, roundFieldwork } from '../../core/review/round-fieldwork.ts';
import type { Result } from '../../core/units/result.ts';
import type { CourseBook } from './course-book.ts';
import type { PlayerBook } from './player-book.ts';
import { askedDay } from './ready-round.ts';
import type { ReviewDesk } from './review-desk.ts';
import type { RoundBook } from './round-book.ts';

type Books = Readonly<{ courses: CourseBook; players: PlayerBook; rounds: RoundBook; reviews: ReviewDesk }>;
type Offer = Readonly<{ playerId: string; file: PlayerFile; throws: readonly OfferedThrow[] }>;

/** A reviewed round's throws as fieldwork would hold them. */
export async function offeredThrows(
  { courses, players, rounds, reviews }: Books,
  roundId: string,
): Promise<Result<Offer>> {
  const entry = rounds.get(roundId);
  if (!entry.ok) return entry;
  const { courseId, playerId, round } = entry.value;
  const made = reviews.report(roundId);
  if (made === undefined)
    return refused('roundId', 'is not reviewed yet: the review says how sheltered each hole is. Review it first');
  const course = courses.get(courseId, round.layout);
  const file = players.get(playerId);
  const day = askedDay(round.realDay ?? round.day ?? {});
  if (!course.ok) return course;
  if (!file.ok) return file;
  if (!day.ok) return day;
  const maps = await courses.maps(courseId, round.layout);
  if (!maps.ok) return maps;
  const exposures = new Map(made.report.asPlanned.holes.map(hole => [hole.ref, hole.exposure]));
  const throws = roundFieldwork({
    round,
    maps: maps.value,
    player: file.value,
    day: day.value,
    exposureOf: ref => exposures.get(ref) ?? 'open',
    course: course.value.name,
  });
  return { ok: true, value: { playerId, file: file.value, throws } };
}

type Added = Readonly<{
  playerId: string;
  /** With the chosen throws added. */
  file: PlayerFile;
  throws: readonly Readonly<{ discId: string; hand: string }>[];
}>;

/** @returns the player with the chosen throws added, or which of them cannot be taken and why */
export async function withThrows(books: Books, roundId: string, keys: readonly string[]): Promise<Result<Added>> {
  const offer = await offeredThrows(books, roundId);
  if (!offer.ok) return offer;
  const { playerId, file, throws } = offer.value;
  const wanted = new Set(keys);
  const problems = [...wanted].flatMap(key => {
    const own = throws.find(t => t.key === key);
    if (own === undefined) return [{ path: 'keys', message: `the round has no throw ${key}` }];
    return own.session === null
      ? [{ path: 'keys', message: `throw ${key} is no measure of the disc: ${own.why}` }]
      : [];
  });
  if (problems.length > 0) return { ok: false, problems };
  const sessions = throws.flatMap(({ key, session }) => (wanted.has(key) && session !== null ? [session] : []));
  return {
    ok: true,
    value: {
      playerId,
      file: { ...file, sessions: [...file.sessions, ...sessions] },
      throws: sessions.flatMap(session => session.throws),
    },
  };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
