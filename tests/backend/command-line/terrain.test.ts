import { describe, expect, it } from 'vitest';
import { HolesReportSchema } from '../../../backend/api/describe-course.ts';
import { PlanReportSchema } from '../../../core/strategy/plan-report.ts';
import { modelFile } from '../terrain/model-file.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine } from './run-line.ts';

// The tiny holes run 80 m east; invented ground rising 3 cm a metre that way: 2.4 m, by hand.
const model = (name = 'valley.tif') =>
  modelFile({
    code: 32635,
    lon_deg: 25.0007,
    lat_deg: 60.0009,
    pixel: 3,
    side: 301,
    height: dx => 40 + 0.03 * dx,
    name,
  });
const course = () => fileWith('tiny.geojson', tinyCourse());

describe('--terrain', () => {
  it('holes: gives the rise', async () => {
    const { code, out, err } = await runLine(['holes', course(), '--terrain', model(), '--json']);
    expect([code, err]).toEqual([0, '']);
    const { holes, notMapped } = HolesReportSchema.parse(JSON.parse(out));
    for (const hole of holes) expect(Math.abs(hole.rise_m! - 2.4)).toBeLessThanOrEqual(0.05);
    expect(notMapped).not.toContain('heights');
  });

  it('check: says where the ground comes from', async () => {
    const { code, out } = await runLine(['check', course(), '--terrain', model(), '--surface', model('tops.tif')]);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain('terrain: the ground is read from valley.tif, EPSG:32635');
  });

  it('plan: plays the hole uphill', async () => {
    const words = ['plan', course(), '--player', fileWith('p.json', tinyPlayer()), '--holes', '1', '--json'];
    const flat = PlanReportSchema.parse(JSON.parse((await runLine(words)).out));
    const { code, out } = await runLine([...words, '--terrain', model()]);
    expect(code).toBe(0);
    const uphill = PlanReportSchema.parse(JSON.parse(out));
    expect(JSON.stringify(uphill.holes[0]!.choice)).not.toBe(JSON.stringify(flat.holes[0]!.choice));
  });

  it.each([
    [['--terrain', '/no/such.tif'], '--terrain: there is no such file'],
    [['--surface', '/no/such.tif'], '--surface: says nothing without --terrain'],
  ])('%j is refused', async (words, want) => {
    const { code, err } = await runLine(['holes', course(), ...words]);
    expect(code).toBe(1);
    expect(err).toContain(want);
  });
});
