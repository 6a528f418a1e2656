import { writeFileWhole } from '../backend/files/write-file-whole.ts';
import type { Result } from '../core/units/result.ts';

/** Writes where the save dialog said; what was there stays whole until the new file is. */
export async function saveFile(path: string, content: string | Uint8Array): Promise<Result<{ saved: boolean }>> {
  const written = await writeFileWhole(path, content);
  if (written.ok) return { ok: true, value: { saved: true } };
  return {
    ok: false,
    problems: written.problems.map(({ message }) => ({ path: 'file', message: `${path} ${message}` })),
  };
}
