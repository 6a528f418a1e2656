import { describe, expect, it } from 'vitest';
import { ReviewReportSchema } from '../../../core/review/review-report.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine } from './run-line.ts';

const ROUND = {
  schema: 'roundwright/round@1',
  date: '2026-05-30',
  day: { wind: { speed_mps: 2, from_deg: 90 } },
  holes: [
    {
      ref: '1',
      throws: [
        { discId: 'mid', shape: 'flat', power: 1, rest: { toBasket_m: 15 } },
        { rest: { toBasket_m: 3 } },
        { discId: 'putt', holed: true },
      ],
    },
  ],
};
const files = (round: object | string, name = 'round.json') => [
  fileWith(name, round),
  '--course',
  fileWith('c.geojson', tinyCourse()),
  '--player',
  fileWith('p.json', tinyPlayer()),
];

describe('review', () => {
  it('reports as JSON what its schema says, in both winds, every gain accounted for', async () => {
    const real = ['--wind', '12mph', '--wind-from', 'W'];
    const { code, out, err } = await runLine(['review', ...files(ROUND), ...real, '--json']);
    expect([code, err]).toEqual([0, '']);
    const report = ReviewReportSchema.parse(JSON.parse(out));
    // 12 mph = 5.364 m/s, exact mile; given at 10 m
    expect(Math.abs(report.asItWas!.air.windSpeed_mps - 5.364)).toBeLessThan(0.001);
    expect(report.asPlanned.air.windSpeed_mps).toBe(2);
    for (const wind of [report.asPlanned, report.asItWas!]) {
      const [hole] = wind.holes;
      const sum = hole!.throws.reduce((total, t) => total + t.gain.throws, 0);
      expect(Math.abs(sum - (hole!.startValue.throws - hole!.score))).toBeLessThan(1e-9);
    }
  }, 60_000);

  it('draws tables within the width, throws with --detail', async () => {
    const args = files(ROUND);
    for (const columns of [80, 100]) {
      const { code, out } = await runLine(['review', ...args, '--detail'], columns);
      expect(code).toBe(0);
      expect(Math.max(...out.split('\n').map(line => line.length))).toBeLessThanOrEqual(columns);
      expect(out).toMatch(/Plain midrange/);
      expect(out).toMatch(/inside 10 m/);
      expect(out).toContain('the disc was not written');
    }
  }, 60_000);

  it('reads a table of throws', async () => {
    const table = 'date,hole,disc,rest_to_basket_m,holed\n2026-05-30,1,Plain midrange,4,\n,1,putt,,yes\n';
    const { code, out } = await runLine(['review', ...files(table, 'round.csv')]);
    expect(code).toBe(0);
    expect(out).toContain('2026-05-30');
  }, 60_000);

  // where: the place the test put the fault
  it.each([
    { path: 'date', round: { ...ROUND, date: 'May' } },
    { path: 'holes[0].ref', round: { ...ROUND, holes: [{ ...ROUND.holes[0], ref: '7' }] } },
    { path: 'holes', round: { ...ROUND, holes: [{ ref: '1', throws: [{ discId: 'mid' }] }] } },
    { path: 'limits', round: { ...ROUND, limits: { classes: ['distance'] } } },
    { path: 'day.metar', round: { ...ROUND, day: { metar: 'rubbish' } } },
  ])('a fault at $path: exit 1, file and place named', async ({ path, round }) => {
    const args = files(round);
    const { code, out, err } = await runLine(['review', ...args]);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain(`${args[0]}: ${path}: `);
  });

  it('without a course or player it is a usage error', async () => {
    expect(await runLine(['review', fileWith('r.json', ROUND)])).toMatchObject({ code: 2 });
  });
});
