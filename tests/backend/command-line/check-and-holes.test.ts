import { describe, expect, it } from 'vitest';
import { CheckReportSchema } from '../../../backend/api/check-course.ts';
import { HolesReportSchema } from '../../../backend/api/describe-course.ts';
import { area, point, square } from '../../core/course/course-file.ts';
import { tinyCourse } from '../tiny-round.ts';
import { fileWith, runLine, temporaryFolder } from './run-line.ts';

const tree = (properties: object) => point([20, 20], { natural: 'tree', ...properties });

describe('check', () => {
  it('says what is mapped, what is not, and what to confirm', async () => {
    const file = fileWith('tiny.geojson', tinyCourse(tree({ height: '5' })));
    const { code, out, err } = await runLine(['check', file]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain(`${file}: ok, "Tiny Links"`);
    expect(out).toContain('2 holes, 2 tees, 2 baskets, 2 trees, 1 place where people pass');
    expect(out.replace(/\s+/g, ' ')).toContain('not mapped: out-of-bounds, mandos, ceilings');
    expect(out).toContain('features[9]: 1 tree has no diameter_crown');
  });

  it('writes its report as JSON, good or bad', async () => {
    const good = await runLine(['check', fileWith('tiny.geojson', tinyCourse()), '--json']);
    expect(CheckReportSchema.parse(JSON.parse(good.out))).toMatchObject({
      ok: true,
      course: 'Tiny Links',
      problems: [],
    });
    const bad = await runLine(['check', fileWith('tiny.geojson', tinyCourse(tree({ height: 'tall' }))), '--json']);
    expect(bad.code).toBe(1);
    const report = CheckReportSchema.parse(JSON.parse(bad.out));
    expect(report).toMatchObject({ ok: false, course: null });
    expect(report.problems[0]!.path).toBe('features[9].properties.height');
    expect(bad.err).toContain('features[9].properties.height');
  });

  // which feature and property: the place the test put the fault
  it.each([
    {
      name: 'text for a height',
      content: () => tinyCourse(tree({ height: 'tall' })),
      path: 'features[9].properties.height',
    },
    {
      name: 'a crown above the top',
      content: () => tinyCourse(tree({ height: '4', min_height: '6' })),
      path: 'features[9].properties.height',
    },
    {
      name: 'a mando without a known side',
      content: () => tinyCourse(point([30, 2], { disc_golf: 'mando', mando: 'round' })),
      path: 'features[9].properties.mando',
    },
    {
      name: 'a latitude past the pole',
      content: () =>
        tinyCourse({
          type: 'Feature',
          properties: { natural: 'tree' },
          geometry: { type: 'Point', coordinates: [25, 95] },
        }),
      path: 'features[9].geometry.coordinates',
    },
    {
      name: 'an area that is not closed',
      content: () =>
        tinyCourse({
          ...(area(square(0, 30, 5), { natural: 'wood' }) as object),
          geometry: {
            type: 'Polygon',
            coordinates: [
              [
                [25, 60],
                [25.001, 60],
                [25.001, 60.001],
                [25, 60.0005],
              ],
            ],
          },
        }),
      path: 'features[9].geometry.coordinates[0]',
    },
    { name: 'no course at all', content: () => '{"type": "FeatureCollection", "features": []}', path: 'features' },
    { name: 'broken JSON', content: () => '{"type": "FeatureCollection",\n "features": [}', path: 'line 2, column' },
    { name: 'an empty file', content: () => '', path: 'line 1, column 1' },
    { name: 'a number', content: () => '12', path: '' },
    { name: 'bytes that are no text', content: () => Uint8Array.of(0x80, 0x81), path: 'is not UTF-8 text' },
  ])('$name: exit 1 on every verb that reads a course, naming $path', async ({ content, path }) => {
    const file = fileWith('broken.geojson', content());
    for (const words of [
      ['check', file],
      ['holes', file],
      ['holes', file, '--json'],
    ]) {
      const { code, out, err } = await runLine(words);
      expect(code).toBe(1);
      expect(out).toBe('');
      expect(err.split('\n')[0]).toContain(`${file}: ${path}`);
      expect(err).not.toMatch(/\n\s+at |Error:/);
    }
  });

  it('names a missing file and a directory', async () => {
    const folder = temporaryFolder();
    expect(await runLine(['check', `${folder}/no.geojson`])).toMatchObject({
      code: 1,
      err: expect.stringContaining('no such file'),
    });
    expect(await runLine(['check', folder])).toMatchObject({ code: 1, err: expect.stringContaining('is a directory') });
  });
});

describe('holes', () => {
  const file = () => fileWith('tiny.geojson', tinyCourse());

  it('reports as JSON what its schema says, lengths within 2 cm', async () => {
    const { code, out, err } = await runLine(['holes', file(), '--json']);
    expect([code, err]).toEqual([0, '']);
    const report = HolesReportSchema.parse(JSON.parse(out));
    expect(report.holes.map(hole => hole.ref)).toEqual(['1', '2']);
    // [C] tee and basket laid out 80 m apart with the metres per degree at 60° north (course-file.ts)
    for (const hole of report.holes) expect(Math.abs(hole.length_m - 80)).toBeLessThanOrEqual(0.02);
  });

  it('draws a row a hole in metres and in feet, and says what is not mapped', async () => {
    const metric = await runLine(['holes', file()]);
    expect(metric.out).toMatch(/^ +1 +3 +80 +80 +090° E /m);
    expect(metric.out).toContain('not mapped: out-of-bounds, mandos, ceilings, heights');
    const feet = await runLine(['holes', file(), '--units', 'feet']);
    expect(feet.out).toMatch(/^ +1 +3 +262 +262 /m); // 80 / 0.3048 = 262.5, on the ellipsoid a hair less: 262
  });

  it('keeps to the width of the terminal', async () => {
    for (const columns of [80, 120]) {
      const { out } = await runLine(['holes', file()], columns);
      expect(Math.max(...out.split('\n').map(line => line.length))).toBeLessThanOrEqual(columns);
    }
  });

  it('tells more of one hole', async () => {
    const { code, out } = await runLine(['holes', file(), '--hole', '1']);
    expect(code).toBe(0);
    expect(out).toContain('hole 1, par 3');
    expect(out).not.toContain('hole 2');
    expect(out).toContain('not mapped (may be there all the same)');
    expect(out).toMatch(/people +cross at 60 m: path/);
  });

  it('a hole that is not there is a usage error', async () => {
    const { code, err } = await runLine(['holes', file(), '--hole', '7']);
    expect(code).toBe(2);
    expect(err).toContain("'--hole'");
    expect(err).toContain('it has 1, 2');
  });
});
