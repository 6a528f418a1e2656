import type { Course, CourseObject } from '../../../core/course/course.ts';
import type { CourseGround, ElevationModel } from '../../../core/course/elevation-grid.ts';
import { groundCoverage } from '../../../core/geometry/ground-coverage.ts';
import type { Result } from '../../../core/units/result.ts';
import { putGround, removeGround } from '../../library/ground-book.ts';
import { readGround } from '../../terrain/read-ground.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { Ground, terrain } from '../contract/terrain.ts';
import type { Handlers } from '../dispatch.ts';

export function terrainHandlers(app: AppContext): Pick<Handlers, keyof typeof terrain> {
  const { courses, store } = app;
  return {
    getTerrain: ({ courseId }) => {
      const course = courses.get(courseId);
      if (!course.ok) return course;
      const { ground } = course.value;
      return { ok: true, value: ground === undefined ? null : groundOf(course.value, ground) };
    },
    addTerrain: async ({ courseId, terrain, surface }) => {
      const course = courses.get(courseId);
      if (!course.ok) return course;
      const ground = await readGround(course.value, { terrain, ...(surface !== undefined && { surface }) });
      if (!ground.ok) return ground;
      // The course may have been deleted while the files were read.
      const now = courses.get(courseId);
      if (!now.ok) return now;
      const undo = store.changes.change(`Add terrain to ${now.value.name}`, editor =>
        putGround(editor, courseId, ground.value),
      );
      sayChanged(app, ['grounds']);
      const kept = courses.get(courseId);
      if (!kept.ok) return kept;
      return { ok: true, value: { undo, ground: groundOf(kept.value, kept.value.ground ?? ground.value) } };
    },
    removeTerrain: ({ courseId }) => {
      const course = courses.get(courseId);
      if (!course.ok) return course;
      if (course.value.ground === undefined) return refused('courseId', 'has no terrain beside it');
      const undo = store.changes.change(`Remove terrain from ${course.value.name}`, editor =>
        removeGround(editor, courseId),
      );
      sayChanged(app, ['grounds']);
      return { ok: true, value: { undo } };
    },
  };
}

/** A model coarser than this says nothing of a hole of 60 to 120 m. */
const COARSE_m = 10;

function groundOf(course: Course, ground: CourseGround): Ground {
  const { terrain, surface } = ground;
  const { covered, missing } = groundCoverage(course, terrain);
  const heights = terrain.height_m.filter(height_m => !Number.isNaN(height_m));
  const treeHeights = course.objects.filter(isFromSurface(course)).length;
  return {
    terrain: factsOf(terrain),
    ...(surface !== undefined && { surface: factsOf(surface) }),
    lowest_m: heights.reduce((low, height_m) => Math.min(low, height_m), Number.POSITIVE_INFINITY),
    highest_m: heights.reduce((high, height_m) => Math.max(high, height_m), Number.NEGATIVE_INFINITY),
    covered: [...covered],
    missing: [...missing],
    treeHeights,
    assumptions: [
      ...(terrain.resolution_m > COARSE_m
        ? [`A height every ${Math.round(terrain.resolution_m)} m only: short slopes are lost in it.`]
        : []),
      ...(terrain.datum.includes('does not say')
        ? [
            'The file does not say what its heights count from: slopes are right all the same, absolute heights may not be.',
          ]
        : []),
    ],
  };
}

const isFromSurface =
  ({ assumptions }: Course) =>
  ({ path }: CourseObject): boolean =>
    assumptions.some(note => note.path === path && note.message.includes('read from the surface model'));

function factsOf({ source, crs, resolution_m, datum }: ElevationModel): Ground['terrain'] {
  return { source, crs, resolution_m, datum };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
