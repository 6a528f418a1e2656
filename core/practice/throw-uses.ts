import { normalSamples, SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import type { SolvedHole } from '../strategy/hole-solver.ts';
import { puttFrom, puttingCell } from '../strategy/putting-value.ts';
import { shotOutcome } from '../strategy/shot-outcome.ts';
import type { ShotSpec } from '../strategy/shots.ts';
import { distanceToBasket, valueAt } from '../strategy/value-field.ts';
import type { Page } from './play-book.ts';

/** A throw the round asks for, how often, and what throwing it better would save. */
export type ThrowUse = Readonly<{
  discId: string;
  disc: string;
  hand: 'backhand' | 'forehand';
  shape: ShotSpec['shape'];
  height: ShotSpec['height'];
  power: number;
  fromTee: boolean;
  /** False: predicted from the player's other discs. */
  isMeasured: boolean;
  /** Mean distance to rest, were nothing in the way. */
  distance_m: number;
  distanceSd_m: number;
  sideSd_m: number;
  toBasket_m: number;
  /** Times in one play of the hole. */
  aPlay: number;
  /** Throws saved in one play of the hole if this throw scattered a fifth less. */
  saving: number;
}>;

/** First putts from about one distance. */
export type PuttUse = Readonly<{ distance_m: number; aPlay: number; makeChance: number; saving: number }>;

/** "A fifth less spread": what practice is asked to bring, for throws and putts alike. */
export const LESS_SPREAD = 0.8;
const ROWS = 96;
/** Columns of a normal sample that are the thrower's own: speed, aim, bank, launch, nose (see throw-samples); the rest is wind. */
const OWN_COLUMNS = 5;
/** Throws rarer than this in a play of the hole are nothing to practise for. */
const RARE = 0.02;

/**
 * What the throws of the simulated plays were, and what a fifth less spread of each would save: the same samples, the thrower's own
 * part drawn in. Putts with a fifth less spread fall as if they were a fifth nearer.
 */
export function usesOf(
  solved: SolvedHole,
  pages: readonly Page[],
  counted: ReadonlyMap<number, number>,
  putted: ReadonlyMap<number, number>,
  plays: number,
  seed: number,
): Readonly<{ throws: ThrowUse[]; putts: PuttUse[]; counts: readonly (readonly [index: number, count: number])[] }> {
  const { table } = solved;
  const { putting } = table.field;
  const usual = normalSamples(ROWS, seed);
  const tighter = usual.map((value, i) => (i % SAMPLE_DIMENSIONS < OWN_COLUMNS ? value * LESS_SPREAD : value));
  const counts = [...counted].sort(([a], [b]) => a - b);
  const throws = counts.flatMap(([index, count]): ThrowUse[] => {
    const aPlay = count / plays;
    if (aPlay < RARE) return [];
    const page = pages[index]!;
    const { shot, from, aim_deg } = page;
    const replay = valueAt(table.field, from.east_m, from.north_m);
    const outcome = (normals: Float64Array) =>
      shotOutcome(table.thrower, table.field, shot, from, aim_deg, normals, 0, ROWS, table.world.dropZone, replay);
    const [now, then] = [outcome(usual), outcome(tighter)];
    const { discId, disc, hand, basis } = table.player.throws[shot.throwIndex]!;
    return [
      {
        discId,
        disc,
        hand,
        shape: shot.shape,
        height: shot.height,
        power: shot.power,
        fromTee: page.fromTee,
        isMeasured: basis !== 'predicted',
        distance_m: now.distance_m,
        distanceSd_m: now.distanceSd_m,
        sideSd_m: now.sideSd_m,
        toBasket_m: distanceToBasket(table.field, from.east_m, from.north_m),
        aPlay,
        saving: aPlay * (now.expectedThrows - then.expectedThrows),
      },
    ];
  });
  const putts = [...putted]
    .sort(([a], [b]) => a - b)
    .map(([distance_m, count]): PuttUse => {
      const aPlay = count / plays;
      const saved = puttFrom(putting, distance_m) - puttFrom(putting, distance_m * LESS_SPREAD);
      const makeChance = putting.make[puttingCell(putting, distance_m)]!;
      return { distance_m, aPlay, makeChance, saving: aPlay * saved };
    });
  return { throws, putts, counts };
}
