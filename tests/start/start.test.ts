import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';

const START = resolve(import.meta.dirname, '..', '..', 'start', 'start.ts');

let folder: string;
let child: ChildProcess | undefined;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'roundwright-start-'));
});
afterEach(() => child?.kill('SIGKILL'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs `npm start`'s script without a display until it says where the app is. */
async function startWithoutDisplay(...words: string[]): Promise<{ lines: string[]; address: string }> {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...env } = process.env;
  child = spawn(process.execPath, [START, ...words], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  const lines: string[] = [];
  let errors = '';
  child.stderr!.setEncoding('utf8').on('data', text => {
    errors += text;
  });
  for await (const line of createInterface({ input: child.stdout! })) {
    lines.push(line);
    const address = /^Roundwright is at (http\S+)$/.exec(line)?.[1];
    if (address !== undefined) return { lines, address };
  }
  throw new Error(`it ended without an address: ${[...lines, errors].join('\n')}`);
}

function ended(): Promise<number | null> {
  return new Promise(done => child?.once('exit', code => done(code)));
}

describe('npm start', () => {
  it('serves the app to a browser when asked to, and lets go when told to stop', async () => {
    const { address, lines } = await startWithoutDisplay('--browser', '--no-open', '--data', join(folder, 'a'));
    expect(lines.join('\n')).not.toContain('cannot start');
    const entry = await fetch(address, { redirect: 'manual' });
    expect(entry.status).toBe(303);
    const cookie = entry.headers.get('set-cookie')!.split(';')[0]!;
    const page = await fetch(new URL('/', address), { headers: { cookie } });
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Roundwright</title>');
    expect(existsSync(join(folder, 'a', 'library.sqlite'))).toBe(true);

    const end = ended();
    child?.kill('SIGTERM');
    expect(await end).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  it.runIf(process.platform === 'linux')(
    'says in one line why there is no desktop app, and serves a browser',
    async () => {
      const { lines } = await startWithoutDisplay('--data', join(folder, 'b'));
      const why = lines.filter(line => line.startsWith('The desktop app cannot start here: '));
      expect(why).toEqual([expect.stringMatching(/there is no display/)]);
    },
  );

  it('says why when the library cannot be opened', async () => {
    const inTheWay = join(folder, 'a-file');
    writeFileSync(inTheWay, '');
    await expect(startWithoutDisplay('--browser', '--no-open', '--data', inTheWay)).rejects.toThrow('library: ');
    expect(child?.exitCode ?? (await ended())).toBe(1);
  });

  it('refuses an option it does not know with exit code 2', async () => {
    await expect(startWithoutDisplay('--fast')).rejects.toThrow("options: Unknown option '--fast'");
    expect(child?.exitCode ?? (await ended())).toBe(2);
  });
});
