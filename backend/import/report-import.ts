import type { Feature } from 'geojson';
import { rolesOf, shapeOf } from '../../core/course/import/role.ts';
import { positionsOf } from '../../core/course/positions.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { checkCourse } from '../api/check-course.ts';
import type { ConvertedCourse, ImportChoices } from './convert-course.ts';
import { KIND_WORDS } from './course-kind.ts';
import { hasHeights } from './heights.ts';
import type { ImportReport } from './import-report.ts';

/** Sums up an import, or the problems that stopped it. */
export function reportImport(
  fileName: string,
  converted: Result<ConvertedCourse>,
  choices: ImportChoices = {},
): ImportReport {
  if (!converted.ok) return refused(fileName, converted.problems);
  const { read, chosen, mapped, leftOut, assumptions, course } = converted.value;
  const summary = course.ok ? checkCourse({ ok: true, value: course.value.course }) : undefined;
  return {
    schema: 'roundwright/convert@1',
    ok: course.ok,
    file: fileName,
    kind: read.kind,
    kindWords: KIND_WORDS[read.kind],
    encoding: read.encoding,
    course: summary?.course ?? null,
    problems: course.ok ? [] : [...course.problems],
    read: countsOf(read.features),
    items: read.items.map(item => ({
      ...item,
      place: placeOf(read.features[item.index]!),
      roles: [...rolesOf(item.shape)],
      proposal: { ...item.proposal },
      chosen: { ...(chosen.get(item.index) ?? { role: 'leave' }) },
    })),
    courses: read.courses.map(({ id, name, holes }) => ({ id, name, holes })),
    chosenCourse: read.courses.some(({ id }) => id === choices.course) ? choices.course! : null,
    hasHeights: read.heightsFrom !== null && hasHeights(read.features),
    mapped: [...mapped],
    leftOut: [...leftOut],
    assumptions: [...assumptions],
    counts: summary?.counts ?? [],
    notMapped: summary?.notMapped ?? [],
  };
}

function refused(file: string, problems: readonly Problem[]): ImportReport {
  return {
    schema: 'roundwright/convert@1',
    ok: false,
    file,
    kind: null,
    kindWords: null,
    encoding: null,
    course: null,
    problems: [...problems],
    read: [],
    items: [],
    courses: [],
    chosenCourse: null,
    hasHeights: false,
    mapped: [],
    leftOut: [],
    assumptions: [],
    counts: [],
    notMapped: [],
  };
}

function placeOf({ geometry }: Feature): [number, number] {
  const part = geometry.type === 'GeometryCollection' ? geometry.geometries[0] : geometry;
  const [lon = 0, lat = 0] = part === undefined ? [] : (positionsOf(part)[0] ?? []);
  return [lon, lat];
}

const SHAPES = { point: 'points', line: 'lines', area: 'areas', mixed: 'things of several parts' } as const;
const FROM: Readonly<Record<string, string>> = { waypoint: 'waypoints', route: 'routes', track: 'tracks' };

function countsOf(features: readonly Feature[]): ImportReport['read'] {
  const words = features.map(
    ({ geometry, properties }) => FROM[String(properties?.['@from'])] ?? SHAPES[shapeOf(geometry)],
  );
  return [...Map.groupBy(words, word => word)].map(([what, group]) => ({ what, count: group.length }));
}
