import { readFileSync, statSync } from 'node:fs';
import type { Result } from '../../core/units/result.ts';
import { fileTrouble } from './file-trouble.ts';

/** Far above any course or player file; a file picked by mistake must not fill the memory. */
const LARGEST_BYTES = 50_000_000;

/**
 * The text of a file the user named.
 * @returns the text, or one problem with path `file` that says what to do: missing, a directory, not readable, too large, not UTF-8
 */
export function readTextFile(path: string): Result<string> {
  let bytes: Buffer;
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) return problem('is a directory: name the file in it');
    if (stat.size > LARGEST_BYTES) return problem(tooLarge(stat.size));
    bytes = readFileSync(path);
  } catch (error) {
    return problem(fileTrouble(error));
  }
  // A pipe has no size beforehand.
  if (bytes.length > LARGEST_BYTES) return problem(tooLarge(bytes.length));
  if (bytes.length >= 2 && ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)))
    return problem('is UTF-16 text: save it as UTF-8');
  try {
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return problem('is not UTF-8 text: save it as UTF-8, or check that it is the right file');
  }
}

function problem(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}

function tooLarge(bytes: number): string {
  return `is ${(bytes / 1e6).toFixed(0)} MB, larger than the ${LARGEST_BYTES / 1e6} MB taken: cut it down to one course or player`;
}
