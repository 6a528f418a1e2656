import type { Settings } from '../../backend/api/contract/settings.ts';
import type { DayInput } from '../../core/air/day-input.ts';
import type { Wanted } from './plan-feed.ts';
import { playedLayout } from './played-layout.ts';

/**
 * The plan the settings ask for; null until a course and a player are chosen.
 * @param refs - the holes as they are played; none while the course is not read
 */
export function wantedPlan(
  settings: Settings,
  refs: readonly string[] = [],
  day: DayInput = settings.day,
): Wanted | null {
  const { courseId, playerId, attitude, target, limits } = settings;
  if (courseId === null || playerId === null) return null;
  const layout = playedLayout(settings, courseId);
  const played = layout === undefined ? {} : { layout };
  return {
    courseId,
    playerId,
    day,
    attitude,
    limits,
    ...played,
    ...windsWanted(settings, refs),
    ...(attitude === 'push' && target !== null && { target }),
  };
}

type Winds = Pick<Settings, 'winds' | 'isByTeeTime' | 'startRefs' | 'courseId'>;

/** The winds by tee time and where the round starts; nothing while one wind blows all round. */
function windsWanted(settings: Winds, refs: readonly string[]): Pick<Wanted, 'winds' | 'startRef'> {
  const { winds, isByTeeTime } = settings;
  if (!isByTeeTime || winds === null) return {};
  const startRef = startOf(settings, refs);
  return { winds, ...(startRef !== undefined && startRef !== refs[0] && { startRef }) };
}

/** The hole thrown off first: the chosen one where the course, as it is played now, has it. */
export function startOf(
  { startRefs, courseId }: Pick<Settings, 'startRefs' | 'courseId'>,
  refs: readonly string[],
): string | undefined {
  const chosen = courseId === null ? undefined : startRefs[courseId];
  return chosen !== undefined && refs.includes(chosen) ? chosen : refs[0];
}
