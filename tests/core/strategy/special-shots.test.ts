import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { LANDING } from '../../../core/flight/flier.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { rasterize } from '../../../core/geometry/rasterize.ts';
import { type Candidate, isTie } from '../../../core/strategy/choose-shot.ts';
import { makeDayLibraries } from '../../../core/strategy/day-libraries.ts';
import { evaluateShot } from '../../../core/strategy/evaluate-shot.ts';
import { drawShot } from '../../../core/strategy/hole-drawing.ts';
import { solveHole } from '../../../core/strategy/hole-solver.ts';
import { planHole, planHoleInFull } from '../../../core/strategy/plan-hole.ts';
import { ShotSchema } from '../../../core/strategy/plan-report.ts';
import { type Limits, shotCount, shotsOf } from '../../../core/strategy/shots.ts';
import { addPath, type ThrowValue } from '../../../core/strategy/throw-value.ts';
import { aDay } from './a-day.ts';
import { BAG, inventedPlayer } from './invented-player.ts';
import { area, boxRing } from './sketched-holes.ts';
import { bareHole, slopedTerrain } from './small-world.ts';
import { OVERHEADS, ROLLERS, specialPlayer } from './special-player.ts';

const DISCS = [BAG[0]!, BAG[2]!, BAG[3]!];
const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const WITH = specialPlayer(
  20,
  [
    { discId: 'ferry', shape: 'roller', landings: ROLLERS },
    { discId: 'mallet', shape: 'overhead', landings: OVERHEADS },
    { discId: 'thimble', shape: 'roller', landings: ROLLERS.slice(0, 4) },
  ],
  DISCS,
);
const PLAIN = inventedPlayer({ arm_mps: 20, discs: DISCS });
const of = (player: typeof WITH, limits: Limits = {}) =>
  shotsOf(player, limits, createFlightBatch(), windProfile('open'), 1.2);
const special = (shots: ReturnType<typeof of>) =>
  shots.filter(({ shape }) => shape === 'roller' || shape === 'overhead');

describe('shots of a player with rollers and overhead throws', () => {
  it('are those of a player without, and beside them only what was measured often enough', () => {
    const shots = of(WITH);
    const extra = special(shots);
    expect(shots.filter(shot => !extra.includes(shot))).toEqual(of(PLAIN));
    expect([...new Set(extra.map(({ throwIndex, shape }) => `${WITH.throws[throwIndex]!.discId} ${shape}`))]).toEqual([
      'mallet overhead',
      'ferry roller',
    ]);
    expect(extra.some(({ power }) => power === 1)).toBe(true);
    expect(extra.some(({ power }) => power < 0.75)).toBe(true);
    expect(shotCount(WITH, {})).toBe(shots.length);
    expect(shotCount(PLAIN, {})).toBe(of(PLAIN).length);
  });

  it.each<{ limits: Limits; want: string[] }>([
    { limits: { classes: ['putter'] }, want: [] },
    { limits: { hands: ['forehand'] }, want: [] },
    { limits: { discIds: ['ferry'] }, want: ['roller'] },
    { limits: { classes: ['midrange'], hands: ['backhand'] }, want: ['overhead'] },
  ])('keep to limits: $limits', ({ limits, want }) => {
    expect([...new Set(special(of(WITH, limits)).map(({ shape }) => shape))]).toEqual(want);
    expect(shotCount(WITH, limits)).toBe(of(WITH, limits).length);
  });
});

describe('a player who measured too few of them', () => {
  it('gets the very plan of one who measured none', () => {
    const few = specialPlayer(20, [{ discId: 'ferry', shape: 'roller', landings: ROLLERS.slice(0, 4) }], DISCS);
    expect(few.throws.some(({ specials }) => specials !== undefined)).toBe(true);
    const map = bareHole({
      basket: [0, 70],
      covers: [{ ...area(boxRing(4, 20, 20, 50)), form: 'wood', height_m: 12, base_m: 2, density: 0.6 }],
    });
    const planOf = (player: typeof WITH) =>
      JSON.stringify(planHole({ map, libraries: makeDayLibraries(player, aDay(3, 90), {}, 5, 1) }));
    expect(planOf(few)).toBe(planOf(PLAIN));
  });
});

describe('stored paths and exact throws', () => {
  const raster = (map: ReturnType<typeof bareHole>) => rasterize(map);
  const CURVED = specialPlayer(
    20,
    [
      { discId: 'ferry', shape: 'roller', landings: ROLLERS.map(([d, s]) => [d, s + 30] as const) },
      { discId: 'mallet', shape: 'overhead', landings: OVERHEADS },
    ],
    DISCS,
  );
  it.each([
    { name: 'calm', wind: [0, 0] as const, map: bareHole({ basket: [0, 80] }), tol: 0.8 },
    { name: '5 m/s across', wind: [5, 90] as const, map: bareHole({ basket: [0, 80] }), tol: 1.5 },
    {
      name: 'up a slope',
      wind: [0, 0] as const,
      map: bareHole({ basket: [0, 80], terrain: slopedTerrain(0.01, 0.05) }),
      tol: 2,
    },
    {
      name: 'off hard ground into long grass',
      wind: [0, 0] as const,
      map: bareHole({
        basket: [0, 80],
        fairways: [{ ...area(boxRing(-30, 0, 30, 40)), surface: 'hardpan', ownHole: true }],
      }),
      tol: 2,
    },
  ])('of rollers and overhead throws rest at the same place: $name', ({ wind, map, tol }) => {
    const libraries = makeDayLibraries(CURVED, aDay(wind[0], wind[1]), {}, 20, 1);
    const { table } = solveHole(map, raster(map), libraries, 100);
    const { shots } = table.bins.library;
    shots.forEach((shot, s) => {
      if (shot.shape !== 'roller' && shot.shape !== 'overhead') return;
      for (const aim_deg of [0, 12]) {
        table.marcher.trace(s, 0, TEE, aim_deg);
        const { ends } = table.marcher;
        const stored = [ends.restX[0]!, ends.restY[0]!];
        table.thrower.prepare(shot, TEE, aim_deg);
        table.thrower.throwOnce(table.searchNormals, -1);
        const exact = [table.thrower.ends.restX[0]!, table.thrower.ends.restY[0]!];
        expect(Math.hypot(stored[0]! - exact[0]!, stored[1]! - exact[1]!)).toBeLessThan(tol);
        // the free rest of a throw that meets nothing is its end
        const { landing, play } = table.thrower;
        const along = landing[LANDING.x]! + play[0]!;
        const left = landing[LANDING.y]! + play[1]!;
        const aim = (aim_deg * Math.PI) / 180;
        const free = [Math.sin(aim) * along - Math.cos(aim) * left, Math.cos(aim) * along + Math.sin(aim) * left];
        expect(Math.hypot(free[0]! - exact[0]!, free[1]! - exact[1]!)).toBeLessThan(0.01);
      }
    });
  });

  it('rest on average where they were measured', () => {
    const map = bareHole({ basket: [0, 80] });
    const { table } = solveHole(map, raster(map), makeDayLibraries(WITH, aDay(0, 0), {}, 5, 1), 100);
    for (const [shape, landings] of [
      ['roller', ROLLERS],
      ['overhead', OVERHEADS],
    ] as const) {
      const shot = special(of(WITH)).find(one => one.shape === shape && one.power === 1)!;
      table.thrower.prepare(shot, TEE, 0);
      let [along, right] = [0, 0];
      table.thrower.throwRows(table.answerNormals, 0, 256, () => {
        along += (table.thrower.landing[LANDING.x]! + table.thrower.play[0]!) / 256;
        right -= (table.thrower.landing[LANDING.y]! + table.thrower.play[1]!) / 256;
      });
      const mean = (i: 0 | 1) => landings.reduce((sum, landing) => sum + landing[i], 0) / landings.length;
      // the planned scatter is wider by what is unknown, so the mean may move a little
      expect(Math.abs(along - mean(0))).toBeLessThan(0.03 * mean(0));
      expect(Math.abs(right - mean(1))).toBeLessThan(0.03 * mean(0));
    }
  });

  it('are scored alike by search and answer', () => {
    const map = bareHole({ basket: [0, 80] });
    const { table } = solveHole(map, raster(map), makeDayLibraries(WITH, aDay(0, 0), {}, 5, 1), 100);
    const { shots, samples } = table.bins.library;
    const s = shots.findIndex(({ shape }) => shape === 'roller');
    const stored: ThrowValue = { paths: 0, sum: 0, replay: 0 };
    table.marcher.add(s, 0, samples, TEE, -4, table.field, stored);
    const exact: ThrowValue = { paths: 0, sum: 0, replay: 0 };
    table.thrower.prepare(shots[s]!, TEE, -4);
    table.thrower.throwRows(table.answerNormals, 0, 200, () =>
      addPath(exact, table.thrower.ends, table.field, Number.NaN, Number.NaN, 0),
    );
    expect(Math.abs(stored.sum / stored.paths - exact.sum / exact.paths)).toBeLessThan(0.4);
  });
});

describe('a plan with them', () => {
  const map = bareHole({ basket: [0, 80] });
  const libraries = makeDayLibraries(WITH, aDay(2, 0), {}, 5, 1);
  const planned = planHoleInFull({ map, libraries, flips: true });
  const { plan } = planned;
  const all = [plan.choice, ...plan.alternatives];

  it('reports each as a throw of its own, beside the lines of its disc, by the schema', () => {
    for (const shot of all) expect(ShotSchema.safeParse(shot).success).toBe(true);
    expect(
      all
        .filter(({ discId }) => discId === 'ferry')
        .map(({ shape }) => shape === 'roller')
        .sort(),
    ).toEqual([false, true]);
    expect(all.find(({ shape }) => shape === 'overhead')!.title).toBe('midrange overhead placed short of the green');
    expect(all.find(({ shape }) => shape === 'roller')!.title).toBe('low-speed driver roller');
    for (const shot of all.filter(({ shape }) => shape === 'roller' || shape === 'overhead')) {
      expect(shot.basis).toBe('measured');
      expect(shot.notes.join(' ')).toContain(
        shot.shape === 'roller' ? '8 rollers of yours' : '7 overhead throws of yours',
      );
    }
  });

  it('draws a roller to where it rests, the last of it on the ground', () => {
    const roller = planned.choice.finalists.find(({ shot }) => shot.shape === 'roller')!;
    const drawing = drawShot(planned.solved.table, roller.shot, TEE, roller.aim_deg);
    const last = drawing.path.at(-1)!;
    expect(Math.hypot(last[0] - drawing.rest[0], last[1] - drawing.rest[1])).toBeLessThan(0.05);
    const onGround = drawing.path.filter(([, , up]) => Math.abs(up) < 0.02);
    expect(onGround.length).toBeGreaterThan(20);
    expect(Math.max(...drawing.path.map(([, , up]) => up))).toBeLessThan(1.5);
    // an overhead throw peaks high: steep launch, by common practice
    const overhead = planned.choice.finalists.find(({ shot }) => shot.shape === 'overhead')!;
    const high = drawShot(planned.solved.table, overhead.shot, TEE, overhead.aim_deg);
    expect(Math.max(...high.path.map(([, , up]) => up))).toBeGreaterThan(8);
  });

  it('does not believe a lead of a few hundredths over a disc that flies', () => {
    const ended = (c: Candidate, throws: number): Candidate => ({
      ...c,
      outcome: { ...c.outcome, perSample: Float64Array.of(throws, throws) },
    });
    const { table } = planned.solved;
    const ofShape = (wanted: (shape: string) => boolean) => planned.choice.finalists.find(c => wanted(c.shot.shape))!;
    const [roller, flat] = [ofShape(shape => shape === 'roller'), ofShape(shape => shape === 'flat')];
    expect(isTie(table, ended(roller, 2.9), ended(flat, 2.94))).toBe(true);
    expect(isTie(table, ended(roller, 2.9), ended(flat, 3))).toBe(false);
    expect(isTie(table, ended(flat, 2.9), ended(roller, 3.1))).toBe(false);
  });

  it('answers for a shot asked for, and not for one that was not measured', () => {
    const { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg } = all.find(
      one => one.shape === 'roller',
    )!;
    const asked = { discId, hand, shape, height, hyzer_deg, launch_deg, power, aimBearing_deg };
    expect(evaluateShot(planned, asked)!.shot.shape).toBe('roller');
    expect(evaluateShot(planned, { ...asked, discId: 'thimble' })).toBeUndefined();
  });

  it('is the same again, and says its cautions once for what it recommends', () => {
    expect(JSON.stringify(planHole({ map, libraries, flips: true }))).toBe(JSON.stringify(plan));
    const recommended = [plan.choice, ...plan.next.flatMap(({ shot }) => (shot ? [shot] : []))].map(s => s.shape);
    for (const [shape, word] of [
      ['roller', 'ROLLER'],
      ['overhead', 'OVERHEAD'],
    ] as const)
      expect(plan.cautions.filter(text => text.startsWith(word))).toHaveLength(recommended.includes(shape) ? 1 : 0);
  });
});
