import type { Problem, Result } from '../units/result.ts';
import type { Course } from './course.ts';
import { duplicateKeys } from './duplicate-keys.ts';
import { jsonFaultAt } from './json-fault.ts';
import { oversizedJson } from './json-size.ts';
import { lineAndColumn } from './line-and-column.ts';
import { parseCourse } from './parse-course.ts';

/**
 * A course from the text of a GeoJSON file.
 * @param text - the file; a byte order mark at its start is let pass
 * @param fileName - names the course when the file does not
 * @returns the course, or all problems; for text that is not JSON the path is `line 12, column 5`
 */
export function parseCourseText(text: string, fileName: string): Result<Course> {
  const json = text.replace(/^\uFEFF/, '');
  if (json.trim() === '') {
    return {
      ok: false,
      problems: [
        { path: 'line 1, column 1', message: 'the file is empty: a course file is one GeoJSON FeatureCollection' },
      ],
    };
  }
  const large = oversizedJson(json);
  if (large !== undefined) return { ok: false, problems: [large] };
  let input: unknown;
  try {
    input = JSON.parse(json);
  } catch {
    return { ok: false, problems: [jsonSyntaxProblem(json)] };
  }
  const twice = duplicateKeys(json);
  return twice.length > 0 ? { ok: false, problems: twice } : parseCourse(input, fileName);
}

/** Where text that `JSON.parse` refuses is wrong, and how to mend it: the engine words it differently and only at times says where. */
export function jsonSyntaxProblem(json: string): Problem {
  const at = jsonFaultAt(json) ?? json.length;
  // What just stops is wrong where its last sign stands, not after the blanks that follow.
  const path = lineAndColumn(json, at === json.length ? json.trimEnd().length : at);
  return { path, message: `not valid JSON: ${advice(json, at)}` };
}

const tooShort = 'the text ends too early: a closing bracket, brace or quote is missing';

function advice(json: string, at: number): string {
  const rest = json.slice(at, at + 200);
  const before = json.slice(Math.max(0, at - 10_000), at).trimEnd();
  if (rest.trim() === '') return tooShort;
  if (/^[\]}]/.test(rest) && before.endsWith(',')) return `a comma stands before ${rest[0]}: delete it`;
  if (/^[\]}]/.test(rest))
    return `${rest[0]} is not expected here: a value is missing before it, or a bracket is of the wrong kind`;
  if (/^-?(?:NaN|Infinity)/.test(rest)) return `${/^-?\w+/.exec(rest)![0]} is no JSON number: write a finite number`;
  if (rest.startsWith("'")) return 'quotes must be double: "';
  if (/^\/[/*]/.test(rest)) return 'comments are not allowed: delete it';
  return `${JSON.stringify(rest.slice(0, 12))} is not expected here: a comma, colon, quote or bracket may be missing before it`;
}
