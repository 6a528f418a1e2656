import { beforeAll, describe, expect, it } from 'vitest';
import { type PlanReport, PlanReportSchema } from '../../../core/strategy/plan-report.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { fileWith, type Outcome, runLine } from './run-line.ts';

describe('plan', () => {
  let course: string;
  let player: string;
  let json: Outcome;
  let report: PlanReport;
  const plan = (...words: string[]) => runLine(['plan', course, '--player', player, ...words]);

  beforeAll(async () => {
    course = fileWith('tiny.geojson', tinyCourse());
    player = fileWith('p.json', tinyPlayer());
    json = await plan('--wind', '9mph', '--wind-from', 'W', '--json');
    report = PlanReportSchema.parse(JSON.parse(json.out));
  });

  it('writes as JSON what its schema says', () => {
    expect([json.code, json.err]).toEqual([0, '']);
    expect(report.holes.map(hole => hole.ref)).toEqual(['1', '2']);
    expect(Math.abs(report.air.windSpeed_mps - 4.02336)).toBeLessThanOrEqual(1e-9); // 9 × 0.44704, NIST SP 811 B.8
    expect(report.air.windFrom_deg).toBe(270);
    for (const hole of report.holes)
      expect(Math.abs(hole.scoreDistribution.reduce((sum, { chance }) => sum + chance, 0) - 1)).toBeLessThanOrEqual(
        1e-9,
      );
  });

  it('plans a hole alone as it does in the round, and in detail', async () => {
    const words = ['--wind', '9mph', '--wind-from', 'W', '--holes', '2'];
    const alone = PlanReportSchema.parse(JSON.parse((await plan(...words, '--json')).out));
    // one hole alone is also asked what other winds would choose
    expect({ ...alone.holes[0]!, flips: [], nearestFlip: null }).toEqual(report.holes[1]);
    const { out } = await plan(...words);
    expect(out).toContain('Hole 2');
    expect(out).toContain(report.holes[1]!.choice.disc);
    expect(out).toContain('why not');
    expect(out).toContain('Thunder'); // the caution that goes on every plan
  });

  it('says reasons and cautions in feet and miles an hour where these are asked for', async () => {
    const words = ['--wind', '9mph', '--wind-from', 'W', '--detail', '--units', 'feet'];
    const { out } = await plan(...words);
    // the path crosses 60 m out: 60 / 0.3048 = 196.85, NIST SP 811 B.8
    expect(out).toContain('People may cross at 197 ft');
    expect(out).toMatch(/comes up \d+ ft\s+short/);
    expect(out.match(/\d m(\/s)?\b/g)).toBeNull();
  });

  it('gives each hole the wind of its own time', async () => {
    const words = [
      '--winds',
      '[{"time":"09:00","speed_mps":1,"from_deg":270},{"time":"09:30","speed_mps":7,"from_deg":270}]',
    ];
    const { out } = await plan(...words, '--hole-minutes', '15', '--json');
    const { holes, air } = PlanReportSchema.parse(JSON.parse(out));
    // by hand: halfway between 1 and 7 after a quarter of an hour
    expect(holes.map(hole => [hole.wind?.at, hole.wind?.speed_mps])).toEqual([
      ['09:00', 1],
      ['09:15', expect.closeTo(4, 12)],
    ]);
    expect(air.source).toContain('by tee time');
    const shown = await plan(...words, '--holes', '2');
    expect(shown.out).toContain('about 09:10: wind 3.0 m/s from 270° (W)');
    expect(shown.out).toContain('10 minutes a hole (assumed)');
  });

  it('throws only what is allowed', async () => {
    const { out } = await plan('--only', 'putters', '--hand', 'backhand', '--holes', '1', '--json');
    const { holes } = PlanReportSchema.parse(JSON.parse(out));
    const shots = [holes[0]!.choice, ...holes[0]!.alternatives];
    expect(new Set(shots.map(shot => `${shot.discId} ${shot.hand}`))).toEqual(new Set(['throw backhand']));
  });

  it.each([
    { words: ['--wind', 'strong'], says: '--wind' },
    { words: ['--wind', '4'], says: "'--wind-from'" },
    { words: ['--wind', '-4', '--wind-from', '10'], says: "'--wind'" },
    { words: ['--wind', '4', '--wind-from', '400'], says: "'--wind-from'" },
    { words: ['--wind', '4', '--wind-from', 'W', '--gust', '2'], says: "'--gust'" },
    { words: ['--gust', '8'], says: "'--wind'" },
    { words: ['--wind', '4', '--wind-from', 'W', '--wind-height', '100'], says: "'--wind-height'" },
    { words: ['--metar', 'sunny'], says: "'--metar'" },
    { words: ['--winds', '09:00 3'], says: "option '--winds': entry 1: " },
    { words: ['--winds', '09:00 3 from 270', '--wind', '4', '--wind-from', 'W'], says: "'--winds'" },
    { words: ['--winds', '09:00 5 from 270 gust 3'], says: 'at 09:00: the gust' },
    { words: ['--winds', 'no-such-file'], says: 'no such file' },
    { words: ['--winds', '09:00 3 from 270', '--tee-time', 'dawn'], says: "'--tee-time'" },
    { words: ['--winds', '09:00 3 from 270', '--hole-minutes', '0'], says: "'--hole-minutes'" },
    { words: ['--tee-time', '09:00'], says: "'--tee-time'" },
    { words: ['--only', 'saucers'], says: '--only' },
    { words: ['--only', 'distances'], says: '--only' },
    { words: ['--hand', 'left'], says: '--hand' },
    { words: ['--holes', '3'], says: "'--holes'" },
    { words: ['--seed', 'lucky'], says: '--seed' },
    { words: ['--units', 'yards'], says: '--units' },
    { words: ['--attitude', 'bold'], says: '--attitude' },
    { words: ['another'], says: 'too many arguments' },
  ])('$words: exit 2, saying $says', async ({ words, says }) => {
    const { code, out, err } = await plan(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it('names every fault of both files, exit 1', async () => {
    const broken = { ...tinyPlayer(), handedness: 'both' };
    const files = [fileWith('broken.geojson', '{'), fileWith('broken.json', broken)] as const;
    const { code, out, err } = await runLine(['plan', files[0], '--player', files[1]]);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain(`${files[0]}: line 1`);
    expect(err).toContain(`${files[1]}: handedness: `);
  });

  it('a bag of putting discs only is a fault of the file', async () => {
    const bag = tinyPlayer();
    for (const disc of bag.discs) disc.role = 'putting';
    const { code, err } = await runLine(['plan', course, '--player', fileWith('p.json', bag)]);
    expect(code).toBe(1);
    expect(err).toContain(': discs: every disc of Tiny Player is kept for putting');
  });
});
