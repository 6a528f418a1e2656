import type { FeatureCollection } from 'geojson';
import { checkStructure } from '../../core/course/check-structure.ts';
import type { Course } from '../../core/course/course.ts';
import { duplicateKeys } from '../../core/course/duplicate-keys.ts';
import { parseCourse } from '../../core/course/parse-course.ts';
import { parseJsonText } from '../../core/player/json-text.ts';
import type { Problem, Result } from '../../core/units/result.ts';

/** A map being drawn: any FeatureCollection, be it a course already or not. */
export function readDraft(text: string): Result<FeatureCollection> {
  const json = parseJsonText(text);
  if (!json.ok) return json;
  const twice = duplicateKeys(text);
  return twice.length > 0 ? { ok: false, problems: twice } : checkStructure(json.value);
}

/** One feature a line: a change of one thing is a change of one line. */
export function draftText({ features, ...members }: FeatureCollection): string {
  const head = Object.entries(members).map(([key, value]) => `${JSON.stringify(key)}:${JSON.stringify(value)}`);
  const lines = features.map(feature => JSON.stringify(feature)).join(',\n');
  return `{${[...head, `"features":[\n${lines}\n]`].join(',')}}\n`;
}

export type SoundPart = Readonly<{
  /** As far as it can be read; null while there is no hole. */
  course: Course | null;
  /** What keeps the whole from being a course. */
  problems: readonly Problem[];
}>;

/** Features fall away in so many rounds at most: each may leave others without their partner. */
const MOST_ROUNDS = 8;

/**
 * What can be said of a map being drawn: features with problems are left out, so that the rest can be looked at already.
 * Indexes and paths count in the map as it is.
 */
export function soundPart(draft: FeatureCollection, fileName: string): SoundPart {
  const whole = parseCourse(draft, fileName);
  if (whole.ok) return { course: whole.value, problems: [] };
  let rest = draft;
  let problems = whole.problems;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const blamed = new Set(problems.flatMap(({ path }) => /^features\[(\d+)\]/.exec(path)?.[1] ?? []).map(Number));
    if (blamed.size === 0) break;
    rest = { ...rest, features: rest.features.map((feature, i) => (blamed.has(i) ? BLANK : feature)) };
    const read = parseCourse(rest, fileName);
    if (read.ok) return { course: withoutBlanks(read.value), problems: whole.problems };
    problems = read.problems;
  }
  return { course: null, problems: whole.problems };
}

/** Keeps the place of a feature that is left out. */
const BLANK: FeatureCollection['features'][number] = {
  type: 'Feature',
  geometry: null as never,
  properties: {},
};

function withoutBlanks(course: Course): Course {
  const isBlank = (path: string) => course.source.features[Number(/^features\[(\d+)\]$/.exec(path)?.[1])] === BLANK;
  return { ...course, assumptions: course.assumptions.filter(({ path }) => !isBlank(path)) };
}
