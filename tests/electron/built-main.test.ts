import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHOWN, STOPPED } from '../../electron/spoken-lines.ts';
import { bundleMain, bundlePreload } from '../../start/bundle-shell.ts';

const ROOT = resolve(import.meta.dirname, '..', '..');
const DRIVER = join(import.meta.dirname, 'stand-in', 'drive-built-main.ts');

// The bundle `npm start` makes: the real main process with the real backend, its threads and its library.
describe('the built shell', () => {
  let dist: string;
  let folder: string;

  beforeAll(async () => {
    // Inside node_modules, so that the bundle finds its packages.
    mkdirSync(join(ROOT, 'node_modules', '.cache'), { recursive: true });
    dist = mkdtempSync(join(ROOT, 'node_modules', '.cache', 'shell-'));
    folder = mkdtempSync(join(tmpdir(), 'roundwright-built-'));
    mkdirSync(join(dist, 'renderer'));
    writeFileSync(join(dist, 'renderer', 'index.html'), '<!doctype html><title>Roundwright</title>');
    await Promise.all([bundleMain(ROOT, join(dist, 'electron')), bundlePreload(ROOT, join(dist, 'electron'))]);
  });
  afterAll(() => {
    rmSync(dist, { recursive: true, force: true });
    rmSync(folder, { recursive: true, force: true });
  });

  const drive = (library: string) =>
    promisify(execFile)(process.execPath, [DRIVER, join(dist, 'electron', 'main.js'), `--data=${library}`], {
      env: { ...process.env, STAND_IN_FOLDER: join(folder, 'profile') },
    });

  it('has its threads beside it', () =>
    expect(readdirSync(join(dist, 'electron'))).toEqual(
      expect.arrayContaining(['main.js', 'plan-worker.js', 'preload.cjs']),
    ));

  it('plans a hole of the sample round and makes its sheet', async () => {
    const { stdout } = await drive(join(folder, 'library'));
    const lines = stdout.trim().split('\n');
    expect(lines).toContain(SHOWN);
    const seen = JSON.parse(lines.at(-1)!);
    expect(seen).toMatchObject({
      url: 'roundwright://app/index.html',
      total: 1,
      sheet: { status: 200, holdsHole: true },
    });
    expect(seen.courses.length).toBeGreaterThan(0);
    expect(seen.events).toEqual(expect.arrayContaining(['planProgress', 'holePlanned', 'planDone']));
  });

  it('ends with a word about why when the library cannot be opened', async () => {
    const inTheWay = join(folder, 'a-file');
    writeFileSync(inTheWay, '');
    await expect(drive(inTheWay)).rejects.toMatchObject({ code: 1, stdout: expect.stringContaining(STOPPED) });
  });
});
