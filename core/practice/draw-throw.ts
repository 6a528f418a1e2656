import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import type { FittedPlayer, FittedThrow } from '../player/fitted-player.ts';
import { planningScatter } from '../strategy/throw-samples.ts';
import type { DrawThrow } from './play-hole.ts';
import { normalOf, type RandomStream } from './random-stream.ts';

// Columns of a normal sample that what the fit leaves unknown is counted in (see throw-samples).
const SPEED = 0;
const AZIMUTH = 1;
const HYZER = 2;

/** Every throw independent of every other, what the fit leaves unknown in its scatter: as the plan counts. */
export function independentThrows(random: RandomStream): DrawThrow {
  return (_, row) => {
    for (let i = 0; i < SAMPLE_DIMENSIONS; i++) row[i] = random.normal();
  };
}

/**
 * The same scatter, but what the fit leaves unknown of a disc's speed and stability is the same for all of its throws in one
 * round: the player really is a little faster or slower than fitted, all day.
 * @param round - which round: holes of the same round share it
 */
export function throwsOfOneRound(player: FittedPlayer, random: RandomStream, seed: number, round: number): DrawThrow {
  return ({ shot }, row) => {
    for (let i = 0; i < SAMPLE_DIMENSIONS; i++) row[i] = random.normal();
    const fitted = player.throws[shot.throwIndex]!;
    const whole = planningScatter(fitted, shot);
    const own = planningScatter(withoutDoubt(fitted), shot);
    row[SPEED] = shared(row[SPEED]!, own.speed, whole.speed, normalOf(seed, round, shot.throwIndex, SPEED));
    // what is unknown of an overhead throw's finish is counted in its aim
    if (whole.azimuth_deg > own.azimuth_deg)
      row[AZIMUTH] = shared(
        row[AZIMUTH]!,
        own.azimuth_deg,
        whole.azimuth_deg,
        normalOf(seed, round, shot.throwIndex, AZIMUTH),
      );
    row[HYZER] = shared(row[HYZER]!, own.hyzer_deg, whole.hyzer_deg, normalOf(seed, round, shot.throwIndex, HYZER));
  };
}

function withoutDoubt(fitted: FittedThrow): FittedThrow {
  const { specials } = fitted;
  return {
    ...fitted,
    releaseSpeedSd: 0,
    stabilityOffsetSd: 0,
    ...(specials && {
      specials: specials.map(one => ({
        ...one,
        fit: one.fit && { ...one.fit, doubt: { speed: 0, azimuth_deg: 0, hyzer_deg: 0 } },
      })),
    }),
  };
}

/** A standard normal of which the part of the spread that is not a throw's own comes from the round. */
function shared(each: number, own: number, whole: number, ofRound: number): number {
  if (whole <= 0) return each;
  const share = Math.min(1, own / whole);
  return share * each + Math.sqrt(1 - share * share) * ofRound;
}
