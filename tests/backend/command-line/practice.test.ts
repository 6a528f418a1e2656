import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PracticeReportSchema } from '../../../core/practice/practice-report.ts';
import { line, point } from '../../core/course/course-file.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine, temporaryFolder } from './run-line.ts';

/** A folder with the two holes of 80 m, one more of 200 m from the back and 60 m from the front tee, one of 190 m, and a broken file. */
function courseFolder(): string {
  const folder = join(temporaryFolder(), 'courses');
  mkdirSync(folder);
  const long = [
    point([0, 400], { disc_golf: 'tee', ref: '3', name: 'back' }),
    point([140, 400], { disc_golf: 'tee', ref: '3', name: 'front' }),
    point([200, 400], { disc_golf: 'basket', ref: '3' }),
    line(
      [
        [0, 400],
        [200, 400],
      ],
      { disc_golf: 'hole', ref: '3', par: '3' },
    ),
    point([0, 600], { disc_golf: 'tee', ref: '4' }),
    point([190, 600], { disc_golf: 'basket', ref: '4' }),
    line(
      [
        [0, 600],
        [190, 600],
      ],
      { disc_golf: 'hole', ref: '4', par: '3' },
    ),
  ];
  writeFileSync(join(folder, 'tiny.geojson'), JSON.stringify(tinyCourse(...long)));
  writeFileSync(join(folder, 'notes.txt'), 'not a course');
  return folder;
}

const player = () => fileWith('p.json', tinyPlayer());

describe('practice', () => {
  it('finds holes and tees, a target, drills and cautions, as JSON its schema says, and writes the sheet', async () => {
    const out = join(temporaryFolder(), 'sheet.html');
    const words = ['practice', '--player', player(), '--courses', courseFolder(), '--json', '--out', out];
    const done = await runLine(words);
    expect([done.code, done.err]).toEqual([0, `${out}: the practice sheet, ready to print at 100 %\n`]);
    const report = PracticeReportSchema.parse(JSON.parse(done.out));
    expect(report.limitWords).toBe('putters only');
    expect(report.discs).toEqual(['Throwing putter']);
    const [round] = report.rounds;
    expect(round!.holes.map(({ ref, tee }) => `${ref} ${tee}`)).toEqual(['1 tee', '2 tee', '3 front tee']);
    expect(round!.skip.map(({ ref }) => ref)).toEqual(['4']);
    expect(round!.skip[0]!.text).toMatch(/^too long: 190 m/);
    for (const hole of round!.holes) {
      expect(hole.shot.discId).toBe('throw');
      // the whole bag holds a midrange that goes further: the limit cannot help (0.05: sampling)
      expect(hole.limitCosts!).toBeGreaterThan(-0.05);
      const shares = hole.scoreDistribution.reduce((sum, { chance }) => sum + chance, 0);
      expect(Math.abs(shares - 1)).toBeLessThan(1e-9);
      const mean = hole.scoreDistribution.reduce((sum, { throws, chance }) => sum + throws * chance, 0);
      expect(Math.abs(mean - hole.expectedThrows)).toBeLessThan(1e-9);
    }
    const { target } = round!;
    expect(target.overPar).toBe(target.throws - 9);
    const within = round!.distribution.reduce(
      (sum, { throws, chance }) => (throws <= target.throws ? sum + chance : sum),
      0,
    );
    expect(Math.abs(within - target.chance)).toBeLessThan(2e-3);
    expect(round!.cautions[0]).toContain('Never throw while anyone could be hit');
    expect(round!.cautions.join(' ')).toContain('From another tee than usual');
    const sheet = readFileSync(out, 'utf8');
    expect(sheet).toContain('Practice at Tiny Links');
    expect(sheet).toContain(`<b>Target</b> ${target.throws}`);
  }, 120_000);

  it('draws tables within the width, says what was left out, and takes limits of hands and lines', async () => {
    const folder = courseFolder();
    writeFileSync(join(folder, 'broken.geojson'), '{"type":');
    const words = ['practice', '--player', player(), '--courses', folder, '--no-compare', '--holes', '2'];
    const { code, out, err } = await runLine([...words, '--limit', 'disc:mid,forehand,hyzer', '--units', 'feet'], 80);
    expect(code).toBe(0);
    expect(err).toContain('broken.geojson: left out of the search');
    expect(Math.max(...out.split('\n').map(text => text.length))).toBeLessThanOrEqual(80);
    expect(out).toContain('one disc: Plain midrange, forehand only, hyzer lines only');
    expect(out).toMatch(/Forehand only loads elbow and\s+shoulder one way/);
    expect(out).not.toContain('costs');
    // the table's line column: every throw bent as the limit asks
    expect(out).toMatch(/hyzer,\s+forehand/);
    expect(out).not.toMatch(/, flat/);
  }, 120_000);

  it('says so when everything is too long, and writes no sheet', async () => {
    const out = join(temporaryFolder(), 'sheet.html');
    const long = fileWith('long.geojson', {
      type: 'FeatureCollection',
      features: [point([0, 0], { disc_golf: 'tee', ref: '1' }), point([180, 0], { disc_golf: 'basket', ref: '1' })],
    });
    const plain = await runLine(['practice', '--player', player(), '--courses', long]);
    expect(plain.code).toBe(0);
    expect(plain.out).toContain('Too long for this limit: the shortest hole is 180 m');
    const withSheet = await runLine(['practice', '--player', player(), '--courses', long, '--out', out]);
    expect(withSheet.code).toBe(1);
    expect(withSheet.err).toContain(`${out}: was not written`);
    expect(existsSync(out)).toBe(false);
  }, 60_000);

  it.each([
    { words: ['--limit', 'plates'], code: 2, says: '"plates" is not known' },
    { words: ['--limit', 'disc:none'], code: 2, says: 'option \'--limit\': Tiny Player has no disc "none"' },
    { words: ['--limit', 'distances'], code: 2, says: 'has no disc of class distance' },
    { words: ['--limit', 'neutral,disc:putt'], code: 2, says: 'kept for putting' },
    { words: ['--holes', '0'], code: 2, says: 'write a whole number from 1 to 36' },
    { words: ['--out', 'sheet.doc'], code: 2, says: 'must end in .html or .pdf' },
    { words: ['--wind', '-3'], code: 2, says: "option '--wind'" },
  ])('refuses $words with exit $code and how to mend it', async ({ words, code, says }) => {
    const done = await runLine([
      'practice',
      '--player',
      player(),
      '--courses',
      fileWith('c.geojson', tinyCourse()),
      ...words,
    ]);
    expect([done.code, done.out]).toEqual([code, '']);
    expect(done.err).toContain(says);
  });

  it('refuses a folder that is not there, or holds no course', async () => {
    const nowhere = await runLine(['practice', '--player', player(), '--courses', join(temporaryFolder(), 'none')]);
    expect(nowhere.code).toBe(1);
    expect(nowhere.err).toContain('is not there or cannot be read');
    const empty = await runLine(['practice', '--player', player(), '--courses', temporaryFolder()]);
    expect(empty.code).toBe(1);
    expect(empty.err).toContain('holds no course file');
  });
});
