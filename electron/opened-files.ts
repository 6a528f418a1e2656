import { existsSync } from 'node:fs';
import { basename, isAbsolute, resolve } from 'node:path';
import type { DesktopOutput } from '../backend/api/desktop-bridge.ts';
import { readTextFile } from '../backend/files/read-text-file.ts';

export type OpenedFiles = DesktopOutput<'takeOpenedFiles'>;

const KNOWN = /\.(geojson|json)$/i;

/** The course and player files among the words of a command line, which also hold the program, the app and switches. */
export function filesIn(words: readonly string[], folder: string): string[] {
  return words
    .filter(word => !word.startsWith('-') && KNOWN.test(word))
    .map(word => (isAbsolute(word) ? word : resolve(folder, word)))
    .filter(path => existsSync(path));
}

/** The files' texts; what cannot be read becomes a problem with the file's name as its path. */
export function readFiles(paths: readonly string[]): OpenedFiles {
  const files: OpenedFiles['files'] = [];
  const problems: OpenedFiles['problems'] = [];
  for (const path of paths) {
    const text = readTextFile(path);
    const fileName = basename(path);
    if (text.ok) files.push({ fileName, text: text.value });
    else problems.push(...text.problems.map(({ message }) => ({ path: fileName, message })));
  }
  return { files, problems };
}
