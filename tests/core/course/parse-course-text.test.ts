import { expect, it } from 'vitest';
import { parseCourseText } from '../../../core/course/parse-course-text.ts';
import { collection, hole } from './course-file.ts';

const problem = (text: string): string => {
  const result = parseCourseText(text, 'test.geojson');
  if (result.ok) throw new Error('the text was taken, but it should not have been');
  return result.problems.map(({ path, message }) => `${path}: ${message}`).join('\n');
};

it('reads a file, with a byte order mark too', () => {
  const text = JSON.stringify(collection(...hole('1')));
  for (const file of [text, `\uFEFF${text}`, JSON.stringify(JSON.parse(text), null, 2).replaceAll('\n', '\r\n')]) {
    const result = parseCourseText(file, 'maps/far-meadow.geojson');
    expect(result.ok && result.value.name).toBe('far-meadow');
  }
});

it.each([
  ['', 'line 1, column 1: the file is empty: a course file is one GeoJSON FeatureCollection'],
  [
    '{\n "type": "FeatureCollection",\n "features": [\n  {},\n ]\n}',
    'line 5, column 2: not valid JSON: a comma stands before ]: delete it',
  ],
  ['[1, ]', 'line 1, column 5: not valid JSON: a comma stands before ]: delete it'],
  ['{\n "features": [NaN]}', 'line 2, column 15: not valid JSON: NaN is no JSON number: write a finite number'],
  ["{\n 'type': 1}", 'line 2, column 2: not valid JSON: quotes must be double: "'],
  ['{ // note\n "a": 1}', 'line 1, column 3: not valid JSON: comments are not allowed: delete it'],
  [
    '{"type": "FeatureCollection", "features": [',
    'line 1, column 44: not valid JSON: the text ends too early: a closing bracket, brace or quote is missing',
  ],
  [
    '{"a": [1}',
    'line 1, column 9: not valid JSON: } is not expected here: a value is missing before it, or a bracket is of the wrong kind',
  ],
  [
    '{"a" 1}',
    'line 1, column 6: not valid JSON: "1}" is not expected here: a comma, colon, quote or bracket may be missing before it',
  ],
])('says where %j is not JSON', (text, want) => expect(problem(text)).toBe(want));

it('says so when the text cannot be JSON in other ways, never throwing', () => {
  for (const text of ['{"a":"\n"}', '"', '{"a":1} x', '\u0000', '[', '{"\\u00"}', 'null'])
    expect(problem(text)).toMatch(/^(line \d+, column \d+|type): /);
});

it('finds a member written twice, which JSON parsers drop without a word', () => {
  const text =
    '{"type": "FeatureCollection", "features": [\n{"type": "Feature", "properties": {"height": "3", "note": "{\\"height\\": 1}",\n"height": 4}, "geometry": null}]}';
  expect(problem(text)).toBe('line 3, column 1: "height" stands twice in one object: keep one of the two');
});
