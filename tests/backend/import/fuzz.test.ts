import { describe, expect, it } from 'vitest';
import { COURSE_KINDS } from '../../../backend/import/course-kind.ts';
import { fuzzImport } from './fuzz-import.ts';

// 2,000 inputs here; tests/bench/fuzz-import.ts gives it a hundred thousand.
describe('any change to any good file is a course or a list of problems', () => {
  it('2,000 inputs', () => {
    const { wrong, taken, kinds } = fuzzImport(2000, 2026);
    expect(wrong).toEqual([]);
    // The changes must neither all be noticed at once nor all go unnoticed.
    expect(taken).toBeGreaterThan(50);
    expect(taken).toBeLessThan(1900);
    for (const kind of COURSE_KINDS) expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(15);
  }, 120_000);
});
