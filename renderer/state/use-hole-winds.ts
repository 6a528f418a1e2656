import { useMemo } from 'react';
import { type HoleWind, holeWinds, playOrder } from '../../core/air/round-winds.ts';
import { useCourse } from './library.ts';
import { usePlanner } from './planner.tsx';
import { startOf } from './wanted-plan.ts';

export type HoleWinds = ReadonlyMap<string, HoleWind>;

/** Each hole's own wind, by ref in the order of play, where winds are given by tee time; null with one wind all round. */
export function useHoleWinds(): HoleWinds | null {
  const { settings } = usePlanner();
  const { winds, isByTeeTime, startRefs, courseId } = settings;
  const holes = useCourse(courseId).data?.holes;
  return useMemo(() => {
    if (!isByTeeTime || winds === null || holes === undefined) return null;
    const refs = holes.map(hole => hole.ref);
    const order = playOrder(refs, startOf({ startRefs, courseId }, refs));
    return new Map(holeWinds(winds, order).map(own => [own.ref, own]));
  }, [winds, isByTeeTime, startRefs, courseId, holes]);
}
