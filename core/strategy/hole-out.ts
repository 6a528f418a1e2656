import type { Lie } from './march.ts';
import { groundAt, type World } from './world.ts';

// The target: what is caught lies between the rim of the tray and the underside of the chain holder, as wide as the chain holder.
// @source PDGA Technical Standards (rev. 2010, read in a secondary summary): rim 82 ± 6 cm, catch zone 51 ± 3 cm, holder 57 cm
const RIM_M = 0.82;
const TOP_M = 1.33;
const HALF_WIDTH_M = 0.285;

/** Share of the scatter of aim and length that is integrated round each flight; the rest comes from the flights themselves. */
const SMOOTHED = 0.7;
const KEPT = Math.sqrt(1 - SMOOTHED * SMOOTHED);
/** Distance goes about with this power of the release speed. @source own flight model, as in improve-lies */
const DISTANCE_BY_POWER = 1.6;
/** A flight that comes down further than this from the basket, and this share of its distance, is not looked at. */
const NEAR_M = 12;
const NEAR_SHARE = 0.15;
const MOST_HOLED = 0.3;
/** Less room than this in a bound is not worth its while. */
const LEAST_ROOM = 0.06;
/** A flight turned or stretched by more than this many standard deviations is not counted. */
const FAR_OUT = 3.5;
/** A flight bends by no more than this between the rim's height and the ground. */
const BEND_M = 3;

// What stays in the chains of what strikes between rim and holder: assumed, no measurement was found. Putts and soft upshots
// come in at up to some 10 m/s; a disc twice as fast goes through or bounces out. The share is set so that a throw at the chains
// and a putt have the same chance where throwing begins to be as good as putting, at 13 to 15 m for the players tried.
const STAYS = 0.4;
const HALF_STAY_MPS = 14;
const STAY_SCALE_MPS = 2;

/**
 * One flight's place in its throw's scatter: by how much its aim and speed are off, the standard deviations of both, and how fast
 * it left the hand. Reused.
 */
export type Spread = { aim_rad: number; aimSd_rad: number; speed: number; speedSd: number; release_mps: number };

export function createSpread(): Spread {
  return { aim_rad: 0, aimSd_rad: 0, speed: 0, speedSd: 0, release_mps: 0 };
}

/**
 * Chances of throws that go in from range: integrated, not counted, for one in two hundred would be noise among 64 flights. Each flight
 * stands for all those like it in aim and speed: turned about the lie and stretched in length it passes the target, and the share of the
 * scatter for which it does so between rim and holder is a difference of normal distributions. Part of the scatter is taken
 * round each flight, part from where the flights themselves are, so that both together are the throw's scatter exactly.
 * @source smoothed bootstrap that keeps the variance: Silverman, Density Estimation (1986), section 6.4; own use
 */
export type HoleOut = Readonly<{
  /**
   * Chance that a flight strikes the target between rim and holder, were nothing in its way.
   * @param path - points `[along, left, up]` in the throw frame as the march has them
   * @param landedEast, landedNorth - where it came down
   */
  struck(
    path: Float32Array,
    first: number,
    points: number,
    lie: Lie,
    sinAim: number,
    cosAim: number,
    landedEast: number,
    landedNorth: number,
    spread: Spread,
  ): number;
  /** Share of those that stay in, of the flight asked about last. */
  stays(): number;
}>;

export function createHoleOut(world: World): HoleOut {
  const [basketEast, basketNorth] = world.basket;
  const basketGround = groundAt(world, basketEast, basketNorth);
  let staying = 0;
  return {
    stays: () => staying,
    struck(path, first, points, lie, sinAim, cosAim, landedEast, landedNorth, spread) {
      const de = basketEast - lie.east_m;
      const dn = basketNorth - lie.north_m;
      const range = Math.sqrt(de * de + dn * dn);
      if (!mayGoIn(range, landedEast - basketEast, landedNorth - basketNorth) || range < HALF_WIDTH_M) return 0;
      const beside = Math.abs((landedEast - lie.east_m) * dn - (landedNorth - lie.north_m) * de) / range;
      const aimSd = SMOOTHED * spread.aimSd_rad;
      if (beside > FAR_OUT * aimSd * range + HALF_WIDTH_M + BEND_M) return 0;
      const up = basketGround - lie.ground_m;
      // from the end back to where it comes down through the rim's height and the holder's
      let i = points - 1;
      while (i > 0 && path[first + 3 * i + 2] < up + RIM_M) i--;
      if (i === points - 1 || i === 0) return 0;
      const atRim = i;
      while (i > 0 && path[first + 3 * i + 2] < up + TOP_M) i--;
      const atTop = i;
      // bearings in the throw frame, left positive
      const along = sinAim * de + cosAim * dn;
      const left = sinAim * dn - cosAim * de;
      const rimAlong = crossed(path, first + 3 * atRim, up + RIM_M, 0);
      const rimLeft = crossed(path, first + 3 * atRim, up + RIM_M, 1);
      const topAlong = crossed(path, first + 3 * atTop, up + TOP_M, 0);
      const topLeft = crossed(path, first + 3 * atTop, up + TOP_M, 1);
      const middleAlong = (rimAlong + topAlong) / 2;
      const middleLeft = (rimLeft + topLeft) / 2;
      const off =
        Math.atan2(left * middleAlong - along * middleLeft, along * middleAlong + left * middleLeft) +
        (1 - KEPT) * spread.aim_rad;
      const half = Math.atan(HALF_WIDTH_M / range);
      if (!(Math.abs(off) < FAR_OUT * aimSd + half)) return 0;
      const rimRange = Math.sqrt(rimAlong * rimAlong + rimLeft * rimLeft);
      const topRange = Math.sqrt(topAlong * topAlong + topLeft * topLeft);
      if (!(rimRange > topRange)) return 0;
      const speedSd = SMOOTHED * spread.speedSd;
      const shift = (1 - KEPT) * spread.speed;
      const least = (range / rimRange - 1) / DISTANCE_BY_POWER + shift;
      const most = (range / topRange - 1) / DISTANCE_BY_POWER + shift;
      if (least > FAR_OUT * speedSd || most < -FAR_OUT * speedSd) return 0;
      staying = stayShare(spread.release_mps * slowed(path, first, atRim));
      return (
        (normalBelow((off + half) / aimSd) - normalBelow((off - half) / aimSd)) *
        (normalBelow(most / speedSd) - normalBelow(least / speedSd))
      );
    },
  };
}

/**
 * More than a throw from a distance goes in: what a bound on its value must leave room for.
 * @source [C] largest chances over shots and aims, 10 to 65 m, two invented players in calm air: at most 25/d²
 */
export function mostHoled(distance_m: number): number {
  const most = Math.min(MOST_HOLED, 25 / (distance_m * distance_m));
  return most < LEAST_ROOM ? 0 : most;
}

/** True when a throw from `range_m` that comes down so far east and north of the basket may have gone in on the way. */
export function mayGoIn(range_m: number, east_m: number, north_m: number): boolean {
  const near_m = NEAR_M + NEAR_SHARE * range_m;
  return east_m * east_m + north_m * north_m <= near_m * near_m;
}

/** Share of discs that stay in the chains, by the speed they strike them with. */
export function stayShare(speed_mps: number): number {
  return STAYS / (1 + Math.exp((speed_mps - HALF_STAY_MPS) / STAY_SCALE_MPS));
}

/** Coordinate `axis` where the piece that starts at `at` comes down through a height. */
function crossed(path: Float32Array, at: number, height: number, axis: 0 | 1): number {
  const fall = path[at + 2] - path[at + 5];
  const share = fall > 0 ? Math.min(1, Math.max(0, (path[at + 2] - height) / fall)) : 0;
  return path[at + axis] + share * (path[at + 3 + axis] - path[at + axis]);
}

/** Speed before a point against that out of the hand: points lie equal times apart. */
function slowed(path: Float32Array, first: number, point: number): number {
  return piece_m(path, first + 3 * (point - 1)) / piece_m(path, first);
}

function piece_m(path: Float32Array, at: number): number {
  const dx = path[at + 3] - path[at];
  const dy = path[at + 4] - path[at + 1];
  const dz = path[at + 5] - path[at + 2];
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}

/** Standard normal distribution. @source Abramowitz & Stegun 26.2.17, error below 7.5e-8 */
function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    Math.exp(-0.5 * z * z) *
    t *
    (0.127414796 + t * (-0.142248368 + t * (0.7107068705 + t * (-0.7265760135 + t * 0.5307027145))));
  return z > 0 ? 1 - tail : tail;
}
