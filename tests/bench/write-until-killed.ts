import { writeSync } from 'node:fs';
import { openBackend } from '../../backend/api/open-backend.ts';
import { randomWrite, type Target } from '../backend/store/random-writes.ts';
import { taken } from '../backend/taken.ts';

/*
 * Writes to a library without end and says each write that was confirmed on standard output, until it is killed.
 * Arguments: folder, seed, number of the first write, target as JSON.
 */
const [, , folder, seed, first, target] = process.argv;
const { call } = taken(openBackend({ folder: folder! }));
for (let k = Number(first); ; k++) {
  const { method, input } = randomWrite(Number(seed), k, JSON.parse(target!) as Target);
  taken(await call(method, input));
  // Written in one piece before the next write begins; nothing waits in a buffer of this process.
  writeSync(1, `${k}\n`);
}
