import { fuzzImport } from '../backend/import/fuzz-import.ts';

/* Changed files of every kind into the importer: node tests/bench/fuzz-import.ts [inputs] [seed] */
const [inputs, seed] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 1)];
const BATCH = 5000;
let [taken, failed, done] = [0, 0, 0];
const kinds = new Map<string, number>();
const began = performance.now();
for (let batch = 0; done < inputs; batch++) {
  const result = fuzzImport(Math.min(BATCH, inputs - done), seed * 10_000 + batch);
  done += Math.min(BATCH, inputs - done);
  taken += result.taken;
  failed += result.wrong.length;
  for (const [kind, count] of result.kinds) kinds.set(kind, (kinds.get(kind) ?? 0) + count);
  for (const line of result.wrong) console.log(`  ${line}`);
}
const time_s = (performance.now() - began) / 1000;
const peak_MB = process.resourceUsage().maxRSS / 1000;
console.log(`${done} inputs, ${taken} taken, ${failed} wrong, ${time_s.toFixed(0)} s, peak ${peak_MB.toFixed(0)} MB`);
console.log([...kinds].map(([kind, count]) => `${kind} ${count}`).join(', '));
process.exitCode = failed === 0 ? 0 : 1;
