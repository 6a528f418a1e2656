import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { tilePath } from '../../../backend/api/tile-path.ts';
import { startHost } from '../../../backend/host/start-host.ts';
import { serveApp } from '../../../electron/app-protocol.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const TILE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 1, 2, 3]);
const call = async (method: string, input: unknown) => {
  const { z } = input as { z: number };
  if (method !== 'getTile') return { ok: false as const, problems: [{ path: 'method', message: 'unasked' }] };
  return { ok: true as const, value: z === 3 ? { type: 'image/png', base64: TILE.toString('base64') } : null };
};

/** A host of the test's own and a browser that has opened it. */
async function opened() {
  const root = temporaryFolder();
  mkdirSync(root, { recursive: true });
  writeFileSync(join(root, 'index.html'), '<title>Roundwright</title>');
  const host = taken(await startHost({ backend: { call, subscribe: () => () => {} }, root }));
  let isClosed = false;
  const close = async () => {
    if (!isClosed) await host.close();
    isClosed = true;
  };
  onTestFinished(close);
  const first = await fetch(host.url, { redirect: 'manual' });
  const cookie = first.headers.get('set-cookie')!.split(';')[0]!;
  const origin = `http://127.0.0.1:${host.port}`;
  const ask = (path: string, init: RequestInit = {}) =>
    fetch(`${origin}${path}`, { ...init, headers: { cookie, origin, ...(init.headers as object) } });
  return { ask, origin, close };
}

describe('the base map’s pictures', () => {
  it('come as they are, under the app’s own policy', async () => {
    const { ask } = await opened();
    const answer = await ask('/tiles/1a2b/3/4/2');
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('image/png');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(Buffer.from(await answer.arrayBuffer()).equals(TILE)).toBe(true);
    expect((await ask('/tiles/1a2b/4/4/2')).status).toBe(404);
  });

  it('come to nobody without the session', async () => {
    const { origin } = await opened();
    expect((await fetch(`${origin}/tiles/1a2b/3/4/2`)).status).toBe(401);
    const upload = await fetch(`${origin}/upload?name=a.tif`, { method: 'POST', headers: { origin }, body: 'x' });
    expect(upload.status).toBe(401);
  });

  it('come the same way over the shell’s protocol', async () => {
    const serve = serveApp(temporaryFolder(), { call });
    const answer = await serve(new Request('roundwright://app/tiles/1a2b/3/4/2'));
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'image/png']);
    expect(Buffer.from(await answer.arrayBuffer()).equals(TILE)).toBe(true);
    expect((await serve(new Request('roundwright://app/tiles/1a2b/9/4/2'))).status).toBe(404);
  });

  it.each(['/tiles/', '/tiles/a/1/2', '/tiles/a/1/2/3/4', '/tiles/a/-1/2/3', '/tiles/../1/2/3', '/tiles/a/1/2/3.png'])(
    '%s is no picture',
    path => expect(tilePath(path)).toBeNull(),
  );
});

describe('a large file handed over', () => {
  it('lies on this machine under its own name until the host closes', async () => {
    const { ask, close } = await opened();
    const bytes = Buffer.alloc(3_000_000, 7);
    const answer = await ask('/upload?name=..%2F..%2Fhill%20side.tif', { method: 'POST', body: bytes });
    const { path } = taken((await answer.json()) as { ok: true; value: { path: string } });
    expect(basename(path)).toBe('hill side.tif');
    expect(readFileSync(path).equals(bytes)).toBe(true);
    await close();
    expect(existsSync(path)).toBe(false);
  });

  it('makes room for the next: four are kept', async () => {
    const { ask } = await opened();
    const paths: string[] = [];
    for (let k = 0; k < 6; k++) {
      const answer = await ask(`/upload?name=${k}.tif`, { method: 'POST', body: `file ${k}` });
      paths.push(taken((await answer.json()) as { ok: true; value: { path: string } }).path);
    }
    expect(paths.map(path => existsSync(path))).toEqual([false, false, true, true, true, true]);
  });

  it('needs content', async () => {
    const { ask } = await opened();
    expect((await ask('/upload?name=a.tif', { method: 'POST' })).status).toBe(400);
  });
});
