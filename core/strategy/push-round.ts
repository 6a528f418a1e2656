import { costOf } from './attitude.ts';

/** One hole's shots as chances of scores: `options[k][i]` = chance of i + 1 throws with shot k. */
export type HoleOptions = readonly (readonly number[])[];

export type PushedRound = Readonly<{
  /** Chance to finish at or under the target when every choice looks at the score so far. */
  chance: number;
  /** The same when every hole is played for the fewest expected throws (its first option). */
  chanceEven: number;
  /** Per hole, on pace: `after[s]` = chance to make it when the hole takes s throws. */
  after: readonly (readonly number[])[];
  /** `within[h][left]` = chance to finish holes h, h + 1 … within so many throws, when every choice looks at the score so far. */
  within: readonly (readonly number[])[];
}>;

/**
 * Allots a round's target over its holes: dynamic programming backwards over the throws still allowed.
 * @param holes - in order of play; the first option of each is the even one
 * @source finite-horizon dynamic programming, Bellman 1957: W_h(r) = max over options of Σ_s P(s)·W_{h+1}(r − s)
 */
export function pushRound(holes: readonly HoleOptions[], target: number): PushedRound {
  const best = layers(holes, target, true);
  const even = layers(holes, target, false);
  const after: number[][] = [];
  let left = target;
  holes.forEach((options, h) => {
    const most = Math.max(...options.map(scores => scores.length));
    after.push(
      Array.from({ length: most + 1 }, (_, s) => (left - s >= 0 ? best[h + 1][Math.min(target, left - s)] : 0)),
    );
    const pace = options[0].reduce((sum, chance, i) => sum + chance * (i + 1), 0);
    // on pace: what the even plan would leave, rounded as the holes go by
    left = Math.max(0, Math.round(target - paceSoFar(holes, h) - pace));
  });
  return { chance: best[0][target], chanceEven: even[0][target], after, within: best };
}

/**
 * The option to throw on a hole with so many throws left for it and all after it. Options as good for the target go by the fewest
 * expected throws.
 * @param hole - index into the holes of the round
 */
export function pushedOption(
  holes: readonly HoleOptions[],
  { within }: PushedRound,
  hole: number,
  left: number,
): number {
  const after = Array.from({ length: left + 1 }, (_, s) => within[hole + 1][left - s]);
  const costs = holes[hole].map(scores => costOf({ kind: 'push', after }, scores, meanOf(scores)));
  return costs.indexOf(Math.min(...costs));
}

const meanOf = (scores: readonly number[]): number => scores.reduce((sum, chance, i) => sum + chance * (i + 1), 0);

function paceSoFar(holes: readonly HoleOptions[], before: number): number {
  let sum = 0;
  for (let h = 0; h < before; h++) sum += holes[h][0].reduce((total, chance, i) => total + chance * (i + 1), 0);
  return sum;
}

/** `[hole][throws left]`: chance to finish within them. */
function layers(holes: readonly HoleOptions[], target: number, choosing: boolean): number[][] {
  const table: number[][] = new Array(holes.length + 1);
  table[holes.length] = new Array<number>(target + 1).fill(1);
  for (let h = holes.length - 1; h >= 0; h--) {
    const options = choosing ? holes[h] : holes[h].slice(0, 1);
    table[h] = Array.from({ length: target + 1 }, (_, left) =>
      Math.max(
        ...options.map(scores =>
          scores.reduce((sum, chance, i) => (left - i - 1 >= 0 ? sum + chance * table[h + 1][left - i - 1] : sum), 0),
        ),
      ),
    );
  }
  return table;
}
