import { readFile } from 'node:fs/promises';
import type { Protocol } from 'electron';
import type { Output } from '../backend/api/contract/api.ts';
import { sheetCall } from '../backend/api/sheet-query.ts';
import { tilePath } from '../backend/api/tile-path.ts';
import { fileUnderRoot } from '../backend/files/file-under-root.ts';
import { APP_HEADERS, SHEET_HEADERS } from '../backend/host/policy.ts';
import type { Result } from '../core/units/result.ts';
import type { BridgedBackend } from './bridge.ts';
import { APP_ORIGIN, PAGE_ORIGIN, SCHEME } from './security.ts';

/** A page to be printed carries its own style and pictures, and nothing else; no page shows it. */
const PAGE_HEADERS = {
  'Content-Type': 'text/html; charset=utf-8',
  'Content-Security-Policy':
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Cache-Control': 'no-store',
} as const;

/** Must run before the app is ready. */
export function registerScheme(protocol: Protocol): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, codeCache: true };
  protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges }]);
}

/** Answers `roundwright://app/…` with the built files under `root`, nothing outside it, the printed sheet at `/sheet?…` and the base map's pictures at `/tiles/…`. */
export function serveApp(root: string, backend: Pick<BridgedBackend, 'call'>): (request: Request) => Promise<Response> {
  return async request => {
    const url = URL.parse(request.url);
    if (url === null || `${url.protocol}//${url.host}` !== APP_ORIGIN) return refuse(403);
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405);
    if (url.pathname === '/sheet') {
      const { method, input } = sheetCall(url.searchParams);
      return sheetAnswer(await backend.call(method, input));
    }
    if (url.pathname.startsWith('/tiles/')) return tileAnswer(url.pathname, backend);
    const found = await fileUnderRoot(root, url.pathname);
    if (found === null) return refuse(404);
    const headers = { ...APP_HEADERS, 'Content-Type': found.type };
    return new Response(request.method === 'HEAD' ? null : await readFile(found.file), { headers });
  };
}

/** Answers `roundwright://page/<id>` with the page that waits under that id. */
export function servePages(waiting: ReadonlyMap<string, string>): (request: Request) => Response {
  return request => {
    const html = request.url.startsWith(`${PAGE_ORIGIN}/`)
      ? waiting.get(request.url.slice(PAGE_ORIGIN.length + 1))
      : undefined;
    if (html === undefined || request.method !== 'GET') return refuse(404);
    return new Response(html, { headers: PAGE_HEADERS });
  };
}

async function tileAnswer(pathname: string, backend: Pick<BridgedBackend, 'call'>): Promise<Response> {
  const place = tilePath(pathname);
  const answer = place === null ? null : await backend.call('getTile', place);
  const tile = answer?.ok ? (answer.value as Output<'getTile'>) : null;
  if (tile === null) return refuse(404);
  return new Response(Buffer.from(tile.base64, 'base64'), { headers: { ...APP_HEADERS, 'Content-Type': tile.type } });
}

function sheetAnswer(sheet: Result<unknown>): Response {
  if (sheet.ok) return text((sheet.value as { html: string }).html, 'text/html', 200);
  return text(sheet.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'), 'text/plain', 400);
}

function text(body: string, type: string, status: number): Response {
  return new Response(body, { status, headers: { ...SHEET_HEADERS, 'Content-Type': `${type}; charset=utf-8` } });
}

function refuse(status: number): Response {
  return new Response(null, { status, headers: APP_HEADERS });
}
