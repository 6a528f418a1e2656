import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveApp, servePages } from '../../electron/app-protocol.ts';

let folder: string;
let serve: ReturnType<typeof serveApp>;
const asked: unknown[] = [];

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'roundwright-protocol-'));
  const root = join(folder, 'renderer');
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(join(root, 'index.html'), '<title>Roundwright</title>');
  writeFileSync(join(root, 'assets', 'page.js'), 'export {};');
  writeFileSync(join(root, 'assets', 'with space.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(join(root, 'assets', 'notes.txt'), 'no type for this');
  writeFileSync(join(folder, 'secret.json'), '{"secret":true}');
  mkdirSync(join(folder, 'renderer-beside'));
  writeFileSync(join(folder, 'renderer-beside', 'secret.json'), '{"secret":true}');
  symlinkSync(join(folder, 'secret.json'), join(root, 'assets', 'link.json'));
  serve = serveApp(root, {
    call: async (method, input) => {
      asked.push({ method, input });
      return (input as { planId: string }).planId === 'good'
        ? { ok: true, value: { title: 'Sheet', fileName: 'sheet.html', html: '<p>Hole 1</p>' } }
        : { ok: false, problems: [{ path: 'planId', message: 'must be an id of the library' }] };
    },
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const get = (address: string, method = 'GET') => serve(new Request(address, { method }));

describe('the app’s files', () => {
  it.each([
    { path: '/', type: 'text/html; charset=utf-8' },
    { path: '/index.html', type: 'text/html; charset=utf-8' },
    { path: '/index.html?a=1#b', type: 'text/html; charset=utf-8' },
    { path: '/assets/page.js', type: 'text/javascript; charset=utf-8' },
    { path: '/assets/with%20space.svg', type: 'image/svg+xml' },
  ])('$path is $type', async ({ path, type }) => {
    const response = await get(`roundwright://app${path}`);
    expect(response.status).toBe(200);
    expect(response.headers.get('Content-Type')).toBe(type);
    expect(response.headers.get('X-Content-Type-Options')).toBe('nosniff');
    expect((await response.text()).length).toBeGreaterThan(0);
  });

  it('HEAD has no body', async () => expect(await (await get('roundwright://app/', 'HEAD')).text()).toBe(''));

  it.each([
    { path: '/../secret.json', status: 404 },
    { path: '/%2e%2e/secret.json', status: 404 },
    { path: '/..%2fsecret.json', status: 404 },
    { path: '/assets/..%2f..%2fsecret.json', status: 404 },
    { path: '/..%2frenderer-beside%2fsecret.json', status: 404 },
    { path: '/..%5csecret.json', status: 404 },
    { path: '/assets/link.json', status: 404 },
    { path: '/assets/page.js%00.html', status: 404 },
    { path: '/%E0%A4%A', status: 404 },
    { path: '/%2fetc%2fpasswd', status: 404 },
    { path: '/assets', status: 404 },
    { path: '/assets/notes.txt', status: 404 },
    { path: '/missing.js', status: 404 },
  ])('$path gives nothing', async ({ path, status }) => {
    const response = await get(`roundwright://app${path}`);
    expect(response.status).toBe(status);
    expect(await response.text()).toBe('');
  });

  it.each(['POST', 'PUT', 'DELETE'])('%s is refused', async method =>
    expect((await get('roundwright://app/', method)).status).toBe(405),
  );

  it.each(['roundwright://page/index.html', 'https://app/index.html'])('%s is not the app', async address =>
    expect((await get(address)).status).toBe(403),
  );
});

describe('the sheet', () => {
  it('is made from its address and may only be framed by the app', async () => {
    const response = await get('roundwright://app/sheet?planId=good&form=pocket&length=ft&speed=mph&holes=1,2b');
    expect(asked.at(-1)).toEqual({
      method: 'renderSheet',
      input: { planId: 'good', form: 'pocket', length: 'ft', speed: 'mph', holes: ['1', '2b'] },
    });
    expect(await response.text()).toBe('<p>Hole 1</p>');
    const policy = response.headers.get('Content-Security-Policy');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'self'");
    expect(policy).not.toContain('script-src');
  });

  it('says what is wrong with its address', async () => {
    const response = await get('roundwright://app/sheet?planId=bad');
    expect(response.status).toBe(400);
    expect(response.headers.get('Content-Type')).toContain('text/plain');
    expect(await response.text()).toBe('planId: must be an id of the library');
  });
});

describe('pages to be printed', () => {
  const pages = servePages(new Map([['a', '<p>A</p>']]));
  it.each([
    { address: 'roundwright://page/a', status: 200 },
    { address: 'roundwright://page/b', status: 404 },
    { address: 'roundwright://app/a', status: 404 },
  ])('$address: $status', ({ address, status }) => expect(pages(new Request(address)).status).toBe(status));
});
