import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { killRounds } from '../backend/store/kill-rounds.ts';

/* Kills a writing backend in many rounds: node tests/bench/kill-backend.ts [rounds] [seed] */
const [rounds, seed] = [Number(process.argv[2] ?? 100), Number(process.argv[3] ?? 1)];
const rng = xoroshiro128plus(seed);
const folder = mkdtempSync(join(tmpdir(), 'roundwright-kill-'));
const report = await killRounds(folder, rounds, seed, () => (rng.next() >>> 0) % 120);
rmSync(folder, { recursive: true, force: true });
console.log(
  `${report.rounds} kills, ${report.confirmed} confirmed writes, ${report.inFlightKept} kept that were under way, ${report.lost.length} lost`,
);
for (const line of report.lost) console.log(line);
process.exitCode = report.lost.length === 0 ? 0 : 1;
