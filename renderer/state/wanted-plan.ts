import type { Settings } from '../../backend/api/contract/settings.ts';
import type { DayInput } from '../../core/air/day-input.ts';
import type { Wanted } from './plan-feed.ts';
import { playedLayout } from './played-layout.ts';

/** The plan the settings ask for; null until a course and a player are chosen. */
export function wantedPlan(settings: Settings, day: DayInput = settings.day): Wanted | null {
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
    ...(attitude === 'push' && target !== null && { target }),
  };
}
