import { describe, expect, it } from 'vitest';
import { ThrowsReportSchema } from '../../../core/player/throws-report.ts';
import { MeasureNextSchema } from '../../../core/strategy/measure-next.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine } from './run-line.ts';

describe('throws', () => {
  it('reports as JSON what its schema says', async () => {
    const { code, out, err } = await runLine(['throws', '--player', fileWith('p.json', tinyPlayer()), '--json']);
    expect([code, err]).toEqual([0, '']);
    const report = ThrowsReportSchema.parse(JSON.parse(out));
    expect(report.player).toBe('Tiny Player');
    expect(report.throws.map(t => `${t.discId} ${t.hand}`)).toContain('mid forehand');
  });

  it('draws a table within the width, the putting disc marked, and says how the putts go', async () => {
    const file = fileWith('p.json', tinyPlayer());
    for (const columns of [80, 100]) {
      const { code, out } = await runLine(['throws', '--player', file], columns);
      expect(code).toBe(0);
      expect(Math.max(...out.split('\n').map(line => line.length))).toBeLessThanOrEqual(columns);
      expect(out).toContain('Home putter (putting)');
      expect(out).toMatch(/Plain midrange +back .* measured/);
      expect(out).toContain('(80 putts)');
    }
  });

  // where: the place the test put the fault
  it.each([
    { path: 'discs[1].speed', change: { discs: tinyPlayer().discs.map(disc => ({ ...disc, speed: 'fast' })) } },
    { path: 'handedness', change: { handedness: 'both' } },
    { path: 'sessions', change: { sessions: [] } },
    {
      path: 'sessions[0].throws[0].distance_m',
      change: { sessions: [{ throws: [{ discId: 'mid', distance_m: 900 }] }] },
    },
  ])('a fault at $path: exit 1, file and place named', async ({ path, change }) => {
    const player = { ...tinyPlayer(), ...change };
    const file = fileWith('p.json', player);
    const { code, out, err } = await runLine(['throws', '--player', file]);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain(`${file}: ${path}: `);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('with a course says which disc to measure next, in the table and as JSON by its schema', async () => {
    const words = [
      'throws',
      '--player',
      fileWith('p.json', tinyPlayer()),
      '--course',
      fileWith('c.geojson', tinyCourse()),
      '--holes',
      '1',
    ];
    const table = await runLine(words);
    expect(table).toMatchObject({ code: 0, err: '' });
    expect(table.out).toContain('What to measure next for Tiny Links (one session of 10 throws)');
    expect(table.out).toContain('The bag by distance and finish');
    expect(Math.max(...table.out.split('\n').map(line => line.length))).toBeLessThanOrEqual(100);
    const { out } = await runLine([...words, '--session', '20', '--json']);
    const report = JSON.parse(out);
    expect(ThrowsReportSchema.parse(report).schema).toBe('roundwright/throws@1');
    expect(MeasureNextSchema.parse(report.measureNext)).toMatchObject({ holes: ['1'], throws: 20 });
  }, 120_000);

  it('names an option that says nothing without a course, a course it cannot read, and a session too small', async () => {
    const player = fileWith('p.json', tinyPlayer());
    const course = fileWith('c.geojson', tinyCourse());
    expect(await runLine(['throws', '--player', player, '--wind', '4'])).toMatchObject({
      code: 2,
      err: expect.stringContaining("'--wind' says nothing without --course"),
    });
    expect(await runLine(['throws', '--player', player, '--course', fileWith('c.geojson', '{')])).toMatchObject({
      code: 1,
      out: '',
    });
    const small = await runLine(['throws', '--player', player, '--course', course, '--session', '1']);
    expect(small).toMatchObject({ code: 2, err: expect.stringContaining('--session') });
  });

  it('without a player it is a usage error', async () => {
    expect(await runLine(['throws'])).toMatchObject({ code: 2, err: expect.stringContaining('--player') });
  });
});
