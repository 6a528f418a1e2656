import { describe, expect, it } from 'vitest';
import { CheckReportSchema } from '../../../backend/api/check-course.ts';
import { HolesReportSchema } from '../../../backend/api/describe-course.ts';
import { PlanReportSchema } from '../../../core/strategy/plan-report.ts';
import { feature, point } from '../../core/course/course-file.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine } from './run-line.ts';

const course = () =>
  fileWith(
    'layouts.geojson',
    tinyCourse(
      point([30, 3], { disc_golf: 'tee', ref: '1', name: 'Short' }),
      feature(null, { disc_golf: 'layout', name: 'Back first', holes: [{ ref: '2' }, { ref: '1', tee: 'short' }] }),
    ),
  );

describe('--layout', () => {
  it('plays the layout: holes', async () => {
    const { code, out } = await runLine(['holes', course(), '--layout', 'back first', '--json']);
    const report = HolesReportSchema.parse(JSON.parse(out));
    expect([code, report.course]).toEqual([0, 'Tiny Links, Back first']);
    expect(report.holes.map(({ ref }) => ref)).toEqual(['2', '1']);
    // From the tee at [30, 3] to the basket at [80, 0]: √(50² + 3²) by hand.
    expect(Math.abs(report.holes[1]!.length_m - Math.hypot(50, 3))).toBeLessThan(0.05);
  });

  it('plays the layout: plan, in its order', async () => {
    const player = fileWith('player.json', tinyPlayer());
    const line = ['plan', course(), '--player', player, '--layout', 'Back first', '--holes', '1', '--json'];
    const { code, out } = await runLine(line);
    const plan = PlanReportSchema.parse(JSON.parse(out));
    expect([code, plan.course, plan.holes.map(({ ref }) => ref)]).toEqual([0, 'Tiny Links, Back first', ['1']]);
    expect(Math.abs(plan.holes[0]!.length_m - Math.hypot(50, 3))).toBeLessThan(0.05);
  });

  it('is listed by check, in words and as JSON', async () => {
    const { out } = await runLine(['check', course()]);
    expect(out).toContain('layout:     "Back first" plays 2, 1 (short)');
    const json = await runLine(['check', course(), '--layout', 'Back first', '--json']);
    expect(CheckReportSchema.parse(JSON.parse(json.out)).layouts).toEqual([
      { name: 'Back first', holes: [{ ref: '2' }, { ref: '1', tee: 'short' }] },
    ]);
  });

  it('that is not there is a usage error that names those that are', async () => {
    for (const verb of ['check', 'holes']) {
      const { code, err } = await runLine([verb, course(), '--layout', 'Blue']);
      expect(code).toBe(2);
      expect(err).toContain(`option '--layout': the course has no layout "Blue": it has "Back first"`);
    }
  });
});
