import { describe, expect, it, onTestFinished } from 'vitest';
import { openPlanningDesk, type PlanningDesk } from '../../../backend/planning/planning-desk.ts';
import { makeDay } from '../../../core/air/day.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { parsePlayer } from '../../../core/player/player-file.ts';
import { taken } from '../taken.ts';
import { tinyCourse, tinyPlayer } from '../tiny-round.ts';

const course = taken(parseCourse(tinyCourse(), 'tiny'));
const maps = course.holes.map(hole => buildHoleMap(course, hole));
const file = taken(parsePlayer(tinyPlayer()));

function opened(options: Parameters<typeof openPlanningDesk>[0]): PlanningDesk {
  const desk = openPlanningDesk(options);
  onTestFinished(() => desk.close());
  return desk;
}
async function roundOf(desk: PlanningDesk) {
  const limits = { classes: ['putter'], hands: ['backhand'] } as const;
  return { player: await desk.fit(file), day: taken(makeDay({})), limits, drop_m: 5, seed: 1 };
}
const going = () => new AbortController().signal;

describe('the planning desk', () => {
  it('plans the hole in view first and then on through the round', async () => {
    const desk = opened({ threads: 1 });
    const round = await roundOf(desk);
    const seen: string[] = [];
    const onHole = ({ plan }: { plan: { ref: string; flips: readonly unknown[] } }) =>
      seen.push(`${plan.ref} ${plan.flips.length > 0 ? 'with' : 'without'} other winds`);
    const job = { roundOf: () => round, signal: going(), flips: true, attitudeOf: () => undefined, onHole };
    const options = await desk.plan({ ...job, maps, focusRef: '2' });
    const order = ['2', '1'].flatMap(ref => [`${ref} without other winds`, `${ref} with other winds`]);
    expect(seen).toEqual(order);
    expect([...options.keys()]).toEqual(['2', '1']);
  });

  it('plans every hole in the wind it is given for that hole', async () => {
    const desk = opened({ threads: 1 });
    const round = await roundOf(desk);
    const windy = { ...round, day: taken(makeDay({ wind: { speed_mps: 9, from_deg: 90 } })) };
    const planned = async (only: typeof maps, roundOfMap: (map: (typeof maps)[number]) => typeof round) => {
      const seen = new Map<string, unknown>();
      const onHole = ({ plan }: { plan: { ref: string } }) => seen.set(plan.ref, plan);
      const job = { roundOf: roundOfMap, flips: false, attitudeOf: () => undefined, onHole };
      await desk.plan({ ...job, maps: only, signal: going() });
      return seen;
    };
    const mixed = await planned(maps, map => (map.ref === '2' ? windy : round));
    const [second] = [(await planned(maps.slice(1), () => windy)).get('2')];
    expect(mixed.get('2')).toEqual(second);
    expect((mixed.get('1') as { headwind_mps: number }).headwind_mps).toBe(0); // calm air, by hand
  });

  it('gives options for who takes a risk when it is asked to, also on a hole it has solved', async () => {
    const desk = opened({ threads: 1 });
    const round = await roundOf(desk);
    const job = { roundOf: () => round, flips: false, attitudeOf: () => undefined, onHole: () => {} };
    const count = async (risks: boolean) =>
      (await desk.plan({ ...job, maps: maps.slice(0, 1), risks, signal: going() })).get('1')!.length;
    const even = await count(false);
    const withRisks = await count(true);
    expect(withRisks).toBeGreaterThan(even);
    expect(await count(false)).toBeGreaterThanOrEqual(even);
  });

  it('stops at once, and what waits too, when it is told or closed', async () => {
    const desk = opened({ threads: 1 });
    const round = await roundOf(desk);
    const stop = new AbortController();
    const job = { roundOf: () => round, maps, flips: false, attitudeOf: () => undefined, onHole: () => {} };
    const stopped = desk.plan({ ...job, signal: stop.signal });
    stop.abort();
    await expect(stopped).rejects.toThrow(/abort/i);
    const closed = expect(desk.plan({ ...job, signal: going() })).rejects.toThrow();
    await desk.close();
    await closed;
    await expect(desk.fit(file)).rejects.toThrow('closed');
  });

  it('hands on what a thread fails with, and goes on', async () => {
    const desk = opened({ threads: 1 });
    const round = await roundOf(desk);
    const shot = {
      discId: 'throw',
      hand: 'backhand',
      shape: 'flat',
      height: 'low',
      hyzer_deg: 0,
      launch_deg: 8,
    } as const;
    const nothing = { ...round, limits: { classes: ['distance'] } as const };
    await expect(desk.evaluate(maps[0]!, nothing, { ...shot, power: 1, aimBearing_deg: 90 })).rejects.toThrow(
      'no disc is left to throw',
    );
    expect(await desk.evaluate(maps[0]!, round, { ...shot, power: 1, aimBearing_deg: 90, discId: 'none' })).toBeNull();
    expect(await desk.quick(maps[1]!, round, going())).toBeNull();
    expect((await desk.quick(maps[0]!, round, going()))?.plan.ref).toBe('1');
  });
});
