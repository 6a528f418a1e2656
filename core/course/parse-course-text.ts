import { getIssues } from '@placemarkio/check-geojson';
import type { Problem, Result } from '../units/result.ts';
import type { Course } from './course.ts';
import { duplicateKeys } from './duplicate-keys.ts';
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
  let input: unknown;
  try {
    input = JSON.parse(json);
  } catch (error) {
    return { ok: false, problems: [syntaxProblem(json, error instanceof Error ? error.message : String(error))] };
  }
  const twice = duplicateKeys(json);
  return twice.length > 0 ? { ok: false, problems: twice } : parseCourse(input, fileName);
}

/** The engines word their messages differently and only some say where; check-geojson's parser always counts line and column. */
function syntaxProblem(json: string, engineMessage: string): Problem {
  const issue = getIssues(json)[0]?.message ?? '';
  const place = /\((\d+):(\d+)\)\s*$/.exec(issue);
  if (place === null) {
    const offset = /position (\d+)/.exec(engineMessage)?.[1];
    // Neither parser got as far as a token to complain about: the text just stops.
    if (offset === undefined)
      return { path: lineAndColumn(json, json.trimEnd().length), message: `not valid JSON: ${tooShort}` };
    return { path: lineAndColumn(json, Number(offset)), message: `not valid JSON: ${engineMessage}` };
  }
  const [line, column] = [Number(place[1]), Number(place[2])];
  return { path: `line ${line}, column ${column}`, message: `not valid JSON: ${advice(json, line, column)}` };
}

const tooShort = 'the text ends too early: a closing bracket, brace or quote is missing';

function advice(json: string, line: number, column: number): string {
  const lines = json.split('\n');
  const rest = (lines[line - 1] ?? '').slice(column - 1);
  const before = [...lines.slice(0, line - 1), (lines[line - 1] ?? '').slice(0, column - 1)].join('\n').trimEnd();
  if (rest.trim() === '' && lines.slice(line).join('').trim() === '') return tooShort;
  if (/^[\]}]/.test(rest) && before.endsWith(',')) return `a comma stands before ${rest[0]}: delete it`;
  if (/^[\]}]/.test(rest))
    return `${rest[0]} is not expected here: a value is missing before it, or a bracket is of the wrong kind`;
  if (/^-?(?:NaN|Infinity)/.test(rest)) return `${/^-?\w+/.exec(rest)![0]} is no JSON number: write a finite number`;
  if (rest.startsWith("'")) return 'quotes must be double: "';
  if (/^\/[/*]/.test(rest)) return 'comments are not allowed: delete it';
  return `${JSON.stringify(rest.slice(0, 12))} is not expected here: a comma, colon, quote or bracket may be missing before it`;
}
