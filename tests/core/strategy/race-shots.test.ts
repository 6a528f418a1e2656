import { describe, expect, it } from 'vitest';
import { climb, raceShots } from '../../../core/strategy/race-shots.ts';
import { type Line, pairedError, type RacedShot, type Racer, scoreOfFirst } from '../../../core/strategy/raced-shot.ts';
import type { ShotSpec } from '../../../core/strategy/shots.ts';

const SHOT: ShotSpec = { throwIndex: 0, shape: 'flat', hyzer_deg: 0, launch_deg: 8, height: 'standard', power: 0.9 };

/** Throws by a smooth bowl with its least at aim 5°, launch 12°, full power, and samples that are off by ±`noise` in turn. */
function bowl(noise: number, flown: { rows: number } = { rows: 0 }): Racer {
  return {
    start: ({ shot, aim_deg }) => ({
      shot,
      aim_deg,
      rows: 0,
      score: Number.POSITIVE_INFINITY,
      value: { paths: 0, sum: 0, replay: 0 },
      perRow: [],
    }),
    fly(raced, rows) {
      const { shot, aim_deg } = raced;
      const off = (aim_deg - 5) ** 2 / 100 + (shot.launch_deg - 12) ** 2 / 100 + 10 * (1 - shot.power) ** 2;
      const own = shot.throwIndex === 1 ? 0.02 : 0;
      for (let row = raced.rows; row < rows; row++) raced.perRow.push(1 + off + own + (row % 2 === 0 ? noise : -noise));
      flown.rows += Math.max(0, rows - raced.rows);
      raced.rows = Math.max(raced.rows, rows);
      raced.score = scoreOfFirst(raced, raced.rows);
      return raced.score;
    },
  };
}

/** Throws that depend on the aim alone, on every sample alike. */
function valley(throwsAt: (aim_deg: number) => number): Racer {
  const { start } = bowl(0);
  return {
    start,
    fly(raced, rows) {
      for (; raced.rows < rows; raced.rows++) raced.perRow.push(throwsAt(raced.aim_deg) - 1);
      raced.score = scoreOfFirst(raced, raced.rows);
      return raced.score;
    },
  };
}

const line = (aim_deg: number, shot: Partial<ShotSpec> = {}): Line => ({ shot: { ...SHOT, ...shot }, aim_deg });
const flown = (racer: Racer, from: Line, rows: number): RacedShot => {
  const shot = racer.start(from);
  racer.fly(shot, rows);
  return shot;
};

describe('a race of shots', () => {
  it('climbs to the least along aim, launch and power', () => {
    const racer = bowl(0.1);
    const { shot, aim_deg, score } = climb(racer, racer.start(line(0)), 16, [1, 0.5, 0.5]);
    // own derivation: steps of 2° and 0.04, then half of them, end at most half a step from the bowl's least
    expect(Math.abs(aim_deg - 5)).toBeLessThanOrEqual(0.5 + 1e-9);
    expect(Math.abs(shot.launch_deg - 12)).toBeLessThanOrEqual(0.5 + 1e-9);
    expect(shot.power).toBeGreaterThan(0.97);
    expect(shot.power).toBeLessThanOrEqual(1);
    // 2 is the bowl's least: one throw and one more
    expect(score - 2).toBeGreaterThanOrEqual(-1e-9);
    expect(score - 2).toBeLessThan(0.02);
  });

  it.each([1, -1])(
    'takes the better of two directions that both help, whichever is tried first (better side: %i)',
    side => {
      // own derivation: from the ridge at 0° it falls to both sides, more steeply to one
      const racer = valley(aim_deg => 3 - Math.abs(aim_deg) / 20 - (side * aim_deg) / 100);
      const { aim_deg } = climb(racer, racer.start(line(0)), 8, [1]);
      expect(aim_deg).toBe(6 * side);
    },
  );

  it('spends samples on the shots near the leader only, and keeps the others', () => {
    const count = { rows: 0 };
    const racer = bowl(0.1, count);
    const near = flown(racer, line(4, { throwIndex: 1, launch_deg: 12, power: 1 }), 10);
    const far = flown(racer, line(45, { throwIndex: 2, launch_deg: 12, power: 1 }), 10);
    const best = flown(racer, line(5, { launch_deg: 12, power: 1 }), 10);
    count.rows = 0;
    const after = raceShots(racer, [far, near, best], [{ within: 0.1, errors: 1, keep: 3, rows: 20, sizes: [] }]);
    expect(after.map(shot => shot.shot.throwIndex)).toEqual([0, 1, 2]);
    expect(after.map(shot => shot.rows)).toEqual([20, 20, 10]);
    expect(count.rows).toBe(20);
  });

  it('keeps one of two starts that come to the same line', () => {
    const racer = bowl(0);
    const starts = [flown(racer, line(3), 10), flown(racer, line(7), 10)];
    const after = raceShots(racer, starts, [{ within: 1, errors: 0, keep: 2, rows: 16, sizes: [1, 0.5] }]);
    expect(after).toHaveLength(1);
  });
});

describe('the standard error of a difference', () => {
  it('counts only what differs between the two on the samples both have had', () => {
    const a = { perRow: [2, 3, 4, 5] };
    // equal noise cancels; [C] differences 1, −1, 1, −1: variance 1 over n − 1 = 3
    expect(pairedError(a, { perRow: [2.5, 3.5, 4.5, 5.5, 99] })).toBeCloseTo(0, 12);
    expect(pairedError(a, { perRow: [1, 4, 3, 6] })).toBeCloseTo(Math.sqrt(1 / 3), 12);
  });
});
