import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { openBrowser } from '../../../backend/sheet/open-browser.ts';
import { faultsOfMarkup, textOf } from '../../core/sheet/well-formed.ts';
import { fileWith, runLine, temporaryFolder } from '../command-line/run-line.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';

const opened = await openBrowser();
if (opened.ok) await opened.value.close();

describe('sheet', () => {
  let course: string;
  let player: string;
  let folder: string;
  const sheet = (name: string, ...words: string[]) =>
    runLine(['sheet', course, '--player', player, '--out', join(folder, name), ...words]);
  const written = () => readdirSync(folder).sort();

  beforeAll(() => {
    course = fileWith('tiny.geojson', tinyCourse());
    player = fileWith('p.json', tinyPlayer());
    folder = temporaryFolder();
  });
  afterEach(() => vi.unstubAllEnvs());

  it('writes the sheet of a plan, replacing what was there, and says so', async () => {
    writeFileSync(join(folder, 'a.html'), 'old');
    const { code, out, err } = await sheet('a.html', '--wind', '9mph', '--wind-from', 'W');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('a.html: 2 holes');
    expect(written()).toEqual(['a.html']);
    const html = readFileSync(join(folder, 'a.html'), 'utf8');
    expect(faultsOfMarkup(html)).toEqual([]);
    const text = textOf(html);
    expect(text).toContain('Tiny Links');
    expect(text).toContain('Tiny Player');
    expect(text).toContain('wind 4.0 m/s from 270° (W)'); // 9 × 0.44704 = 4.02, NIST SP 811 B.8
    expect(html).toContain('class="flight"');
    expect(html.match(/class="card"/g)).toHaveLength(2);
  });

  it('takes format, paper, units, holes and attitude', async () => {
    const words = ['--format', 'four', '--paper', 'letter', '--units', 'feet', '--wind-units', 'kn', '--holes', '2'];
    const { code } = await sheet('b.html', ...words, '--wind', '4', '--wind-from', 'N', '--attitude', 'guard');
    expect(code).toBe(0);
    const html = readFileSync(join(folder, 'b.html'), 'utf8');
    expect(html).toContain('size: 215.9mm 279.4mm'); // US Letter, 8.5 × 11 in
    expect(html.match(/class="card"/g)).toHaveLength(1);
    expect(textOf(html)).toContain('par 3 · 262 ft'); // 80 m / 0.3048 = 262.5, on the ellipsoid a hair less
    expect(textOf(html)).toContain('wind 8 kn from 0° (N)'); // 4 / 0.5144 = 7.8
    expect(textOf(html)).toContain('guarding against bad scores');
  });

  it.each([
    { words: ['--wind', 'strong'], says: '--wind' },
    { words: ['--format', 'poster'], says: '--format' },
    { words: ['--units', 'yards'], says: '--units' },
    { words: ['--holes', '7'], says: "'--holes'" },
    { words: ['--only', 'distances'], says: '--only' },
  ])('$words: exit 2, saying $says, and nothing is written', async ({ words, says }) => {
    const before = written();
    const { code, out, err } = await sheet('c.html', ...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
    expect(written()).toEqual(before);
  });

  it('says before planning where it cannot write', async () => {
    expect(await sheet('c.doc')).toMatchObject({ code: 2, err: expect.stringContaining('.html or .pdf') });
    expect(await sheet(join('none', 'c.html'))).toMatchObject({
      code: 1,
      out: '',
      err: expect.stringContaining('its folder is not there'),
    });
  });

  it('a broken course leaves the old sheet as it was', async () => {
    writeFileSync(join(folder, 'd.html'), 'old');
    const broken = fileWith('broken.geojson', '{');
    const { code, err } = await runLine(['sheet', broken, '--player', player, '--out', join(folder, 'd.html')]);
    expect(code).toBe(1);
    expect(err).toContain(`${broken}: line 1`);
    expect(readFileSync(join(folder, 'd.html'), 'utf8')).toBe('old');
  });

  it('without a browser says how to go on, and writes nothing', async () => {
    vi.stubEnv('ROUNDWRIGHT_BROWSER', join(folder, 'no-such-browser'));
    const before = written();
    const { code, out, err } = await sheet('e.pdf');
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('ROUNDWRIGHT_BROWSER');
    expect(err).toContain('.html');
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(written()).toEqual(before);
  });

  // on machines for which npm brings no Chromium and none is installed there is nothing to print with
  it.runIf(opened.ok)('makes a PDF', async () => {
    const { code, err } = await sheet('f.pdf', '--holes', '1');
    expect([code, err]).toEqual([0, '']);
    const pdf = readFileSync(join(folder, 'f.pdf')).toString('latin1');
    expect(pdf.startsWith('%PDF-')).toBe(true);
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(4); // round, list, marks, one hole
    expect(written().filter(name => name.includes('part'))).toEqual([]);
  });
});
