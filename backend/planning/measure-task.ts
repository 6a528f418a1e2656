import type { HoleMap } from '../../core/geometry/hole-map.ts';
import type { MeasuringQuestion } from '../../core/strategy/measuring-hole.ts';
import type { RoundSetting } from './plan-task.ts';

/** One hole's message to a worker: what would measuring each of these throws be worth on it. */
export type MeasureTask = Readonly<{
  map: HoleMap;
  round: RoundSetting;
  libraryKey: string;
  throwIndices: readonly number[];
  question: MeasuringQuestion;
}>;
