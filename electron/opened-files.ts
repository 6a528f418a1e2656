import { existsSync } from 'node:fs';
import { basename, isAbsolute, resolve } from 'node:path';
import type { DesktopOutput } from '../backend/api/desktop-bridge.ts';
import { readCourseBytes } from '../backend/files/read-course-bytes.ts';
import { readTextFile } from '../backend/files/read-text-file.ts';

export type OpenedFiles = DesktopOutput<'takeOpenedFiles'>;

const KNOWN = /\.(geojson|json|osm|gpx|kml|kmz|html)$/i;
/** Maps of these kinds say themselves how their text is written, or are archives: they go through as bytes. */
const AS_BYTES = /\.(osm|xml|gpx|kml|kmz|zip|html)$/i;

/** The course and player files among the words of a command line, which also hold the program, the app and switches. */
export function filesIn(words: readonly string[], folder: string): string[] {
  return words
    .filter(word => !word.startsWith('-') && KNOWN.test(word))
    .map(word => (isAbsolute(word) ? word : resolve(folder, word)))
    .filter(path => existsSync(path));
}

/** The files as text or bytes; what cannot be read becomes a problem with the file's name as its path. */
export function readFiles(paths: readonly string[]): OpenedFiles {
  const files: OpenedFiles['files'] = [];
  const problems: OpenedFiles['problems'] = [];
  for (const path of paths) {
    const fileName = basename(path);
    const file = AS_BYTES.test(path) ? readBytes(path, fileName) : readText(path, fileName);
    if (file.ok) files.push(file.value);
    else problems.push(...file.problems.map(({ message }) => ({ path: fileName, message })));
  }
  return { files, problems };
}

function readText(path: string, fileName: string) {
  const text = readTextFile(path);
  return text.ok ? ({ ok: true, value: { fileName, text: text.value } } as const) : text;
}

function readBytes(path: string, fileName: string) {
  const bytes = readCourseBytes(path);
  if (!bytes.ok) return bytes;
  return { ok: true, value: { fileName, data: Buffer.from(bytes.value).toString('base64') } } as const;
}
