import { spawnSync } from 'node:child_process';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, vi } from 'vitest';
import { fault, run } from '../../../backend/command-line/run.ts';
import { tinyCourse } from '../tiny-round.ts';
import { runLine, temporaryFolder } from './run-line.ts';

const main = fileURLToPath(new URL('../../../backend/command-line/main.ts', import.meta.url));

describe('the program as a process', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'tiny.geojson'), JSON.stringify(tinyCourse()));
  writeFileSync(join(folder, 'broken.geojson'), '{"type": "FeatureCollection"');
  const inFolder = (...words: string[]) =>
    spawnSync(process.execPath, [main, ...words], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1' },
    });

  it.each([
    { words: ['--help'], status: 0, out: 'Usage: roundwright', err: '' },
    { words: ['check', 'tiny.geojson'], status: 0, out: 'tiny.geojson: ok', err: '' },
    { words: ['check', 'broken.geojson'], status: 1, out: '', err: 'broken.geojson: line 1, column ' },
    { words: ['holes', 'tiny.geojson', '--sideways'], status: 2, out: '', err: "unknown option '--sideways'" },
  ])('$words: exit $status; nothing on the wrong stream, nothing written', ({ words, status, out, err }) => {
    const done = inFolder(...words);
    expect(done.status).toBe(status);
    for (const [stream, wanted] of [
      [done.stdout, out],
      [done.stderr, err],
    ] as const) {
      if (wanted === '') expect(stream).toBe('');
      else expect(stream).toContain(wanted);
      expect(stream).not.toContain('\u001b');
      expect(stream).not.toMatch(/\n\s+at /);
    }
    expect(readdirSync(folder).sort()).toEqual(['broken.geojson', 'tiny.geojson']);
  });
});

describe('run', () => {
  it.each([
    { words: [], code: 2, err: 'Usage: roundwright' },
    { words: ['juggle'], code: 2, err: "unknown command 'juggle'" },
    { words: ['check'], code: 2, err: "missing required argument 'course'" },
    { words: ['holes', 'x', '--units'], code: 2, err: "'--units <units>' argument missing" },
  ])('$words: exit $code', async ({ words, code, err }) => {
    const done = await runLine(words);
    expect(done).toMatchObject({ code, out: '' });
    expect(done.err).toContain(err);
  });

  it('lists the verbs there are and no others', async () => {
    const { code, out } = await runLine(['--help']);
    expect(code).toBe(0);
    const verbs = [...out.matchAll(/^ {2}([a-z]+) \[/gm)].map(match => match[1]);
    expect(verbs).toEqual([
      'check',
      'convert',
      'holes',
      'throws',
      'putting',
      'plan',
      'practice',
      'review',
      'sheet',
      'fly',
      'help',
    ]);
  });

  it('a fault of our own is one line and exit 3; the stack only when asked for', async () => {
    vi.stubEnv('ROUNDWRIGHT_DEBUG', '');
    const said: string[] = [];
    const terminal = {
      out: () => {
        throw new Error('broken pipe of mine');
      },
      err: (text: string) => void said.push(text),
      columns: 80,
      colours: false,
      progress: null,
    };
    expect(await run(['fly', '--disc', '7/5/-1/2', '--speed', '20', '--launch', '9'], terminal)).toBe(3);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^roundwright failed: broken pipe of mine\. Please report it[^\n]*\n$/);
    vi.stubEnv('ROUNDWRIGHT_DEBUG', '1');
    fault(new Error('again'), terminal);
    expect(said.at(-1)).toMatch(/\n\s+at /);
    vi.unstubAllEnvs();
  });
});
