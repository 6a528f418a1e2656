import { randomUUID } from 'node:crypto';
import { rename, rm, writeFile } from 'node:fs/promises';
import type { Result } from '../core/units/result.ts';

const WORDS: Readonly<Record<string, string>> = {
  EACCES: 'may not be written there: choose another folder',
  EPERM: 'may not be written there: choose another folder',
  EROFS: 'may not be written there: the disk is read-only',
  ENOENT: 'cannot be written: the folder is gone',
  ENOSPC: 'cannot be written: the disk is full',
  EISDIR: 'is the name of a folder: choose another name',
  EBUSY: 'is in use by another program: close it there first',
};

/** Writes beside the file and moves it over, so that what was there stays whole until the new one is. */
export async function saveFile(path: string, content: string | Uint8Array): Promise<Result<{ saved: boolean }>> {
  const part = `${path}.${randomUUID()}.part`;
  try {
    await writeFile(part, content, { flag: 'wx' });
    await rename(part, path);
    return { ok: true, value: { saved: true } };
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    const { code } = error as NodeJS.ErrnoException;
    const message = WORDS[code ?? ''] ?? `cannot be written (${code ?? String(error)})`;
    return { ok: false, problems: [{ path: 'file', message: `${path} ${message}` }] };
  }
}
