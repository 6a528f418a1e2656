import { bearing_deg } from '../geometry/bearing.ts';
import { findCeilings } from '../geometry/find-ceilings.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import type { CeilingReport } from '../geometry/hole-report.ts';
import { lineLength_m } from '../geometry/line-length.ts';
import { groundHeight } from '../geometry/terrain.ts';
import type { ReachLine } from './reach-lines.ts';

/** What a look at length and ceilings says of a hole under a limit, before anything is planned. */
export type HoleEstimate = Readonly<{
  playLength_m: number;
  par: number;
  /** Longest full throw that gets under the ceilings of the hole, into its wind; average day. */
  reach_m: number;
  /** Chance to be within 20 m in the throws par allows before two putts, were nothing else in the way. */
  reach20Chance: number;
  expectedThrows: number;
  /** A ceiling keeps the throw lower than it would carry farthest. */
  underCeiling: boolean;
}>;

const OUTER_M = 20; // statistics convention
/** Metres of flat ground that a metre of climb is worth; common practice in course design, no source. */
const LENGTH_PER_RISE = 3;
/** A throw from the fairway goes 80 % of a tee throw (close range method, as in derive-par). */
const FAIRWAY_SHARE = 0.8;
/** Throws to hole out from within 20 m, on the average (assumed; for the order of holes only). */
const FROM_OUTER = 1.75;

/** @param lines - full throws along the first leg of the hole, longest first */
export function estimateHole(map: HoleMap, lines: readonly ReachLine[]): HoleEstimate {
  if (lines.length === 0) throw new RangeError('lines must hold at least one full throw, got none');
  const playLength_m = lineLength_m(map.line);
  const rise_m = map.terrain.known ? groundHeight(map.terrain, map.basket[0], map.basket[1]) : 0;
  const need_m = playLength_m + LENGTH_PER_RISE * rise_m - OUTER_M;
  const ceilings = findCeilings(map);
  const under = lines.find(line => ceilings.every(ceiling => passesUnder(line, ceiling)));
  const line = under ?? cut(lines.at(-1)!, ceilings);
  const allowed = Math.max(1, map.par - 2);
  const further = FAIRWAY_SHARE * (allowed - 1);
  const mean_m = line.distance_m * (1 + further);
  const sd_m = Math.max(0.5, line.distanceSd_m * Math.sqrt(1 + FAIRWAY_SHARE * further));
  const beside = 2 * normalCdf(OUTER_M / Math.max(0.5, line.sideSd_m)) - 1;
  const whole_m = need_m + OUTER_M;
  const long =
    whole_m <= mean_m
      ? // within reach: thrown softer, it may come up short or run past
        2 * normalCdf(OUTER_M / (sd_m * Math.max(0.2, whole_m / Math.max(1, mean_m)))) - 1
      : normalCdf((mean_m - need_m) / sd_m);
  const throws = Math.max(1, 1 + (need_m - line.distance_m) / Math.max(5, FAIRWAY_SHARE * line.distance_m));
  return {
    playLength_m,
    par: map.par,
    reach_m: line.distance_m,
    reach20Chance: long * beside,
    expectedThrows: throws + FROM_OUTER,
    underCeiling: under !== lines[0],
  };
}

/** True bearing of the first leg: the tee throw's direction. */
export function firstLeg_deg(map: HoleMap): number {
  return bearing_deg(map.line[0]!, map.line[1]!);
}

function passesUnder({ path }: ReachLine, { from_m, to_m, clearance_m }: CeilingReport): boolean {
  return path.every(([along_m, up_m]) => along_m < from_m || along_m > to_m || up_m <= clearance_m);
}

/** A throw that no ceiling lets through ends at the first one it meets. */
function cut(line: ReachLine, ceilings: readonly CeilingReport[]): ReachLine {
  const first = ceilings.find(ceiling => !passesUnder(line, ceiling));
  return { ...line, distance_m: Math.min(line.distance_m, first?.from_m ?? line.distance_m) };
}

/** @source Abramowitz & Stegun 7.1.26 (error below 1.5e-7) */
function normalCdf(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-x * x);
  return z < 0 ? tail / 2 : 1 - tail / 2;
}
