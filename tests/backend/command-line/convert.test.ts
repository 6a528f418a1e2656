import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ImportReportSchema } from '../../../backend/import/import-report.ts';
import { fixturePath } from '../import/fixture.ts';
import { fileWith, runLine, temporaryFolder } from './run-line.ts';

const GPX = fixturePath('lantern-hollow.gpx');

describe('convert', () => {
  it('shows what each place is taken for, and writes nothing unasked', async () => {
    const { code, out, err } = await runLine(['convert', GPX]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/Tee 1 long +tee of hole 1, long +yes +by its name/);
    expect(out).toMatch(/Car park +leave out +no/);
    expect(out).toContain('heights (12)');
  });

  it('writes nothing that is only proposed', async () => {
    const file = join(temporaryFolder(), 'course.geojson');
    const { code, err } = await runLine(['convert', GPX, '--out', file]);
    expect(code).toBe(1);
    expect(err).toContain('11 places and lines are only proposed');
    expect(existsSync(file)).toBe(false);
  });

  it('writes a course once all is confirmed, as said', async () => {
    const file = join(temporaryFolder(), 'course.geojson');
    const said = ['--map', 'Walk of 3 May 2026=leave out', '--map', 'Car park=tree'];
    const { code, out } = await runLine([
      'convert',
      GPX,
      ...said,
      '--take-proposed',
      '--name',
      'Hollow',
      '--out',
      file,
    ]);
    expect(code).toBe(0);
    expect(out).toContain('as you said');
    expect(out).toContain(`written: ${file}`);
    const check = await runLine(['check', file, '--json']);
    expect(JSON.parse(check.out)).toMatchObject({ ok: true, course: 'Hollow' });
    expect(readFileSync(file, 'utf8')).toContain('"natural": "tree"');
  });

  it('gives the report for machines', async () => {
    const { code, out } = await runLine(['convert', fixturePath('lantern-hollow.kmz'), '--json']);
    expect(code).toBe(0);
    expect(ImportReportSchema.parse(JSON.parse(out))).toMatchObject({
      ok: true,
      kind: 'kmz',
      course: 'Lantern Hollow',
    });
    const bad = await runLine(['convert', fileWith('a.gpx', '<gpx><wpt lat="95" lon="1"/></gpx>'), '--json']);
    expect(bad.code).toBe(1);
    expect(bad.err).toContain('line 1, column 6: this wpt must have lat');
  });

  it.each([
    ['no role', ['--map', 'T2=teapot'], 'is nothing known'],
    ['no equals sign', ['--map', 'T2'], 'equals sign'],
    [
      'a name that is not there',
      ['--map', 'Tee 4=tee 4'],
      'nothing in the file is named "Tee 4": did you mean "Hole 1 tee", "Tee 1 long"',
    ],
    ['a course that is not there', ['--course', 'Other'], 'holds one course only'],
  ])('%s is a usage error', async (_, words, says) => {
    const { code, err } = await runLine(['convert', GPX, ...words]);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });

  it('says what is wrong with the file and where', async () => {
    const { code, err } = await runLine(['convert', fileWith('a.kml', '<kml>\n<Document>\n</kml>')]);
    expect(code).toBe(1);
    expect(err).toContain('line 3, column 1: </kml> stands where </Document> should close');
  });
});

describe('other verbs', () => {
  it('check takes every kind, and says what is not confirmed', async () => {
    const { code, out } = await runLine(['check', GPX]);
    expect(code).toBe(0);
    expect(out).toContain('is taken as tee of hole 1: not confirmed yet');
  });
  it('holes takes an OpenStreetMap file, but no guess', async () => {
    expect((await runLine(['holes', fixturePath('lantern-hollow.osm')])).code).toBe(0);
    const { code, err } = await runLine(['holes', GPX]);
    expect(code).toBe(1);
    expect(err).toContain('confirm them with "roundwright convert');
  });
});
