import { readFile } from 'node:fs/promises';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { getCookie, setCookie } from 'hono/cookie';
import type { Problem } from '../../core/units/result.ts';
import { METHODS, type Output } from '../api/contract/api.ts';
import type { Backend } from '../api/open-backend.ts';
import { sheetCall } from '../api/sheet-query.ts';
import { tilePath } from '../api/tile-path.ts';
import { fileUnderRoot } from '../files/file-under-root.ts';
import { eventStream } from './event-stream.ts';
import { isSecret, type Keys } from './keys.ts';
import { APP_HEADERS, SHEET_HEADERS } from './policy.ts';
import type { Uploads } from './upload-route.ts';

/** A file of the longest text taken, with every character escaped, and room for the rest of the call. */
const LARGEST_BODY_BYTES = 44_000_000;
/** The same for a whole library with its terrain. */
const LARGEST_LIBRARY_BYTES = 110_000_000;

export type HostAppParts = Readonly<{
  backend: Pick<Backend, 'call' | 'subscribe'>;
  root: string;
  /** As the browser must name it, e.g. `127.0.0.1:40123`. */
  host: string;
  keys: Keys;
  files: Uploads;
}>;

/**
 * The browser's way to the backend. In this order: the right host name (no other name may be made to point here), no foreign
 * page as the asker, the session's cookie; only then is anything else of a request looked at.
 */
export function hostApp({ backend, root, host, keys, files }: HostAppParts): Hono {
  const app = new Hono();
  const origin = `http://${host}`;
  // Cookies know no ports: the name keeps two hosts on one machine apart.
  const cookie = `roundwright-${host.split(':')[1]}`;

  app.use(async (c, next) => {
    await next();
    for (const [name, value] of Object.entries(APP_HEADERS))
      if (!c.res.headers.has(name)) c.res.headers.set(name, value);
  });
  app.use(async (c, next) => {
    if (c.req.header('host') !== host) return c.text(`This is served as ${origin} only.`, 403);
    const asker = c.req.header('origin');
    if (asker !== undefined && asker !== origin) return c.text('Another site may not ask this.', 403);
    if (c.req.method === 'POST' && asker === undefined) return c.text('A page of this site must ask this.', 403);
    const { token } = c.req.query();
    if (c.req.method === 'GET' && c.req.path === '/' && token !== undefined) {
      if (!isSecret(token, keys.token)) return c.text(`Wrong token. ${OPEN_AGAIN}`, 401);
      setCookie(c, cookie, keys.session, { httpOnly: true, sameSite: 'Strict', path: '/' });
      // Away with the token from the address bar and the history.
      return c.redirect('/', 303);
    }
    if (!isSecret(getCookie(c, cookie), keys.session)) return c.text(OPEN_AGAIN, 401);
    return next();
  });

  const limited = (maxSize: number) =>
    bodyLimit({ maxSize, onError: c => c.json(problem('input', `is larger than ${maxSize / 1e6} MB`), 413) });
  const called = (method: string) => async (c: Context) => {
    if (!/^application\/json\b/.test(c.req.header('content-type') ?? ''))
      return c.json(problem('input', 'must be application/json'), 415);
    let input: unknown;
    try {
      input = JSON.parse(await c.req.text());
    } catch {
      return c.json(problem('input', 'is not valid JSON'), 400);
    }
    const answer = await backend.call(method, input);
    return c.json(answer, (METHODS as readonly string[]).includes(method) ? 200 : 404);
  };
  app.post('/api/importLibrary', limited(LARGEST_LIBRARY_BYTES), called('importLibrary'));
  app.post('/api/:method', limited(LARGEST_BODY_BYTES), c => called(c.req.param('method'))(c));
  app.get('/events', c => eventStream(c, backend.subscribe));
  app.get('/sheet', async c => {
    const { method, input } = sheetCall(new URL(c.req.url).searchParams);
    const sheet = await backend.call(method, input);
    if (sheet.ok) return c.html((sheet.value as { html: string }).html, 200, SHEET_HEADERS);
    const text = sheet.problems.map(({ path, message }) => `${path}: ${message}`).join('\n');
    return c.text(text, 400, SHEET_HEADERS);
  });
  app.post('/upload', c => files.take(c));
  app.get('/tiles/*', async c => {
    const place = tilePath(new URL(c.req.url).pathname);
    const answer = place === null ? null : await backend.call('getTile', place);
    const tile = answer?.ok ? (answer.value as Output<'getTile'>) : null;
    if (tile === null) return c.body(null, 404);
    return c.body(new Uint8Array(Buffer.from(tile.base64, 'base64')), 200, { 'Content-Type': tile.type });
  });
  app.get('/*', async c => {
    const found = await fileUnderRoot(root, new URL(c.req.url).pathname);
    if (found === null) return c.text('There is no such file.', 404);
    return c.body(new Uint8Array(await readFile(found.file)), 200, { 'Content-Type': found.type });
  });
  app.all('*', c => c.text('Not a way to ask this.', 405));
  // No words of the error: they may hold what the asker sent.
  app.onError((_, c) => c.text('Something went wrong inside the app.', 500));
  return app;
}

const OPEN_AGAIN = 'Open the address that the app printed when it started.';

function problem(path: string, message: string): { ok: false; problems: Problem[] } {
  return { ok: false, problems: [{ path, message }] };
}
