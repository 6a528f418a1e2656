import { describe, expect, it } from 'vitest';
import { ROLLERS } from '../../core/strategy/special-player.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';
import { openTestBackend, type TestBackend } from './open-test-backend.ts';

const DAY = { wind: { speed_mps: 2, from_deg: 40 } };
const limits = { classes: ['midrange' as const] };

async function planned({ ask, events }: TestBackend) {
  const player = tinyPlayer();
  const rolled = ROLLERS.map(([distance_m, side_m]) => ({ discId: 'mid', shape: 'roller', distance_m, side_m }));
  const { courseId } = await ask('importCourse', { fileName: 'c.geojson', text: JSON.stringify(tinyCourse()) });
  const { playerId } = await ask('importPlayer', {
    fileName: 'p.json',
    text: JSON.stringify({ ...player, sessions: [...player.sessions, { date: '2026-05-20', throws: rolled }] }),
  });
  const planId = crypto.randomUUID();
  const request = { courseId, playerId, day: DAY, limits };
  await ask('startPlan', { ...request, planId, holes: ['1'] });
  await expect
    .poll(() => events.some(event => event.kind === 'planDone' && event.planId === planId), { timeout: 50_000 })
    .toBe(true);
  const [hole] = (await ask('getPlan', { planId })).holes;
  return { request, hole: hole!, playerId };
}

describe('rollers through the API', () => {
  it('are planned, asked for, refused where not measured, and counted in the fieldwork', async () => {
    const test = openTestBackend();
    const { request, hole, playerId } = await planned(test);
    const roller = [hole.plan.choice, ...hole.plan.alternatives].find(({ shape }) => shape === 'roller')!;
    const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = roller;
    const shot = { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
    const asked = { ...request, ref: '1', shot };
    const answer = await test.ask('evaluateShot', asked);
    expect(answer.shot.shape).toBe('roller');
    expect(Math.abs(answer.shot.expectedThrows - roller.expectedThrows)).toBeLessThan(0.05);
    const [problem] = await test.refused('evaluateShot', { ...asked, shot: { ...shot, shape: 'overhead' } });
    expect(problem!.path).toBe('shot.shape');
    expect(problem!.message).toContain('measure at least 5');
    const forehand = await test.refused('evaluateShot', { ...asked, shot: { ...shot, hand: 'forehand' } });
    expect(forehand[0]!.path).toBe('shot.shape');
    const scatter = await test.ask('getDiscScatter', { playerId, discId: 'mid', hand: 'backhand' });
    expect(scatter.specials).toMatchObject([{ shape: 'roller', counted: 8, needed: 0, problem: null }]);
    expect(scatter.specials[0]!.text).toContain('8 rollers fitted');
    expect(test.faults).toEqual([]);
  }, 60_000);
});
