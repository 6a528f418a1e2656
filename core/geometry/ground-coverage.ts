import type { Course } from '../course/course.ts';
import type { ElevationModel } from '../course/elevation-grid.ts';
import { sampleElevation } from './sample-elevation.ts';

/** Which holes have model heights at every corner of their line of play; only there can the model give the ground. */
export type GroundCoverage = Readonly<{ covered: readonly string[]; missing: readonly string[] }>;

export function groundCoverage({ holes }: Pick<Course, 'holes'>, model: ElevationModel): GroundCoverage {
  const isCovered = (hole: Course['holes'][number]) =>
    [hole.tee.position, ...hole.line, hole.basket.position].every(
      ([lon_deg, lat_deg]) => sampleElevation(model, lon_deg, lat_deg) !== undefined,
    );
  const refs = (wanted: boolean) => holes.filter(hole => isCovered(hole) === wanted).map(({ ref }) => ref);
  return { covered: refs(true), missing: refs(false) };
}
