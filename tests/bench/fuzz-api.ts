import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBackend } from '../../backend/api/open-backend.ts';
import { FUZZED, fuzzMethod, knownOf, quickDesk } from '../backend/api/fuzz-method.ts';
import { taken } from '../backend/taken.ts';

/* Random input to every method: node tests/bench/fuzz-api.ts [inputs a method] [seed] [method] */
const [runs, seed, only] = [Number(process.argv[2] ?? 10_000), Number(process.argv[3] ?? 1), process.argv[4]];
let failed = 0;
for (const method of FUZZED.filter(method => only === undefined || method === only)) {
  const folder = mkdtempSync(join(tmpdir(), 'roundwright-fuzz-'));
  const faults: unknown[] = [];
  const backend = taken(openBackend({ folder, desk: quickDesk(), onFault: (_, fault) => faults.push(fault) }));
  const began = performance.now();
  const { wrong, good } = await fuzzMethod(backend, faults, await knownOf(backend), method, runs, seed);
  console.log(
    `${method}: ${runs} inputs, ${good} answered, ${wrong.length} wrong, ${((performance.now() - began) / 1000).toFixed(1)} s`,
  );
  for (const line of wrong) console.log(`  ${line}`);
  failed += wrong.length;
  await backend.close();
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = failed === 0 ? 0 : 1;
