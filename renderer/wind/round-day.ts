import type { Settings } from '../../backend/api/contract/settings.ts';
import type { DayInput } from '../../core/air/day-input.ts';
import { holeWinds, playOrder } from '../../core/air/round-winds.ts';
import { startOf } from '../state/wanted-plan.ts';
import { withWind } from './day-words.ts';

/**
 * The day of a round as one wind, for what holds no more than one: with winds by tee time the one in the middle of the round.
 * @param refs - the holes as they are played
 */
export function roundDay(settings: Settings, refs: readonly string[]): DayInput {
  const { day, winds, isByTeeTime } = settings;
  if (!isByTeeTime || winds === null || refs.length === 0) return day;
  const inOrder = holeWinds(winds, playOrder(refs, startOf(settings, refs)));
  const { speed_mps, from_deg, gust_mps = null } = inOrder[Math.floor((inOrder.length - 1) / 2)]!.wind;
  return withWind(day, { speed_mps, from_deg, gust_mps });
}
