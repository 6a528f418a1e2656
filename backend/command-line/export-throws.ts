import type { PlayerFile } from '../../core/player/player-file.ts';
import { throwsIn } from '../fieldwork/plan-csv-import.ts';
import { throwsCsv } from '../fieldwork/throws-csv.ts';
import { writeFileWhole } from '../files/write-file-whole.ts';
import type { Context } from './context.ts';
import { EXIT, printProblems } from './problems.ts';
import { CHOSEN, type Units } from './show-units.ts';

/** `throws --export`: all measured throws as a table, in the units chosen. */
export async function exportThrows(
  file: PlayerFile,
  out: string,
  units: Units,
  { terminal }: Context,
): Promise<number> {
  const written = await writeFileWhole(out, throwsCsv(file, CHOSEN[units]));
  if (!written.ok) {
    printProblems(out, written.problems, terminal);
    return EXIT.badInput;
  }
  terminal.out(`${throwsIn(file.sessions)} throws written to ${out}\n`);
  return EXIT.good;
}
