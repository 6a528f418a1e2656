import { solveLinear } from './solve-linear.ts';

/** ln of a scatter multiplier found from one disc's own throws. */
export type OwnMultiplier = Readonly<{ discSpeed: number; forehand: boolean; log: number; throws: number }>;

/** Throws at which a disc's own scatter and the bag's line weigh the same: discs stray about 16 % from the line (assumed). */
const BORROWED_THROWS = 20;
/** Spread of discs about the line that goes with it: a scatter from n throws is known to 1/√(2n) in ln. */
const OFF_LINE_VARIANCE = 1 / (2 * BORROWED_THROWS);
// Assumed sizes: how far a player's overall scatter, its change over four speed numbers and the forehand differ from typical.
const LEVEL_VARIANCE = 0.5 ** 2;
const SLOPE_VARIANCE = 0.2 ** 2;
const HAND_VARIANCE = 0.2 ** 2;

type Line = (discSpeed: number, forehand: boolean) => { log: number; variance: number };

/** The bag's line of ln multiplier over disc speed, with an offset for the forehand, by ridge regression. */
export function scatterLine(own: readonly OwnMultiplier[]): Line {
  const row = (discSpeed: number, forehand: boolean) => [1, (discSpeed - 7) / 4, forehand ? 1 : 0];
  const information = [LEVEL_VARIANCE, SLOPE_VARIANCE, HAND_VARIANCE].map((variance, i) =>
    [0, 1, 2].map(j => (i === j ? 1 / variance : 0)),
  );
  const right = [0, 0, 0];
  for (const { discSpeed, forehand, log, throws } of own) {
    const weight = 1 / (1 / (2 * throws) + OFF_LINE_VARIANCE);
    const x = row(discSpeed, forehand);
    for (let i = 0; i < 3; i++) {
      right[i]! += weight * x[i]! * log;
      for (let j = 0; j < 3; j++) information[i]![j]! += weight * x[i]! * x[j]!;
    }
  }
  const coefficients = solveLinear(information, right);
  return (discSpeed, forehand) => {
    const x = row(discSpeed, forehand);
    const spread = solveLinear(information, x);
    return {
      log: x.reduce((sum, value, i) => sum + value * coefficients[i]!, 0),
      variance: x.reduce((sum, value, i) => sum + value * spread[i]!, 0) + OFF_LINE_VARIANCE,
    };
  };
}

/** A disc's own multiplier drawn towards the line by how few throws it rests on; without throws it is the line's. */
export function shrunkMultiplier(
  line: Line,
  discSpeed: number,
  forehand: boolean,
  own: { log: number; throws: number } | null,
) {
  const bag = line(discSpeed, forehand);
  if (own === null || own.throws <= 0) return bag;
  const share = own.throws / (own.throws + BORROWED_THROWS);
  return { log: bag.log + share * (own.log - bag.log), variance: 1 / (2 * (own.throws + BORROWED_THROWS)) };
}
