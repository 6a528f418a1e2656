import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Chance from a seed: the same numbers in the same order on every machine. */
export type SeededRandom = Readonly<{
  /** Uniform in [low, high). */
  between: (low: number, high: number) => number;
  /** Whole number from low to high, both included. */
  whole: (low: number, high: number) => number;
  pick: <T>(choices: readonly T[]) => T;
  /** Standard normal. */
  normal: () => number;
}>;

/** @param seed - any whole number */
export function seededRandom(seed: number): SeededRandom {
  const generator = xoroshiro128plus(seed);
  const unit = () => uniformFloat64(generator);
  const whole = (low: number, high: number) => uniformInt(generator, low, high);
  return {
    between: (low, high) => low + (high - low) * unit(),
    whole,
    pick: choices => choices[whole(0, choices.length - 1)] as (typeof choices)[number],
    // Box and Muller, A Note on the Generation of Random Normal Deviates (1958); 1 − u keeps the logarithm finite
    normal: () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
  };
}
