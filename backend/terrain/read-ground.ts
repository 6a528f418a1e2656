import type { Course } from '../../core/course/course.ts';
import type { CourseGround, ElevationModel } from '../../core/course/elevation-grid.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { courseBox } from './course-box.ts';
import { cutWindow } from './cut-window.ts';
import { openElevationFile } from './open-elevation-file.ts';

export type GroundFiles = Readonly<{ /** Path of the elevation model. */ terrain: string; surface?: string }>;

/**
 * Cuts what lies under a course out of an elevation model, and out of a surface model where one is given too.
 * @returns the ground, or problems with paths `terrain` and `surface`
 */
export async function readGround(course: Course, { terrain, surface }: GroundFiles): Promise<Result<CourseGround>> {
  const [ground, tops] = await Promise.all([
    readModel(course, terrain, 'terrain'),
    surface === undefined ? undefined : readModel(course, surface, 'surface'),
  ]);
  const problems = [ground, tops].flatMap(part => (part === undefined || part.ok ? [] : part.problems));
  if (!ground.ok || tops?.ok === false) return { ok: false, problems };
  if (tops === undefined) return { ok: true, value: { terrain: ground.value } };
  const mixed = mixedDatums(ground.value, tops.value);
  if (mixed !== undefined) return { ok: false, problems: [mixed] };
  return { ok: true, value: { terrain: ground.value, surface: tops.value } };
}

async function readModel(course: Course, path: string, what: 'terrain' | 'surface'): Promise<Result<ElevationModel>> {
  const opened = await openElevationFile(path);
  const under = (problems: readonly Problem[]): Result<never> => ({
    ok: false,
    problems: problems.map(({ message }) => ({ path: what, message })),
  });
  if (!opened.ok) return under(opened.problems);
  try {
    const window = await cutWindow(opened.value, courseBox(course));
    return window.ok ? window : under(window.problems);
  } finally {
    await opened.value.close();
  }
}

/** Surface less terrain means nothing when the two count from different places. */
function mixedDatums(terrain: ElevationModel, surface: ElevationModel): Problem | undefined {
  const known = (datum: string) => !datum.includes('does not say');
  if (terrain.datum === surface.datum || !known(terrain.datum) || !known(surface.datum)) return undefined;
  return {
    path: 'surface',
    message: `counts its heights otherwise than the terrain (${surface.datum}; terrain ${terrain.datum}): take both from the same survey`,
  };
}
