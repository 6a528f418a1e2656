import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import type { Result } from '../../core/units/result.ts';
import { importLimits } from '../import/import-limits.ts';
import { fileTrouble } from './file-trouble.ts';

/**
 * A course file's bytes. Its size is asked before anything is read, and no more than the limit is read of a pipe.
 * @returns the bytes, or one problem with path `file` that says what to do
 */
export function readCourseBytes(path: string): Result<Uint8Array> {
  let file: number;
  try {
    file = openSync(path, 'r');
  } catch (error) {
    return problem(fileTrouble(error));
  }
  try {
    const stat = fstatSync(file);
    if (stat.isDirectory()) return problem('is a directory: name the file in it');
    if (stat.size > importLimits.file_bytes) return problem(tooLarge(stat.size));
    return readAll(file);
  } catch (error) {
    return problem(fileTrouble(error));
  } finally {
    closeSync(file);
  }
}

function readAll(file: number): Result<Uint8Array> {
  const parts: Buffer[] = [];
  for (let size = 0; ; ) {
    const part = Buffer.allocUnsafe(1_000_000);
    const read = readSync(file, part, 0, part.length, null);
    if (read === 0) return { ok: true, value: Buffer.concat(parts, size) };
    size += read;
    if (size > importLimits.file_bytes) return problem(tooLarge(size));
    parts.push(part.subarray(0, read));
  }
}

function tooLarge(bytes: number): string {
  return `is ${(bytes / 1e6).toFixed(0)} MB, larger than the ${importLimits.file_bytes / 1e6} MB taken: cut it down to one course`;
}

function problem(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
