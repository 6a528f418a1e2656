import { randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { access, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Result } from '../../core/units/result.ts';

/**
 * Writes a file so that its name stands either for what was there before or for all of the new content, also when the machine
 * stops half-way: beside it first, then moved over. A link is followed.
 * @returns the path written, or one problem with path `file` that says what to do; then nothing has changed
 */
export async function writeFileWhole(path: string, content: string | Uint8Array): Promise<Result<string>> {
  const target = await realpath(path).catch(() => path);
  const part = join(dirname(target), `.${basename(target).slice(0, 60)}.${randomUUID()}.part`);
  try {
    const file = await open(part, 'wx');
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, target);
    return { ok: true, value: path };
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    return problem(inWords(error));
  }
}

/** Whether a file may be written here, asked before work that takes its time. The folder must be there. */
export async function checkCanWrite(path: string): Promise<Result<string>> {
  try {
    const folder = await stat(dirname(path));
    if (!folder.isDirectory()) return problem('its folder is a file: choose another name');
    const target = await stat(path).catch(() => null);
    if (target?.isDirectory()) return problem('is a folder: name the file to write in it');
    await access(dirname(await realpath(path).catch(() => path)), constants.W_OK);
    return { ok: true, value: path };
  } catch (error) {
    return problem(inWords(error));
  }
}

const WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'its folder is not there: make it first, or choose another name',
  ENOTDIR: 'its folder is not there: a part of its path is a file',
  EACCES: 'may not be written there: choose another folder',
  EPERM: 'may not be written there: choose another folder',
  EROFS: 'may not be written there: the disk is read-only',
  ENOSPC: 'cannot be written: the disk is full',
  EDQUOT: 'cannot be written: your share of the disk is full',
  EISDIR: 'is a folder: name the file to write in it',
  EBUSY: 'is in use by another program: close it there first',
  ENAMETOOLONG: 'its name is too long for a file',
  ELOOP: 'its links lead round in a circle',
};

function inWords(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return WORDS[code ?? ''] ?? `cannot be written (${code ?? String(error)})`;
}

function problem(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
