import { describe, expect, it } from 'vitest';
import { PuttingReportSchema } from '../../../core/player/putting-report.ts';
import { tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine } from './run-line.ts';

describe('putting', () => {
  it('reports as JSON what its schema says', async () => {
    const { code, out, err } = await runLine(['putting', '--player', fileWith('p.json', tinyPlayer()), '--json']);
    expect([code, err]).toEqual([0, '']);
    const report = PuttingReportSchema.parse(JSON.parse(out));
    // tinyPlayer: 38 of 40 from 3 m, 16 of 40 from 8 m
    expect(report.circles[0]).toMatchObject({ name: 'C1', attempts: 80, makes: 54 });
  });

  it('draws the log within the width, in metres or feet', async () => {
    const file = fileWith('p.json', tinyPlayer());
    for (const columns of [80, 100]) {
      const { code, out } = await runLine(['putting', '--player', file, '--units', 'feet'], columns);
      expect(code).toBe(0);
      expect(Math.max(...out.split('\n').map(line => line.length))).toBeLessThanOrEqual(columns);
      // 8 m = 26.2 ft; Wilson 95 % of 16/40: 26–55 % [C]
      expect(out).toMatch(/26\.2 +40 +16 +40 % +26 %–55 %/);
      expect(out).toContain('- C1, up to 33 ft: 54 of 80 made, 68 %');
      expect(out).toContain('- C2, over 33 ft to 66 ft: none tried');
    }
  });

  it('a player without a log is told so', async () => {
    const { code, out } = await runLine(['putting', '--player', fileWith('p.json', { ...tinyPlayer(), putting: [] })]);
    expect(code).toBe(0);
    expect(out).toContain('No putts logged');
  });

  it('says where a file is wrong', async () => {
    const file = fileWith('p.json', { ...tinyPlayer(), putting: [{ distance_m: 3, attempts: 4, makes: 5 }] });
    const { code, err } = await runLine(['putting', '--player', file]);
    expect([code, err]).toEqual([1, `${file}: putting[0].makes: is 5, more than the 4 attempts\n`]);
  });
});
