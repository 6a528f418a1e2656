import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFaultAt } from '../../../core/course/json-fault.ts';
import { oversizedJson } from '../../../core/course/json-size.ts';

const parses = (text: string) => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe('jsonFaultAt', () => {
  it.each([
    ['{"a":1,}', 7],
    ['[1 2]', 3],
    ['{"a":NaN}', 5],
    ['{"a":1', 6],
    ['', 0],
    ['[1]]', 3],
    ['{a:1}', 1],
    ['"x\ny"', 0],
    ['[01]', 2],
    ['{"a" 1}', 5],
    ['[}', 1],
  ])('%j is wrong at %i', (text, at) => expect(jsonFaultAt(text)).toBe(at));

  it('agrees with the engine on what is JSON', () => {
    const text = fc.oneof(
      fc.json(),
      fc
        .tuple(fc.json(), fc.nat(60), fc.constantFrom(',', '}', ']', '"', '\\', '0', 'x', ' ', ':'))
        .map(([json, at, sign]) => json.slice(0, at) + sign + json.slice(at)),
      fc.tuple(fc.json(), fc.nat(60)).map(([json, at]) => json.slice(0, at)),
    );
    fc.assert(
      fc.property(text, json => (jsonFaultAt(json) === undefined) === parses(json)),
      { numRuns: 2000, seed: 3 },
    );
  });
});

describe('oversizedJson', () => {
  it('lets a map pass and refuses what is too deep, too many or too long', () => {
    expect(oversizedJson('{"type":"FeatureCollection","features":[{"a":[[[[1,2]]]]}]}')).toBeUndefined();
    expect(oversizedJson(`${'['.repeat(60)}${']'.repeat(60)}`)).toBeUndefined();
    expect(oversizedJson('['.repeat(61))).toMatchObject({ path: 'line 1, column 61' });
    expect(oversizedJson(`[${'[],'.repeat(500_000)}]`)?.message).toContain('cut it down');
    expect(oversizedJson(`["${'x'.repeat(1_100_000)}"]`)).toMatchObject({ path: 'line 1, column 2' });
    // Brackets inside text are text.
    expect(oversizedJson(JSON.stringify('['.repeat(1000)))).toBeUndefined();
  });
});
