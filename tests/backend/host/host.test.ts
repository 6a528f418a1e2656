import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { AppEvent } from '../../../backend/api/contract/events.ts';
import { type Host, startHost } from '../../../backend/host/start-host.ts';
import { taken } from '../taken.ts';
import { temporaryFolder } from '../temporary-folder.ts';

type Answer = Readonly<{ status: number; headers: Headers; body: string }>;
type Asked = Readonly<{
  method?: string;
  headers?: Readonly<Record<string, string | undefined>>;
  body?: string | Buffer;
}>;

/** Raw, because fetch neither sends a foreign Host nor leaves `..` in a path. */
function ask({ port }: Pick<Host, 'port'>, path: string, { method = 'GET', headers = {}, body = '' }: Asked = {}) {
  return new Promise<Answer>((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    const sent = {
      Host: `127.0.0.1:${port}`,
      ...(body.length > 0 ? { 'Content-Length': String(Buffer.byteLength(body)) } : {}),
      ...headers,
    };
    const lines = Object.entries(sent).flatMap(([name, value]) => (value === undefined ? [] : `${name}: ${value}\r\n`));
    let text = '';
    socket.on('data', data => {
      text += data.toString('latin1');
    });
    socket.on('error', error => (text === '' ? reject(error) : undefined));
    socket.on('close', () => resolve(answerOf(text)));
    socket.write(`${method} ${path} HTTP/1.1\r\n${lines.join('')}Connection: close\r\n\r\n`);
    socket.write(body);
  });
}

function answerOf(text: string): Answer {
  const [head = '', ...rest] = text.split('\r\n\r\n');
  const [first = '', ...lines] = head.split('\r\n');
  const headers = new Headers(
    lines.map(line => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
  );
  return { status: Number(first.split(' ')[1]), headers, body: rest.join('\r\n\r\n') };
}

async function started() {
  const folder = temporaryFolder();
  const root = join(folder, 'built');
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(join(root, 'index.html'), '<!doctype html><title>the app</title>');
  writeFileSync(join(root, 'assets', 'app.js'), 'run()');
  writeFileSync(join(folder, 'secret.json'), '{"secret": true}');
  symlinkSync(join(folder, 'secret.json'), join(root, 'link.json'));
  const calls: [string, unknown][] = [];
  const listeners = new Set<(event: AppEvent) => void>();
  const host = taken(
    await startHost({
      root,
      backend: {
        call: async (method, input) => {
          calls.push([method, input]);
          return { ok: true, value: method === 'renderSheet' ? { html: '<p>sheet</p>' } : { given: input } };
        },
        subscribe: listener => {
          listeners.add(listener);
          return () => listeners.delete(listener);
        },
      },
    }),
  );
  onTestFinished(() => host.close());
  const token = new URL(host.url).searchParams.get('token')!;
  const opened = await ask(host, `/?token=${token}`);
  const cookie = opened.headers.get('set-cookie')!.split(';')[0]!;
  const origin = `http://127.0.0.1:${host.port}`;
  const own = { Cookie: cookie, Origin: origin, 'Content-Type': 'application/json' };
  return { host, token, opened, cookie, origin, own, calls, listeners };
}

describe('the browser host', () => {
  it('gives the session for the token, out of reach of scripts and other sites, and takes the token off the address', async () => {
    const { opened, token, host, cookie } = await started();
    expect(opened.status).toBe(303);
    expect(opened.headers.get('location')).toBe('/');
    expect(opened.headers.get('set-cookie')).toMatch(/; Path=\/; HttpOnly; SameSite=Strict$/i);
    expect(cookie).not.toContain(token);
    const page = await ask(host, '/', { headers: { Cookie: cookie } });
    expect(page.status).toBe(200);
    expect(page.body).toContain('the app');
    expect(page.headers.get('content-security-policy')).toMatch(
      /^default-src 'none'; script-src 'self'; style-src 'self'/,
    );
    expect(page.headers.get('x-content-type-options')).toBe('nosniff');
  });

  it('answers a call of its page', async () => {
    const { host, own, calls } = await started();
    const answer = await ask(host, '/api/listCourses', { method: 'POST', headers: own, body: '{"a": "ä"}' });
    expect(answer.status).toBe(200);
    expect(calls).toEqual([['listCourses', { a: 'ä' }]]);
    expect((await ask(host, '/assets/app.js', { headers: own })).headers.get('content-type')).toMatch(
      /^text\/javascript/,
    );
    const sheet = await ask(host, '/sheet?planId=p&form=pocket&holes=1,2', { headers: own });
    expect(sheet.body).toContain('<p>sheet</p>');
    expect(sheet.headers.get('content-security-policy')).toContain("frame-ancestors 'self'");
    expect(calls.at(-1)).toEqual(['renderSheet', { planId: 'p', form: 'pocket', holes: ['1', '2'] }]);
  });

  it.each([
    { name: 'no session', change: { Cookie: '' }, status: 401 },
    { name: 'a wrong session', change: { Cookie: 'roundwright-0=AAAA' }, status: 401 },
    { name: 'a foreign Origin', change: { Origin: 'http://elsewhere.example' }, status: 403 },
    { name: 'an Origin of another port', change: { Origin: 'http://127.0.0.1:1' }, status: 403 },
    { name: 'the Origin "null"', change: { Origin: 'null' }, status: 403 },
    { name: 'a foreign Host', change: { Host: 'elsewhere.example' }, status: 403 },
    { name: 'a Host that a foreign name was pointed at', change: { Host: 'localhost:80' }, status: 403 },
    { name: 'a form', change: { 'Content-Type': 'text/plain' }, status: 415 },
  ])('refuses a call with $name', async ({ change, status }) => {
    const { host, own, calls } = await started();
    const answer = await ask(host, '/api/listCourses', { method: 'POST', headers: { ...own, ...change }, body: '{}' });
    expect(answer.status).toBe(status);
    expect(calls).toEqual([]);
  });

  it('refuses a call without an Origin, a wrong token, and everything without a session', async () => {
    const { host, own, calls, token } = await started();
    const { Origin: _, ...without } = own;
    expect((await ask(host, '/api/listCourses', { method: 'POST', headers: without, body: '{}' })).status).toBe(403);
    const wrong = await ask(host, `/?token=${token.slice(0, -1)}`);
    expect(wrong.status).toBe(401);
    expect(wrong.headers.get('set-cookie')).toBeNull();
    for (const path of ['/', '/assets/app.js', '/events', '/sheet?planId=p'])
      expect((await ask(host, path)).status, path).toBe(401);
    expect((await ask(host, `/assets/app.js?token=${token}`)).status).toBe(401);
    expect(calls).toEqual([]);
  });

  it.each([
    '/../secret.json',
    '/%2e%2e/secret.json',
    '/..%2fsecret.json',
    '/assets/..%2f..%2fsecret.json',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.json',
    '/..%5csecret.json',
    '/link.json',
    '/%00',
    '/%',
    '/assets',
    '//etc/passwd',
  ])('gives nothing outside its root: %s', async path => {
    const { host, own } = await started();
    const answer = await ask(host, path, { headers: own });
    expect([400, 404]).toContain(answer.status);
    expect(answer.body).not.toContain('secret');
  });

  it('refuses a body over its limit, told or not, and goes on', async () => {
    const { host, own, calls } = await started();
    const told = await ask(host, '/api/listCourses', {
      method: 'POST',
      headers: { ...own, 'Content-Length': '60000000' },
      body: '{',
    });
    expect(told.status).toBe(413);
    const chunk = Buffer.alloc(1_000_000, ' ');
    const size = `${chunk.length.toString(16)}\r\n`;
    const chunked = Buffer.concat([
      ...Array.from({ length: 46 }, () => Buffer.concat([Buffer.from(size), chunk, Buffer.from('\r\n')])),
      Buffer.from('0\r\n\r\n'),
    ]);
    const untold = await ask(host, '/api/listCourses', {
      method: 'POST',
      headers: { ...own, 'Transfer-Encoding': 'chunked', 'Content-Length': undefined },
      body: chunked,
    });
    // Not a number: it hung up before all was sent.
    expect([413, Number.NaN]).toContain(untold.status);
    expect(calls).toEqual([]);
    expect((await ask(host, '/api/listCourses', { method: 'POST', headers: own, body: '{}' })).status).toBe(200);
  });

  it('says what is wrong with a call that is none', async () => {
    const { host, own } = await started();
    const broken = await ask(host, '/api/listCourses', { method: 'POST', headers: own, body: '{' });
    expect(broken.status).toBe(400);
    expect(broken.body).toContain('is not valid JSON');
    expect((await ask(host, '/api/nope', { method: 'POST', headers: own, body: '{}' })).status).toBe(404);
    expect((await ask(host, '/', { method: 'PUT', headers: own, body: '{}' })).status).toBe(405);
  });

  it('passes events on, and stops listening when the browser leaves', async () => {
    const { host, cookie, listeners } = await started();
    const left = new AbortController();
    const answer = await fetch(`http://127.0.0.1:${host.port}/events`, {
      headers: { Cookie: cookie },
      signal: left.signal,
    });
    expect(answer.headers.get('content-type')).toMatch(/^text\/event-stream/);
    const reader = answer.body!.getReader();
    let text = '';
    const until = async (pattern: RegExp) => {
      while (!pattern.test(text)) text += new TextDecoder().decode((await reader.read()).value);
    };
    await until(/ready/);
    expect(listeners.size).toBe(1);
    const event: AppEvent = { kind: 'libraryChanged', areas: ['courses'] };
    for (const listener of listeners) listener(event);
    await until(/libraryChanged/);
    expect(text).toContain(`data: ${JSON.stringify(event)}\n\n`);
    left.abort();
    await expect.poll(() => listeners.size).toBe(0);
  });

  it('starts only where the app is built and the port is free', async () => {
    const { host } = await started();
    const backend = { call: async () => ({ ok: true, value: null }) as const, subscribe: () => () => {} };
    const root = temporaryFolder();
    expect(await startHost({ backend, root })).toMatchObject({ ok: false, problems: [{ path: 'root' }] });
    writeFileSync(join(root, 'index.html'), '');
    expect(await startHost({ backend, root, port: host.port })).toMatchObject({
      ok: false,
      problems: [{ path: 'port' }],
    });
  });
});
