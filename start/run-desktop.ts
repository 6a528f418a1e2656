import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { ALREADY_OPEN, SHOWN, STOPPED } from '../electron/spoken-lines.ts';

export type DesktopEnd =
  /** It ran, or handed over to one that runs, and has ended. */
  | Readonly<{ kind: 'ended'; code: number }>
  /** No window came up; `why` can follow "cannot start here:". */
  | Readonly<{ kind: 'failed'; why: string }>;

/**
 * Runs the desktop app until it ends.
 * @param program - Electron's program, or whatever else is to run with `words`
 */
export function runDesktop(
  program: string,
  words: readonly string[],
  say: (line: string) => void,
  signal?: AbortSignal,
): Promise<DesktopEnd> {
  const child = spawn(program, words, { stdio: ['ignore', 'pipe', 'pipe'], windowsHide: false });
  signal?.addEventListener('abort', () => child.kill('SIGTERM'), { once: true });
  let isSettled = false; // past this nothing is a failure to start
  let stopped: string | undefined;
  const errors: string[] = [];

  createInterface({ input: child.stdout }).on('line', line => {
    if (line === SHOWN) isSettled = true;
    else if (line === ALREADY_OPEN) {
      isSettled = true;
      say('Roundwright is open already: its window is in front now.');
    } else if (line.startsWith(STOPPED)) {
      isSettled = true;
      stopped = line.slice(STOPPED.length);
    } else say(line);
  });
  // Chromium talks a lot on stderr; until the window is there it is kept, for its last words say why it did not come.
  createInterface({ input: child.stderr }).on('line', line => {
    if (isSettled) process.stderr.write(`${line}\n`);
    else errors.push(line);
  });

  return new Promise(resolve => {
    child.on('error', error => resolve({ kind: 'failed', why: `Electron’s program does not run (${error.message})` }));
    child.on('close', (code, killedBy) => {
      if (stopped !== undefined) say(stopped);
      if (isSettled || signal?.aborted) resolve({ kind: 'ended', code: code ?? (signal?.aborted ? 0 : 1) });
      else
        resolve({ kind: 'failed', why: `it ended before its window came up (${lastWords(errors, code, killedBy)})` });
    });
  });
}

function lastWords(errors: readonly string[], code: number | null, killedBy: NodeJS.Signals | null): string {
  const fatal = errors.findLast(line => /FATAL|error while loading|not found|cannot open/i.test(line)) ?? errors.at(-1);
  if (fatal !== undefined) return fatal.replace(/^\[[^\]]*\]\s*/, '').trim();
  return killedBy === null ? `exit code ${code}` : `killed by ${killedBy}`;
}
