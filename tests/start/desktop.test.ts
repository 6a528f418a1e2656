import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { ALREADY_OPEN, SHOWN, STOPPED } from '../../electron/spoken-lines.ts';
import { findElectron, whyNoWindow } from '../../start/find-electron.ts';
import { runDesktop } from '../../start/run-desktop.ts';

let folder: string;
const said: string[] = [];
const say = (line: string) => said.push(line);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'roundwright-desktop-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => said.splice(0));
afterEach(() => vi.restoreAllMocks());

describe('whether a window can come up', () => {
  it.each([
    { platform: 'linux', env: {}, uid: 1000, want: /no display/ },
    { platform: 'linux', env: { DISPLAY: '' }, uid: 1000, want: /no display/ },
    { platform: 'linux', env: { DISPLAY: ':0' }, uid: 0, want: /root/ },
  ] as const)('on $platform with $env as $uid it cannot', ({ want, ...machine }) =>
    expect(whyNoWindow(machine)).toMatch(want),
  );
  it.each([
    { platform: 'linux', env: { DISPLAY: ':0' }, uid: 1000 },
    { platform: 'linux', env: { WAYLAND_DISPLAY: 'wayland-0' }, uid: 1000 },
    { platform: 'darwin', env: {}, uid: 501 },
    { platform: 'win32', env: {}, uid: undefined },
  ] as const)('on $platform with $env as $uid it can', machine => expect(whyNoWindow(machine)).toBeNull());
});

describe('finding Electron', () => {
  function packageWith(name: string, installer: string): string {
    const home = join(folder, name);
    mkdirSync(home);
    writeFileSync(join(home, 'install.js'), installer);
    return home;
  }

  it('takes the program that is there', async () => {
    const home = packageWith('there', 'throw new Error("not needed")');
    mkdirSync(join(home, 'dist'));
    writeFileSync(join(home, 'dist', 'electron'), '');
    writeFileSync(join(home, 'path.txt'), 'electron\n');
    expect(await findElectron(home, say)).toEqual({ ok: true, value: join(home, 'dist', 'electron') });
    expect(said).toEqual([]);
  });

  it('fetches it when it is not, and says so', async () => {
    const home = packageWith(
      'fetched',
      `const fs = require('fs'); fs.mkdirSync(__dirname + '/dist'); fs.writeFileSync(__dirname + '/dist/electron', '');
       fs.writeFileSync(__dirname + '/path.txt', 'electron');`,
    );
    expect(await findElectron(home, say)).toEqual({ ok: true, value: join(home, 'dist', 'electron') });
    expect(said).toHaveLength(1);
  });

  it('says why it cannot be fetched', async () => {
    const home = packageWith('offline', `console.error(new TypeError('fetch failed').stack); process.exit(1);`);
    expect(await findElectron(home, say)).toEqual({
      ok: false,
      problems: [{ path: 'electron', message: 'Electron’s program could not be fetched (fetch failed)' }],
    });
  });

  it('says when the package is not installed', async () =>
    expect(await findElectron(join(folder, 'none'), say)).toMatchObject({
      problems: [{ message: expect.stringContaining('npm ci') }],
    }));
});

describe('running the desktop app', () => {
  // In Electron's place: Node with a script that says what Electron would.
  const run = (script: string, signal?: AbortSignal) => {
    const file = join(folder, 'in-its-place.cjs');
    writeFileSync(file, script);
    return runDesktop(process.execPath, [file], say, signal);
  };

  it('ends with its exit code once there was a window', async () =>
    expect(await run(`console.log(${JSON.stringify(SHOWN)}); process.exitCode = 3;`)).toEqual({
      kind: 'ended',
      code: 3,
    }));

  it('says when it was open already', async () => {
    expect(await run(`console.log(${JSON.stringify(ALREADY_OPEN)});`)).toEqual({ kind: 'ended', code: 0 });
    expect(said).toEqual(['Roundwright is open already: its window is in front now.']);
  });

  it('passes on why it stopped and does not take that for a failure to start', async () => {
    expect(
      await run(`console.log(${JSON.stringify(`${STOPPED}the library is newer`)}); process.exitCode = 1;`),
    ).toEqual({
      kind: 'ended',
      code: 1,
    });
    expect(said).toEqual(['the library is newer']);
  });

  it.each([
    {
      name: 'a missing library',
      script: `console.error('chatter'); console.error('electron: error while loading shared libraries: libnss3.so: cannot open shared object file'); process.exit(127);`,
      why: /libnss3\.so/,
    },
    {
      name: 'Chromium’s last words',
      script: `console.error('[123:0101/000000.1:FATAL:setuid_sandbox_host.cc(163)] The SUID sandbox helper is not configured'); console.error('more'); process.exit(1);`,
      why: /\(The SUID sandbox helper is not configured\)/,
    },
    { name: 'an exit without a word', script: 'process.exit(0);', why: /\(exit code 0\)/ },
    { name: 'a signal', script: `process.kill(process.pid, 'SIGKILL');`, why: /killed by SIGKILL/ },
  ])('fails with $name when no window came up', async ({ script, why }) => {
    const end = await run(script);
    expect(end).toMatchObject({ kind: 'failed', why: expect.stringMatching(why) });
  });

  it('fails when the program does not run', async () => {
    const file = join(folder, 'no-program');
    writeFileSync(file, 'not a program');
    chmodSync(file, 0o644);
    expect(await runDesktop(file, [], say)).toMatchObject({ kind: 'failed', why: expect.stringContaining('EACCES') });
  });

  it('is ended with the start script', async () => {
    const stop = new AbortController();
    const end = run(`console.log('up'); setInterval(() => {}, 1000);`, stop.signal);
    await vi.waitUntil(() => said.includes('up'), { timeout: 10_000 });
    stop.abort();
    expect(await end).toMatchObject({ kind: 'ended', code: 0 });
  });
});
