import { describe, expect, it } from 'vitest';
import type { Input } from '../../../backend/api/contract/api.ts';
import { type AppEvent, AppEventSchema } from '../../../backend/api/contract/events.ts';
import type { ShotChoice } from '../../../backend/api/contract/values.ts';
import { openPlanningDesk, type PlanningDesk } from '../../../backend/planning/planning-desk.ts';
import { addTinyRound, openTestBackend, type TestBackend } from './open-test-backend.ts';

const DAY = { wind: { speed_mps: 3, from_deg: 40 } };
const limits = { classes: ['putter' as const], hands: ['backhand' as const] };

type EventOf<K extends AppEvent['kind']> = Extract<AppEvent, { kind: K }>;
const ofKind = <K extends AppEvent['kind']>({ events }: TestBackend, kind: K) =>
  events.filter((event): event is EventOf<K> => event.kind === kind);

async function ended(test: TestBackend, planId: string): Promise<AppEvent> {
  const isEnd = (event: AppEvent) =>
    ['planDone', 'planFailed', 'planCancelled'].includes(event.kind) && 'planId' in event && event.planId === planId;
  await expect.poll(() => test.events.some(isEnd), { timeout: 50_000, interval: 20 }).toBe(true);
  return test.events.find(isEnd)!;
}

describe('plans', () => {
  it('begin with the hole in view, arrive hole by hole, are kept, and are given again at once', async () => {
    const test = openTestBackend();
    const { ask } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const request = { courseId, playerId, day: DAY, limits };
    const planId = crypto.randomUUID();
    expect(await ask('startPlan', { ...request, planId, focusRef: '2' })).toEqual({ planId, total: 2 });
    expect((await ask('getPlan', { planId })).state).toBe('running');
    expect(await ended(test, planId)).toMatchObject({ kind: 'planDone', summary: { course: 'Tiny Links' } });
    expect(ofKind(test, 'planProgress').map(({ done, total }) => [done, total])).toEqual([
      [0, 2],
      [1, 2],
      [2, 2],
    ]);
    const made = await ask('getPlan', { planId });
    expect(made.holes.map(({ plan }) => plan.ref)).toEqual(['1', '2']);
    // Each hole comes at once, and again with what other winds would choose.
    for (const { plan, drawing } of made.holes) {
      const came = ofKind(test, 'holePlanned').filter(({ ref }) => ref === plan.ref);
      expect(plan.flips.length).toBeGreaterThan(0);
      expect(came.map(({ hole }) => hole)).toEqual([
        { plan: { ...plan, flips: [], nearestFlip: null }, drawing },
        { plan, drawing },
      ]);
    }
    expect((await ask('latestPlan', { courseId, playerId })).plan).toEqual(made);

    const again = crypto.randomUUID();
    test.events.length = 0;
    await ask('startPlan', { ...request, planId: again });
    await ended(test, again);
    expect((await ask('getPlan', { planId: again })).holes).toEqual(made.holes);

    // Another answer may be due once the course or the player is another.
    await ask('renamePlayer', { playerId, name: 'Someone Else' });
    expect((await ask('latestPlan', { courseId, playerId })).plan).toBeNull();
    await test.backend.close();
    const after = openTestBackend({ folder: test.folder });
    expect((await after.ask('getPlan', { planId })).holes).toEqual(made.holes);
    for (const event of test.events) AppEventSchema.parse(event);
    expect(test.faults).toEqual([]);
  });

  it('draw where the throw goes', async () => {
    const test = openTestBackend();
    const { courseId, playerId } = await addTinyRound(test);
    const planId = crypto.randomUUID();
    await test.ask('startPlan', { courseId, playerId, planId, day: {}, limits, holes: ['1'] });
    await ended(test, planId);
    const [{ plan, drawing } = { plan: undefined, drawing: undefined }] = (await test.ask('getPlan', { planId })).holes;
    const { path, spread, ends, heights, rest } = drawing!.choice;
    expect(path[0]).toEqual([0, 0, expect.any(Number)]);
    const weight = ends.reduce((sum, end) => sum + end.weight, 0);
    expect(Math.abs(weight - 1)).toBeLessThan(1e-9); // chances
    expect(ends.length).toBeLessThanOrEqual(200);
    // The ellipses must hold the share they name of what is drawn beside them; binomial error of 96 throws is 5 %.
    for (const { share, centre, semiMajor_m, semiMinor_m, bearing_deg } of spread) {
      const turn = (bearing_deg * Math.PI) / 180;
      const inside = ends.filter(({ at }) => {
        const [e, n] = [at[0] - centre[0], at[1] - centre[1]];
        const along = e * Math.sin(turn) + n * Math.cos(turn);
        const across = e * Math.cos(turn) - n * Math.sin(turn);
        return (along / semiMajor_m) ** 2 + (across / semiMinor_m) ** 2 <= 1;
      });
      const held = inside.reduce((sum, end) => sum + end.weight, 0);
      expect(Math.abs(held - share), `${share}`).toBeLessThan(0.15);
    }
    const { choice } = plan!;
    expect(Math.abs(Math.hypot(...rest) - choice.distance_m)).toBeLessThan(0.2 * choice.distance_m);
    for (const { low_m, middle_m, high_m } of heights) expect(low_m <= middle_m && middle_m <= high_m).toBe(true);
  });

  it('answer quickly for another wind on a hole that is solved, and keep no such answer', async () => {
    const test = openTestBackend();
    const { ask } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const request = { courseId, playerId, limits, holes: ['1'], remember: false };
    const quickPlan = async (day: Input<'startPlan'>['day']) => {
      const planId = crypto.randomUUID();
      await ask('startPlan', { ...request, planId, day, quick: true });
      await ended(test, planId);
      const [hole] = (await ask('getPlan', { planId })).holes;
      return hole!;
    };
    // Nothing is solved yet: a plan as any other.
    const calm = await quickPlan({});
    const isFirstAnswer = ({ plan }: typeof calm) => plan.assumptions.some(text => text.startsWith('first answer'));
    expect(isFirstAnswer(calm)).toBe(false);
    const headwind = await quickPlan({ wind: { speed_mps: 8, from_deg: 90 } });
    expect(isFirstAnswer(headwind)).toBe(true);
    expect(Math.abs(headwind.plan.headwind_mps - 8)).toBeLessThan(0.1); // hole 1 plays east, by its own bearing
    expect(headwind.drawing.choice.rest).not.toEqual(calm.drawing.choice.rest);
    // The same again, in full: near the first answer, which used a quarter of its samples.
    const planId = crypto.randomUUID();
    await ask('startPlan', { ...request, planId, day: { wind: { speed_mps: 8, from_deg: 90 } } });
    await ended(test, planId);
    const [full] = (await ask('getPlan', { planId })).holes;
    expect(isFirstAnswer(full!)).toBe(false);
    expect(Math.abs(full!.plan.expectedThrows - headwind.plan.expectedThrows)).toBeLessThan(0.3);
  });

  it('guard, and push for a target', async () => {
    const test = openTestBackend();
    const { ask, refused } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const request = { courseId, playerId, day: {}, limits, remember: false };
    const [guard, push] = [crypto.randomUUID(), crypto.randomUUID()];
    await ask('startPlan', { ...request, planId: guard, attitude: 'guard' });
    expect(await ended(test, guard)).toMatchObject({ kind: 'planDone', summary: { attitude: 'guard' } });
    await ask('startPlan', { ...request, planId: push, attitude: 'push', target: 6 });
    const done = await ended(test, push);
    if (done.kind !== 'planDone') throw new Error(done.kind);
    const { target } = done.summary.round;
    expect(target?.throws).toBe(6);
    expect(target!.chance).toBeGreaterThanOrEqual(target!.chanceEven);
    expect((await ask('latestPlan', { courseId, playerId })).plan).toBeNull();
    const planId = crypto.randomUUID();
    expect(await refused('startPlan', { ...request, planId, attitude: 'push' })).toMatchObject([{ path: 'target' }]);
    expect(await refused('startPlan', { ...request, planId, target: 6 })).toMatchObject([{ path: 'target' }]);
  });

  it('keep the pace of the target, and the guard, while the wind is changed', async () => {
    const desk = openPlanningDesk({ threads: 1 });
    const planned: [refs: string, risks: boolean | undefined, attitudes: (string | undefined)[]][] = [];
    const quick: unknown[] = [];
    // by hand: three throws for sure, or two or five at even chances; five over two holes are only made by risking it
    const options = [
      [0, 0, 1],
      [0, 0.5, 0, 0, 0.5],
    ];
    const watched: PlanningDesk = {
      ...desk,
      plan: async job => {
        planned.push([
          job.maps.map(({ ref }) => ref).join(),
          job.risks,
          job.maps.map(map => job.attitudeOf(map)?.kind),
        ]);
        return new Map([...(await desk.plan(job)).keys()].map(ref => [ref, options]));
      },
      quick: (map, round, signal, attitude) => {
        quick.push(attitude);
        return desk.quick(map, round, signal, attitude);
      },
    };
    const test = openTestBackend({ desk: watched });
    const { courseId, playerId } = await addTinyRound(test);
    const make = async (asked: Partial<Input<'startPlan'>>) => {
      const planId = crypto.randomUUID();
      const request = { courseId, playerId, day: {}, limits, remember: false, attitude: 'push', target: 5 } as const;
      await test.ask('startPlan', { ...request, planId, ...asked });
      expect((await ended(test, planId)).kind).toBe('planDone');
    };
    await make({});
    // three on the first leave a two, risking it there leaves a three: as good, so it is risked on the last hole only
    expect(planned).toEqual([
      ['1,2', true, [undefined, undefined]],
      ['2', undefined, ['push']],
    ]);
    // the hole in view while the wind is dragged, and every hole once it stays: pushed from the start
    await make({ quick: true, holes: ['1'], day: DAY });
    await make({ quick: true, holes: ['2'], day: DAY });
    expect(quick).toMatchObject([undefined, { kind: 'push' }]);
    planned.length = 0;
    await make({ day: DAY });
    expect(planned).toEqual([
      ['1,2', true, [undefined, 'push']],
      ['', undefined, []],
    ]);
    await make({ quick: true, holes: ['2'], day: {}, attitude: 'guard', target: undefined });
    expect(quick.at(-1)).toEqual({ kind: 'guard', roundSd: 0.6 * Math.SQRT2 }); // of both holes: 0.6 a hole assumed
    // another target is another pace
    await make({ quick: true, holes: ['2'], day: DAY, target: 6 });
    expect(quick.at(-1)).toBeUndefined();
  });

  it('are made in each hole’s own wind when winds are given by tee time, and kept apart from others', async () => {
    const test = openTestBackend();
    const { ask } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const list = [
      { at_min: 540, speed_mps: 2, from_deg: 270 },
      { at_min: 560, speed_mps: 8, from_deg: 90 },
    ];
    const winds = { list, teeTime_min: 540, hole_min: 20 };
    const made = async (asked: Partial<Input<'startPlan'>>) => {
      const planId = crypto.randomUUID();
      await ask('startPlan', { courseId, playerId, limits, day: {}, planId, remember: false, ...asked });
      expect((await ended(test, planId)).kind).toBe('planDone');
      return ask('getPlan', { planId });
    };
    const plan = await made({ winds });
    const from = (state: typeof plan) => state.holes.map(({ plan: { wind } }) => [wind?.at, wind?.speed_mps]);
    expect(from(plan)).toEqual([
      ['09:00', 2],
      ['09:20', 8],
    ]);
    expect(plan.summary?.air).toMatchObject({ windSpeed_mps: 2, source: 'as given, by tee time' });
    // as events, too, before the plan is done
    const came = ofKind(test, 'holePlanned').filter(({ ref }) => ref === '2');
    expect(came[0]?.hole.plan.wind?.at).toBe('09:20');
    // the same hole when that wind blows all day
    const steady = await made({ day: { wind: { speed_mps: 8, from_deg: 90 } }, holes: ['2'] });
    expect({ ...plan.holes[1]!.plan, wind: undefined }).toEqual({ ...steady.holes[0]!.plan, wind: undefined });
    // a shotgun start on hole 2
    const shotgun = await made({ winds, startRef: '2' });
    expect(from(shotgun)).toEqual([
      ['09:20', 8],
      ['09:00', 2],
    ]);
    expect(shotgun.summary?.air.windSpeed_mps).toBe(2); // of the hole thrown off first
    expect(from(await made({ winds }))).toEqual(from(plan));

    // a throw of one's own is judged in the wind of its hole
    const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = plan.holes[1]!.plan.choice;
    const shot = { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
    const asked = { courseId, playerId, limits, day: {}, ref: '2', shot };
    const own = await ask('evaluateShot', { ...asked, winds });
    // the aim went through degrees once more
    expect(own.shot.expectedThrows).toBeCloseTo(plan.holes[1]!.plan.choice.expectedThrows, 12);
    expect((await ask('evaluateShot', asked)).shot.distance_m).not.toBe(own.shot.distance_m);
    const html = (
      await ask('renderSheet', { planId: plan.planId, form: 'pocket', length: 'm', speed: 'mps' })
    ).html.replace(/\s/g, ' ');
    const wind = 'wind by tee time, 09:00 2.0 m/s from W to 09:20 8.0 m/s from E; each hole has its own';
    expect([wind, '09:00: 2 m/s tailwind', '09:20: 8 m/s headwind'].filter(text => !html.includes(text))).toEqual([]);
    expect(test.faults).toEqual([]);
  });

  it('with winds by tee time are refused where one of them cannot be', async () => {
    const test = openTestBackend();
    const { courseId, playerId } = await addTinyRound(test);
    const request = { courseId, playerId, day: {}, planId: crypto.randomUUID() };
    const one = { at_min: 540, speed_mps: 2, from_deg: 270 };
    const winds = (...list: object[]) => ({ list, teeTime_min: 540, hole_min: 20 });
    const paths = async (asked: object) =>
      (await test.refused('startPlan', { ...request, ...asked })).map(({ path }) => path);
    expect(await paths({ winds: winds() })).toEqual(['winds.list']);
    expect(await paths({ winds: winds(one, one) })).toEqual(['winds.list.1.at_min']);
    expect(await paths({ winds: winds({ ...one, gust_mps: 1 }) })).toEqual(['winds.list.0.gust_mps']);
    expect(await paths({ winds: winds(one), startRef: '9' })).toEqual(['startRef']);
    expect(await paths({ startRef: '1' })).toEqual(['startRef']);
    expect(
      await paths({ winds: winds(one), day: { temperature_C: 10, qnh_hPa: 1000, stationPressure_hPa: 990 } }),
    ).toEqual(['day.qnh_hPa']);
  });

  it('stop when they are cancelled, or replaced by another', async () => {
    const test = openTestBackend();
    const { ask } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const [first, second] = [crypto.randomUUID(), crypto.randomUUID()];
    const request = { courseId, playerId, limits };
    await ask('startPlan', { ...request, planId: first, day: DAY });
    await ask('startPlan', { ...request, planId: second, day: {}, holes: ['1'], replaces: first });
    expect((await ended(test, first)).kind).toBe('planCancelled');
    expect((await ask('getPlan', { planId: first })).state).toBe('cancelled');
    expect((await ended(test, second)).kind).toBe('planDone');
    expect(await ask('cancelPlan', { planId: second })).toEqual({ cancelled: false });
  });

  it('are refused with every problem before they begin, or fail with one when only the fitted throws can tell', async () => {
    const test = openTestBackend();
    const { ask, refused } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const planId = crypto.randomUUID();
    const wrong = { courseId: planId, playerId, planId, day: { wind: { speed_mps: 5, from_deg: 10, gust_mps: 2 } } };
    expect((await refused('startPlan', wrong)).map(({ path }) => path)).toEqual(['courseId', 'day.wind.gust_mps']);
    expect(await refused('startPlan', { courseId, playerId, planId, day: {}, holes: ['9'] })).toEqual([
      { path: 'holes', message: 'the course has no hole 9' },
    ]);
    await ask('startPlan', { courseId, playerId, planId, day: {}, limits: { classes: ['distance'] } });
    expect(await ended(test, planId)).toMatchObject({ kind: 'planFailed', problems: [{ path: 'limits' }] });
    expect(await refused('startPlan', { courseId, playerId, planId, day: {} })).toMatchObject([{ path: 'planId' }]);
    expect(await refused('renderSheet', { planId, form: 'pocket', length: 'm', speed: 'mps' })).toMatchObject([
      { path: 'planId' },
    ]);
  });
});

describe('a shot of the player’s own', () => {
  it('costs nothing when it is the plan’s, more the farther it aims off, and is on the sheet once pinned', async () => {
    const test = openTestBackend();
    const { ask, refused } = test;
    const { courseId, playerId } = await addTinyRound(test);
    const planId = crypto.randomUUID();
    const request = { courseId, playerId, day: DAY, limits };
    await ask('startPlan', { ...request, planId });
    await ended(test, planId);
    const [hole] = (await ask('getPlan', { planId })).holes;
    const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = hole!.plan.choice;
    const shot: ShotChoice = { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
    const own = { ...request, ref: '1', shot };
    const same = await ask('evaluateShot', own);
    expect(same.shot.expectedThrows).toBe(hole!.plan.choice.expectedThrows);
    expect(same.shot.regret).toBe(0);
    expect(same.drawing).toEqual(hole!.drawing.choice);
    const aside = async (turn_deg: number) =>
      (await ask('evaluateShot', { ...own, shot: { ...shot, aimBearing_deg: aimBearing_deg + turn_deg } })).shot.regret;
    const [off, farOff] = [await aside(30), await aside(70)];
    expect(off).toBeGreaterThan(0);
    expect(farOff).toBeGreaterThan(off);
    expect(await refused('evaluateShot', { ...own, shot: { ...shot, discId: 'none' } })).toMatchObject([
      { path: 'shot.discId' },
    ]);
    expect(await refused('evaluateShot', { ...own, choice: { ...shot, discId: 'none' } })).toMatchObject([
      { path: 'choice.discId' },
    ]);
    await ask('pinShot', { courseId, playerId, ref: '1', shot: { ...shot, power: 0.7 }, title: 'softer' });
    await ask('setNote', { courseId, ref: '1', text: 'puddle <left>' });
    const sheet = await ask('renderSheet', { planId, form: 'pocket', length: 'm', speed: 'mps', holes: ['1'] });
    expect(sheet.html).toContain('puddle &lt;left&gt;');
    expect(sheet.fileName).toBe('tiny-links-tiny-player-sheet.html');
    expect(test.faults).toEqual([]);
  });
});
