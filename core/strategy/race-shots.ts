import { type Line, pairedError, type RacedShot, type Racer, scoreOfFirst } from './raced-shot.ts';

/**
 * One round of a race: who is near the leader (within some throws and some standard errors of the difference, at most `keep`) is
 * flown with more samples and turned to the better side by steps of these sizes; the others stay as they are.
 */
export type Round = Readonly<{
  within: number;
  errors: number;
  keep: number;
  /** Samples, an even number. */
  rows: number;
  sizes: readonly number[];
}>;

/** A step of size 1 along each axis of a line. */
const AIM_STEP_DEG = 2;
const LAUNCH_STEP_DEG = 2;
const POWER_STEP = 0.04;
const HIGHEST_LAUNCH_DEG = 30;
const LEAST_POWER = 0.2;
/** Steps in one direction at a time. */
const MOST_STEPS = 3;
/** A change that is worse by this on half of the samples is given up. */
const GIVEN_UP = 0.08;

/** @returns all of them, the near ones improved, least first; the same line once */
export function raceShots(racer: Racer, starters: readonly RacedShot[], rounds: readonly Round[]): RacedShot[] {
  let shots = [...starters].sort(byScore);
  for (const { within, errors, keep, rows, sizes } of rounds) {
    const [leader] = shots;
    let near = 0;
    const after = shots.map(shot => {
      const isNear =
        shot === leader || (near < keep && shot.score - leader.score <= within + errors * pairedError(shot, leader));
      if (!isNear) return shot;
      near++;
      return climb(racer, shot, rows, sizes);
    });
    // of two that came to the same line the better known one is kept
    shots = distinct(after.sort((a, b) => b.rows - a.rows || a.score - b.score)).sort(byScore);
  }
  return shots;
}

const byScore = (a: RacedShot, b: RacedShot): number => a.score - b.score;

/**
 * Goes on in every direction that helps on the same samples: aim, launch and power in turn. Both directions are tried before one is
 * taken, so that a mirrored hole is climbed in mirror image.
 */
export function climb(racer: Racer, start: RacedShot, rows: number, sizes: readonly number[]): RacedShot {
  let best = start;
  racer.fly(best, rows);
  // a start that was flown farther is compared on what both have had
  let whole = scoreOfFirst(best, rows);
  let half = scoreOfFirst(best, rows / 2);
  /** The changed line flown, when it is better than the best so far. */
  const better = (line: Line | null): RacedShot | null => {
    if (line === null) return null;
    const changed = racer.start(line);
    if (racer.fly(changed, rows / 2) > half + GIVEN_UP) return null;
    racer.fly(changed, rows);
    return scoreOfFirst(changed, rows) < whole ? changed : null;
  };
  const take = (changed: RacedShot) => {
    best = changed;
    whole = scoreOfFirst(best, rows);
    half = scoreOfFirst(best, rows / 2);
  };
  for (const size of sizes) {
    for (const moved of AXES) {
      const back = better(moved(best, -size));
      const on = better(moved(best, size));
      const step = on !== null && (back === null || on.score < back.score) ? size : -size;
      let next = step > 0 ? on : back;
      for (let steps = 1; next !== null; steps++) {
        take(next);
        next = steps < MOST_STEPS ? better(moved(best, step)) : null;
      }
    }
  }
  return best;
}

/** The lines one step of a size away along each axis, both ways. */
export function neighbourLines(line: Line, size: number): Line[] {
  return AXES.flatMap(moved => [moved(line, -size), moved(line, size)]).filter(changed => changed !== null);
}

/** A line changed along each axis; null where that cannot be thrown. */
const AXES: readonly ((line: Line, steps: number) => Line | null)[] = [
  ({ shot, aim_deg }, steps) => ({ shot, aim_deg: aim_deg + AIM_STEP_DEG * steps }),
  ({ shot, aim_deg }, steps) => {
    const launch_deg = shot.launch_deg + LAUNCH_STEP_DEG * steps;
    return launch_deg >= 0 && launch_deg < HIGHEST_LAUNCH_DEG ? { shot: { ...shot, launch_deg }, aim_deg } : null;
  },
  ({ shot, aim_deg }, steps) => {
    const power = Math.min(1, shot.power + POWER_STEP * steps);
    return power > LEAST_POWER && power !== shot.power ? { shot: { ...shot, power }, aim_deg } : null;
  },
];

/** The same line twice with nearly the same aim is one shot. */
function distinct(shots: readonly RacedShot[]): RacedShot[] {
  const kept: RacedShot[] = [];
  for (const raced of shots) {
    const again = kept.some(
      k =>
        k.shot.throwIndex === raced.shot.throwIndex &&
        k.shot.shape === raced.shot.shape &&
        k.shot.hyzer_deg === raced.shot.hyzer_deg &&
        Math.abs(k.shot.power - raced.shot.power) < 0.05 &&
        Math.abs(k.shot.launch_deg - raced.shot.launch_deg) < 2.5 &&
        Math.abs(((k.aim_deg - raced.aim_deg + 540) % 360) - 180) < 3,
    );
    if (!again) kept.push(raced);
  }
  return kept;
}
