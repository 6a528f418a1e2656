import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../../backend/command-line/run.ts';

/** What one command line wrote and ended with. */
export type Outcome = Readonly<{ code: number; out: string; err: string }>;

/** Runs a command line in this process, as with output piped: no colours, no progress. */
export async function runLine(words: readonly string[], columns = 100): Promise<Outcome> {
  let out = '';
  let err = '';
  const code = await run(words, {
    out: text => {
      out += text;
    },
    err: text => {
      err += text;
    },
    columns,
    colours: false,
    progress: null,
  });
  return { code, out, err };
}

export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), 'roundwright-test-'));
}

/** Writes one file into a folder of its own. @returns its path */
export function fileWith(name: string, content: string | Uint8Array | object): string {
  const path = join(temporaryFolder(), name);
  const isText = typeof content === 'string' || content instanceof Uint8Array;
  writeFileSync(path, isText ? content : JSON.stringify(content));
  return path;
}
