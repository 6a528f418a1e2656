import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ThrowsImportSchema } from '../../../backend/fieldwork/import-report.ts';
import { tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine, temporaryFolder } from './run-line.ts';

const TABLE = 'Dist;Off;Disc;Date\n262,5;3 L;plain midrange;13/4/2026\n270;;mid;13/4/2026\n200;x;nope;\n';
const MAPPED = ['--map', 'Dist=distance_ft', '--map', '#2=side_m'];
const player = () => fileWith('p.json', tinyPlayer());

describe('throws --csv', () => {
  it('shows what would be added and what it does to the fit, and writes nothing', async () => {
    const [file, csv] = [player(), fileWith('t.csv', TABLE)];
    const before = readFileSync(file, 'utf8');
    const words = ['throws', '--player', file, '--csv', csv, ...MAPPED, '--leave-out', '1'];
    const { code, out, err } = await runLine(words);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('Tiny Player: 2 throws in 1 session would be added (2026-04-13: 2).');
    expect(out).toMatch(/Plain midrange +back +2 +\d+ ±\d+ +\d+ ±\d+/);
    expect(out).toContain('Nothing is written');
    expect(readFileSync(file, 'utf8')).toBe(before);
    const json = await runLine([...words, '--json']);
    const report = ThrowsImportSchema.parse(JSON.parse(json.out));
    expect(report).toMatchObject({ added: { throws: 2 }, leftOut: { bad: 1, known: 0 }, written: null });
    // n before: tinyPlayer's 9 backhand throws of it, none an outlier
    expect(report.changed).toMatchObject([{ discId: 'mid', hand: 'backhand', added: 2, before: { n: 9 } }]);
    expect(report.changed[0]!.after.n).toBeGreaterThan(9);
  });

  it('writes the player whole, who then has the throws', async () => {
    const out = join(temporaryFolder(), 'new.json');
    const csv = fileWith('t.csv', TABLE);
    const words = ['throws', '--player', player(), '--csv', csv, ...MAPPED, '--leave-out', '1', '--out', out];
    expect(await runLine(words)).toMatchObject({ code: 0, err: '' });
    const written = JSON.parse(readFileSync(out, 'utf8'));
    // 262.5 ft and 270 ft: exact factor 0.3048
    expect(written.sessions[1]).toEqual({
      date: '2026-04-13',
      throws: [
        { discId: 'mid', hand: 'backhand', shape: 'flat', power: 'full', distance_m: 80.01, side_m: -3 },
        { discId: 'mid', hand: 'backhand', shape: 'flat', power: 'full', distance_m: 82.296 },
      ],
    });
    expect(written.sessions[0].throws).toHaveLength(21);
    const again = await runLine(['throws', '--player', out, '--csv', csv, ...MAPPED, '--leave-out', '1']);
    expect(again).toMatchObject({ code: 1, err: expect.stringContaining('holds only throws the player has already') });
  });

  it.each([
    {
      what: 'a bad row',
      more: MAPPED,
      err: [/line 4, Disc: "nope" is no disc/, /line 4, Off: "x" is not a number/, /--leave-out 1/],
    },
    { what: 'a wrong count of bad rows', more: [...MAPPED, '--leave-out', '2'], err: [/1 of 3 rows are bad/] },
    { what: 'a column without unit', more: [], err: [/Dist: has no unit/] },
    {
      what: 'a column that is not there',
      more: ['--map', 'Far=distance_ft'],
      err: [/"Far" is no column.*"Dist" \(#1\)/],
    },
  ])('$what: exit 1, everything named, nothing written', async ({ more, err }) => {
    const out = join(temporaryFolder(), 'new.json');
    const csv = fileWith('t.csv', TABLE);
    const outcome = await runLine(['throws', '--player', player(), '--csv', csv, '--out', out, ...more]);
    expect([outcome.code, outcome.out]).toEqual([1, '']);
    for (const pattern of err) expect(outcome.err).toMatch(pattern);
    expect(
      outcome.err
        .split('\n')
        .filter(line => line !== '')
        .every(line => line.startsWith(csv)),
    ).toBe(true);
    expect(existsSync(out)).toBe(false);
  });

  it('a table with one column, and everything said by options', async () => {
    const csv = fileWith('t.csv', '60,5\n61\n');
    const words = ['throws', '--player', player(), '--csv', csv, '--separator', 'semicolon', '--no-header'];
    const told = ['--map', '#1=distance_m', '--disc', 'mid', '--hand', 'forehand', '--json'];
    const { code, out, err } = await runLine([...words, ...told]);
    expect([code, err]).toEqual([0, '']);
    expect(ThrowsImportSchema.parse(JSON.parse(out)).changed).toMatchObject([
      { discId: 'mid', hand: 'forehand', added: 2 },
    ]);
  });

  it.each([
    { words: ['--map', 'Dist=distance_ft'], says: "option '--map' says nothing without --csv" },
    { words: ['--out', 'x.json'], says: "option '--out' says nothing without --csv" },
    { words: ['--csv', 'x', '--map', 'Dist=furlongs'], says: 'is no meaning of a column' },
    { words: ['--csv', 'x', '--separator', 'pipe'], says: 'comma, semicolon or tab' },
    { words: ['--csv', 'x', '--leave-out', 'some'], says: 'whole number of rows' },
  ])('$words: a usage error', async ({ words, says }) =>
    expect(await runLine(['throws', '--player', player(), ...words])).toMatchObject({
      code: 2,
      err: expect.stringContaining(says),
    }),
  );

  it('--export writes a table that goes in again', async () => {
    const csv = join(temporaryFolder(), 'out.csv');
    const file = player();
    const { code, out } = await runLine(['throws', '--player', file, '--export', csv, '--units', 'feet']);
    expect([code, out]).toEqual([0, `21 throws written to ${csv}\n`]);
    const bare = fileWith('b.json', { ...tinyPlayer(), sessions: [{ throws: [{ discId: 'throw', distance_m: 60 }] }] });
    const back = await runLine(['throws', '--player', bare, '--csv', csv, '--json']);
    expect(ThrowsImportSchema.parse(JSON.parse(back.out)).added.throws).toBe(21);
  });
});
