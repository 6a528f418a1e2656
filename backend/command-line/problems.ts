import type { Problem } from '../../core/units/result.ts';
import { plain, type Terminal } from './terminal.ts';

/** What the process ends with. */
export const EXIT = { good: 0, badInput: 1, usage: 2, fault: 3, interrupted: 130 } as const;

/** Each problem on a line of its own: file, place in it, how to mend it. */
export function printProblems(file: string, problems: readonly Problem[], terminal: Terminal): void {
  for (const { path, message } of problems)
    terminal.err(`${plain(file)}: ${path === 'file' ? '' : `${plain(path)}: `}${plain(message)}\n`);
}
