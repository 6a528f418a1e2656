import type { Feature, FeatureCollection } from 'geojson';
import type { Course } from '../../core/course/course.ts';
import { applyRoles } from '../../core/course/import/apply-roles.ts';
import { nearCourse, surroundings_m } from '../../core/course/import/near-course.ts';
import type { RoleChoice } from '../../core/course/import/propose-roles.ts';
import { parseCourse } from '../../core/course/parse-course.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { nameCourse } from '../library/name-course.ts';
import { withoutHeights } from './heights.ts';
import { type LeftOut, leftOutCounter } from './osm-element.ts';
import { type ReadFile, readCourseFile } from './read-course-file.ts';

/** What the user says of a file that does not say it itself. */
export type ImportChoices = Readonly<{
  /** Another name for the course. */
  name?: string;
  /** Which of several courses, by the id the report gives. */
  course?: string;
  /** Heights of GPX and KML files: receivers are often 10 m out, so they are left out unless wanted. */
  takeHeights?: boolean;
  /** What each place and line is; one without a choice is left out. Absent: as proposed. */
  roles?: readonly (RoleChoice & Readonly<{ index: number }>)[];
}>;

/** A file turned into a course, or as far as it came. */
export type ConvertedCourse = Readonly<{
  read: ReadFile;
  /** The choice that stands for each item. */
  chosen: ReadonlyMap<number, RoleChoice>;
  mapped: readonly Readonly<{ item: string; to: string }>[];
  leftOut: readonly LeftOut[];
  assumptions: readonly Problem[];
  /** The course and its file, or what is still wrong. */
  course: Result<Readonly<{ course: Course; text: string }>>;
}>;

/** @returns problems only when the file itself cannot be read; what is wrong with the course in it stands in `course` */
export function convertCourse(
  bytes: Uint8Array,
  fileName: string,
  choices: ImportChoices = {},
): Result<ConvertedCourse> {
  const file = readCourseFile(bytes);
  if (!file.ok) return file;
  const read = file.value;
  const proposed = read.items.map(({ index, proposal: { sure: _, why: __, ...choice } }) => ({ ...choice, index }));
  const chosen = new Map((choices.roles ?? proposed).map(({ index, ...choice }) => [index, choice]));
  const leftOut = leftOutCounter();
  for (const { what, count, why } of read.leftOut) leftOut.add(what, why, count);
  const assumptions = [...read.assumptions];
  const answer = (
    course: ConvertedCourse['course'],
    mapped: ConvertedCourse['mapped'] = [],
  ): Result<ConvertedCourse> => ({
    ok: true,
    value: { read, chosen, mapped, leftOut: leftOut.lines(), assumptions, course },
  });

  const part = chosenPart(read, choices.course, leftOut);
  if (!part.ok) return answer(part);
  const applied = applyRoles(part.value.features, read.items, chosen);
  if (!applied.ok) return answer(applied);
  const { features, mapped } = applied.value;
  assumptions.push(...applied.value.assumptions);
  leftOut.add('unused places', 'you left them out, or what they are is not known', read.items.length - mapped.length);
  const named = withName(read, part.value.name, features, fileName, choices.name);
  const collection = heightsAsWanted(read, named, choices.takeHeights === true, leftOut);
  const isAsItCame = read.text !== undefined && choices.name === undefined;
  const course = parseCourse(collection, fileName);
  if (!course.ok) return answer({ ok: false, problems: readable(course.problems, read, collection.features) }, mapped);
  assumptions.push(...readable(course.value.assumptions, read, collection.features));
  const text = isAsItCame ? read.text! : `${JSON.stringify(collection, null, 1)}\n`;
  return answer({ ok: true, value: { course: course.value, text } }, mapped);
}

/** Of an extract, the chosen course and what lies near it; other files are taken whole. */
function chosenPart(
  read: ReadFile,
  wanted: string | undefined,
  leftOut: ReturnType<typeof leftOutCounter>,
): Result<Readonly<{ features: readonly Feature[]; name?: string }>> {
  if (read.kind !== 'osm' && read.kind !== 'overpass') return { ok: true, value: { features: read.features } };
  const { courses, features, own: only } = read;
  const chosen = courses.find(({ id }) => id === wanted);
  if (courses.length > 0 && chosen === undefined) {
    const list = courses.map(({ id, name, holes }) => `${name === '' ? id : name} (${holes} holes)`).join(', ');
    return {
      ok: false,
      problems: [{ path: 'course', message: `the file holds ${courses.length} courses: choose one of ${list}` }],
    };
  }
  const own = new Set(chosen?.features ?? only);
  const isNear = nearCourse(features, [...own]);
  const isOther = (feature: Feature, index: number) =>
    feature.properties?.disc_golf !== undefined
      ? !own.has(index)
      : feature.properties?.leisure === 'disc_golf_course' && chosen !== undefined && feature.id !== chosen.id;
  const others = features.filter(isOther).length;
  leftOut.add('things of other courses', 'not the course you chose', others);
  const kept = features.filter((feature, index) => isNear[index] && !isOther(feature, index));
  leftOut.add(
    'other things',
    `farther than ${surroundings_m} m from every tee, basket and hole`,
    features.length - others - kept.length,
  );
  return {
    ok: true,
    value: { features: kept, ...(chosen === undefined || chosen.name === '' ? {} : { name: chosen.name }) },
  };
}

function withName(
  read: ReadFile,
  courseName: string | undefined,
  features: readonly Feature[],
  fileName: string,
  wanted: string | undefined,
): FeatureCollection {
  const collection = { ...read.members, type: 'FeatureCollection', features: [...features] } as FeatureCollection;
  if (wanted !== undefined) return nameCourse(collection, wanted);
  const isNamed = read.kind === 'geojson' && read.items.length === 0;
  if (isNamed) return collection;
  const name =
    courseName ??
    read.name ??
    (fileName
      .replace(/^.*[\\/]/, '')
      .replace(/\.[^.]{1,8}$/, '')
      .trim() ||
      'Course');
  return { ...collection, name: (collection as { name?: string }).name ?? name } as FeatureCollection;
}

function heightsAsWanted(
  read: ReadFile,
  collection: FeatureCollection,
  isWanted: boolean,
  leftOut: ReturnType<typeof leftOutCounter>,
): FeatureCollection {
  if (read.heightsFrom === null) return collection;
  // Said beside the heights: they are measured from different levels in different formats.
  if (isWanted) return { ...collection, heightDatum: read.heightsFrom } as FeatureCollection;
  const { features, count } = withoutHeights(collection.features);
  leftOut.add('heights', 'receivers are often 10 m out: take them in if they were measured well', count);
  return { ...collection, features };
}

/** Paths count features; where the user's file has no such list, they name the thing itself. */
function readable(problems: readonly Problem[], { kind }: ReadFile, features: readonly Feature[]): Problem[] {
  if (kind === 'geojson') return [...problems];
  return problems.map(({ path, message }) => ({
    path: path.replace(/^features\[(\d+)\]/, (whole, index: string) => calledIn(features[Number(index)]) ?? whole),
    message: message.replace(
      /features\[(\d+)\]/g,
      (whole, index: string) => calledIn(features[Number(index)]) ?? whole,
    ),
  }));
}

function calledIn(feature: Feature | undefined): string | undefined {
  const name: unknown = feature?.properties?.['@name'];
  if (typeof name === 'string') return `"${name}"`;
  return feature?.id === undefined ? undefined : String(feature.id);
}
