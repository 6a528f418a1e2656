import { describe, expect, it } from 'vitest';
import { ThrowsReportSchema } from '../../../core/player/throws-report.ts';
import { tinyPlayer } from '../tiny-round.ts';
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

  it('without a player it is a usage error', async () => {
    expect(await runLine(['throws'])).toMatchObject({ code: 2, err: expect.stringContaining('--player') });
  });
});
