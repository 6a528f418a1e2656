import { describe, expect, it } from 'vitest';
import { FUZZED, fuzzMethod, knownOf, quickDesk } from './fuzz-method.ts';
import { openTestBackend } from './open-test-backend.ts';

// 300 inputs a method here; tests/bench/fuzz-api.ts gives each ten thousand.
describe('any input to any method is a value or a list of problems', () => {
  it.each(FUZZED.map((method, i) => ({ method, seed: i + 1 })))('$method', async ({ method, seed }) => {
    const { backend, faults } = openTestBackend({ desk: quickDesk() });
    const known = await knownOf(backend);
    const { wrong } = await fuzzMethod(backend, faults, known, method, 300, seed);
    expect(wrong).toEqual([]);
    expect(await backend.call('getSettings', {})).toMatchObject({ ok: true });
  });
});
