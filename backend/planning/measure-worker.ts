import { type DayLibraries, librariesOn, makeDayLibraries, windRooms } from '../../core/strategy/day-libraries.ts';
import { type HoleMeasuring, measuringHole } from '../../core/strategy/measuring-hole.ts';
import { planHoleInFull } from '../../core/strategy/plan-hole.ts';
import type { MeasureTask } from './measure-task.ts';
import { windKey } from './plan-task.ts';

/** The last round's only: one set of libraries is tens of megabytes. */
let kept: Readonly<{ libraryKey: string; windKey: string; libraries: DayLibraries }> | null = null;

/** Plans one hole in a worker thread and asks what measuring would be worth on it. */
export default function measureTask({ map, round, libraryKey, throwIndices, question }: MeasureTask): HoleMeasuring {
  const { player, day, limits, drop_m, seed } = round;
  const wind = windKey(round);
  if (kept?.libraryKey !== libraryKey) {
    kept = null; // let the old ones go before the new ones are built
    kept = { libraryKey, windKey: wind, libraries: makeDayLibraries(player, day, limits, drop_m, seed) };
  } else if (kept.windKey !== wind) {
    kept = { libraryKey, windKey: wind, libraries: librariesOn(kept.libraries, day, windRooms()) };
  }
  // The libraries may be those of a hole with the wind from elsewhere.
  const libraries = { ...kept.libraries, day };
  return measuringHole(planHoleInFull({ map, libraries }), throwIndices, question);
}
