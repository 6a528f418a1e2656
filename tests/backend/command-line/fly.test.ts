import { describe, expect, it } from 'vitest';
import { FlightReportSchema } from '../../../core/flight/flight-report.ts';
import { tinyPlayer } from '../tiny-round.ts';
import { fileWith, runLine } from './run-line.ts';

const fly = async (...words: string[]) => {
  const { code, out, err } = await runLine(['fly', '--disc', '7/5/-1/2', '--speed', '24', ...words, '--json']);
  expect([code, err]).toEqual([0, '']);
  return FlightReportSchema.parse(JSON.parse(out));
};

describe('fly', () => {
  it('steps through the flight from the hand to touchdown in equal times', async () => {
    const { path, time_s, apex_m, carry_m } = await fly('--launch', '9');
    expect(path[0]).toEqual([0, 0, 0, 1.2]); // release height: assumed 1.2 m (release.ts)
    for (const [i, [t_s]] of path.slice(0, -1).entries()) expect(Math.abs(t_s - 0.05 * i)).toBeLessThanOrEqual(1e-9);
    const [t_s, x_m, , z_m] = path.at(-1)!;
    expect(t_s).toBe(time_s);
    expect(x_m).toBe(carry_m);
    expect(Math.abs(z_m)).toBeLessThanOrEqual(1e-6); // level ground
    expect(Math.max(...path.map(point => point[3]))).toBe(apex_m);
  });

  it('mirrors exactly for the other hand', async () => {
    const right = await fly('--launch', '9', '--hyzer', '5', '--wind', '5', '--wind-from', '70');
    const left = await fly('--launch', '9', '--hyzer', '5', '--wind', '5', '--wind-from', '290', '--left-handed');
    // identity: mirror image of the equations; the wind's sine is rounded
    expect(Math.abs(left.rest.x_m - right.rest.x_m)).toBeLessThanOrEqual(1e-9);
    expect(Math.abs(left.rest.y_m + right.rest.y_m)).toBeLessThanOrEqual(1e-9);
  });

  it('a right-hand backhand with fade in it ends left, a forehand right (common practice, no source)', async () => {
    expect((await fly('--launch', '9')).rest.y_m).toBeGreaterThan(0);
    expect((await fly('--launch', '9', '--hand', 'forehand')).rest.y_m).toBeLessThan(0);
  });

  it('a wind from the right pushes to the left (common practice, no source)', async () => {
    const calm = await fly('--launch', '9');
    const cross = await fly('--launch', '9', '--wind', '6', '--wind-from', '90');
    expect(cross.path.at(-1)![2]).toBeGreaterThan(calm.path.at(-1)![2]);
  });

  it('takes miles an hour, feet and Fahrenheit', async () => {
    const metric = await fly('--launch', '9', '--temperature', '25', '--altitude', '304.8', '--wind', '4.4704');
    const other = await fly('--launch', '9', '--temperature', '77F', '--altitude', '1000ft', '--wind', '10mph');
    expect(Math.abs(other.rest.x_m - metric.rest.x_m)).toBeLessThanOrEqual(1e-9); // 0.44704 and 0.3048: NIST SP 811 B.8
  });

  it('chooses the launch when none is given, and says so', async () => {
    const { notes, release } = await fly();
    expect(notes.join(' ')).toContain(`No launch given: ${release.launch_deg.toFixed(1)}°`);
  });

  it('says in the table where it ends, in words, metres or feet', async () => {
    const line = ['fly', '--disc', '7/5/-1/2', '--speed', '24', '--launch', '9'];
    expect((await runLine(line)).out).toMatch(/at rest \d+\.\d m ahead, \d+\.\d m to the left of the aim/);
    expect((await runLine([...line, '--units', 'feet'])).out).toMatch(
      /at rest \d+\.\d ft ahead, \d+\.\d ft to the left/,
    );
    expect((await runLine([...line, '--wind', '5'])).out.replace(/\s+/g, ' ')).toContain(
      'from ahead (0° clockwise from the aim)',
    );
  });

  it("flies a player's own disc, at the player's own speed", async () => {
    const player = fileWith('p.json', tinyPlayer());
    const { code, out } = await runLine(['fly', '--disc', 'mid', '--player', player, '--json']);
    expect(code).toBe(0);
    const flight = FlightReportSchema.parse(JSON.parse(out));
    expect(flight.release.speed_mps).toBeGreaterThan(15);
  });

  it.each([
    { words: ['--disc', '7/5/-1', '--speed', '20'], says: 'four numbers' },
    { words: ['--disc', '70/5/-1/2', '--speed', '20'], says: "'--disc'" },
    { words: ['--disc', '7/5/-1/2'], says: "'--speed'" },
    { words: ['--disc', 'mid', '--speed', '20'], says: 'give the player too' },
    { words: ['--disc', '7/5/-1/2', '--speed', '100'], says: "'--speed'" },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--wind', '50'], says: "'--wind'" },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--launch', 'up'], says: '--launch' },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--hyzer', '120'], says: "'--hyzer'" },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--hand', 'foot'], says: '--hand' },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--surface', 'ice'], says: '--surface' },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--mass', '900'], says: "'--mass'" },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--temperature', '99'], says: "'--temperature'" },
    { words: ['--disc', '7/5/-1/2', '--speed', '20', '--altitude', '9000'], says: "'--altitude'" },
    { words: ['--speed', '20'], says: '--disc' },
  ])('$words: exit 2, saying $says', async ({ words, says }) => {
    const { code, out, err } = await runLine(['fly', ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(says);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it.each([
    { words: ['--disc', 'none'], says: 'one of putt, throw, mid' },
    { words: ['--disc', '7/5/-1/2'], says: 'id of a disc' },
    { words: ['--disc', 'mid', '--left-handed'], says: 'right-handed' },
    { words: ['--disc', 'mid', '--mass', '170'], says: 'player file' },
  ])('with a player, $words: exit 2, saying $says', async ({ words, says }) => {
    const { code, err } = await runLine(['fly', '--player', fileWith('p.json', tinyPlayer()), ...words]);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });
});
