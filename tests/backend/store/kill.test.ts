import { expect, it } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { killRounds } from './kill-rounds.ts';

// Few rounds here; tests/bench/kill-backend.ts runs a hundred.
it('loses nothing confirmed and spoils nothing when it is killed while it writes', async () => {
  const report = await killRounds(temporaryFolder(), 4, 11, round => [0, 7, 31, 90][round]!);
  expect(report.lost).toEqual([]);
  expect(report.confirmed).toBeGreaterThanOrEqual(4);
});
