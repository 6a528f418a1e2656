import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Context } from 'hono';
import type { Result } from '../../core/units/result.ts';

/** A square kilometre of lidar is some megabytes; a survey's sheet some hundred. */
const LARGEST_UPLOAD_BYTES = 2_000_000_000;
/** Used at once or not at all: older ones go. */
const KEPT_UPLOADS = 4;

/** Large files on their way from the browser to the backend, kept for a moment beside the library, never in it. */
export type Uploads = Readonly<{
  /** Answers with the place of the file that came in as the request's body. */
  take(c: Context): Promise<Response>;
  close(): Promise<void>;
}>;

export function uploads(largest = LARGEST_UPLOAD_BYTES): Uploads {
  const folders: string[] = [];

  async function take(c: Context): Promise<Response> {
    const answer = (result: Result<{ path: string }>, status: 200 | 400 | 413) => c.json(result, status);
    const body = c.req.raw.body;
    if (body === null) return answer(refused('is empty'), 400);
    const folder = await mkdtemp(join(tmpdir(), 'roundwright-upload-'));
    folders.push(folder);
    while (folders.length > KEPT_UPLOADS) await rm(folders.shift()!, { recursive: true, force: true });
    const path = join(folder, safeName(c.req.query('name') ?? ''));
    let size = 0;
    const cap = new Transform({
      transform(part: Buffer, _, done) {
        size += part.length;
        done(size > largest ? new RangeError('too large') : null, part);
      },
    });
    try {
      // The web stream of the request and Node's own type of it differ in name only.
      await pipeline(Readable.fromWeb(body as Parameters<typeof Readable.fromWeb>[0]), cap, createWriteStream(path));
      if (size > 0) return answer({ ok: true, value: { path } }, 200);
      await rm(folder, { recursive: true, force: true });
      return answer(refused('is empty'), 400);
    } catch (error) {
      await rm(folder, { recursive: true, force: true });
      if (size > largest) return answer(refused(`is larger than ${largest / 1e9} GB: cut out the part you need`), 413);
      const { code } = error as NodeJS.ErrnoException;
      return answer(refused(code === 'ENOSPC' ? 'cannot be kept: the disk is full' : 'did not come in whole'), 400);
    }
  }

  return {
    take,
    close: async () => {
      await Promise.all(folders.map(folder => rm(folder, { recursive: true, force: true })));
    },
  };
}

/** The last part of the name, of plain characters: it is shown later as where the ground comes from. */
function safeName(name: string): string {
  const plain = basename(name.replaceAll('\\', '/'))
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}._ -]/gu, '-')
    .slice(0, 100);
  return plain === '' || plain.startsWith('.') ? 'model.tif' : plain;
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
