import { windProfile } from '../air/wind-profile.ts';
import { restMoments, SIGMA_POINTS } from '../flight/dispersion.ts';
import { createFlightBatch } from '../flight/flight-batch.ts';
import type { FittedThrow } from './fitted-player.ts';

/** Wider than this between neighbours, with no disc in it, is a gap (assumed; part power of the longer disc has to fill it). */
export const GAP_M = 12;
/** A kind of finish whose longest disc stays this far behind the longest of all is missing beyond it (assumed). */
export const FINISH_GAP_M = 15;
/** Two discs whose throws come to rest closer than this, in standard deviations of one throw, are a double (assumed). */
export const DOUBLE_UNDER_SD = 0.75;
/** A double has to be one against this wind too: discs alike in calm air may part in it (the speed is assumed). */
export const HEADWIND_MPS = 6;
/** Sideways finish as a share of the distance: more to the fade side fades, more to the other turns (assumed). */
const FADES_FROM = 0.04;
const TURNS_FROM = -0.02;
const FIELD_DENSITY_KGPM3 = 1.2; // dry air at 20 °C and sea level

export type Lean = 'turns' | 'straight' | 'fades';
export const LEANS: readonly Lean[] = ['turns', 'straight', 'fades'];

/** Where one disc from one hand lies in the bag; distances and finishes as in `FittedThrow`. */
type BagSpot = Readonly<{
  discId: string;
  disc: string;
  hand: FittedThrow['hand'];
  averageDay_m: number;
  finish_m: number;
  lean: Lean;
  /** Mean rest against `HEADWIND_MPS`, same launch. */
  headwind: Readonly<{ distance_m: number; finish_m: number }>;
}>;

/** No disc between two neighbours. `isSure`: the gap is wider than `GAP_M` in at least 95 of 100 readings of the fieldwork. */
type DistanceGap = Readonly<{
  hand: FittedThrow['hand'];
  shorter: string;
  longer: string;
  from_m: number;
  to_m: number;
  isSure: boolean;
}>;

/** A kind of finish the hand lacks (`longest_m` null) or lacks beyond some distance. */
type FinishGap = Readonly<{
  hand: FittedThrow['hand'];
  lean: Lean;
  longest_m: number | null;
  /** Of all the hand's discs. */
  reach_m: number;
}>;

/** Two discs that land in the same place. */
type BagDouble = Readonly<{
  hand: FittedThrow['hand'];
  discs: readonly [string, string];
  apart_m: number;
  /** In standard deviations of one throw, calm and against the headwind. */
  apartSds: number;
  apartInHeadwindSds: number;
  /** Best chance to say from one landing which of the two was thrown: Φ(apart / 2); 0.5 is a coin. */
  tellApartChance: number;
  /** True when both are measured and the doubt about them leaves them closer than one standard deviation. */
  isSure: boolean;
}>;

export type BagLayout = Readonly<{
  spots: readonly BagSpot[];
  gaps: readonly DistanceGap[];
  finishGaps: readonly FinishGap[];
  doubles: readonly BagDouble[];
}>;

const FEWEST_FOR_FINISHES = 3;
const ONE_SIDED_95 = 1.6448536269514722; // Φ⁻¹(0.95)

/**
 * The throwing discs laid out by distance and finish, each hand for itself; the putting putter is kept out.
 * @param throws - the player's fitted throws
 */
export function bagLayout(throws: readonly FittedThrow[]): BagLayout {
  const hands = [...new Set(throws.map(t => t.hand))];
  const flier = createFlightBatch();
  const parts = hands.map(hand => {
    const own = throws
      .filter(t => t.hand === hand && t.role === 'throwing')
      .sort((a, b) => a.averageDay_m - b.averageDay_m || a.discId.localeCompare(b.discId));
    const against = new Map(own.map(t => [t, inHeadwind(flier, t)]));
    return {
      spots: own.map(t => spotOf(t, against.get(t)!)),
      gaps: distanceGaps(own),
      finishGaps: finishGaps(own),
      doubles: doublesOf(own, against),
    };
  });
  return {
    spots: parts.flatMap(part => part.spots),
    gaps: parts.flatMap(part => part.gaps),
    finishGaps: parts.flatMap(part => part.finishGaps),
    doubles: parts.flatMap(part => part.doubles),
  };
}

type Rest = Readonly<{ distance_m: number; finish_m: number; distanceSd_m: number; sideSd_m: number }>;

function inHeadwind(flier: ReturnType<typeof createFlightBatch>, t: FittedThrow): Rest {
  flier.setStep(0.08);
  flier.setDisc(t.model);
  flier.setPlane(0, 0, 0);
  flier.setAir(FIELD_DENSITY_KGPM3, -HEADWIND_MPS, 0, windProfile('open'));
  const { releaseSpeed_mps: speed_mps, launch_deg, spinPerSpeed } = t;
  const release = { speed_mps, launch_deg, hyzer_deg: 0, spinPerSpeed };
  const rest = restMoments(flier, t.model.diameter_m / 2, 'turf', release, t.scatter, SIGMA_POINTS);
  return {
    distance_m: rest.along_m,
    finish_m: -rest.left_m,
    distanceSd_m: rest.alongSd_m,
    sideSd_m: rest.leftSd_m,
  };
}

/** Which way a finish leans: towards the side the disc fades to from this hand, or the other. */
export function leanOf(t: Pick<FittedThrow, 'spinPerSpeed' | 'finish_m' | 'averageDay_m'>): Lean {
  // a clockwise throw (negative spin) fades left, where the finish is negative
  const share = (Math.sign(t.spinPerSpeed) * t.finish_m) / Math.max(1, t.averageDay_m);
  return share > FADES_FROM ? 'fades' : share < TURNS_FROM ? 'turns' : 'straight';
}

function spotOf(t: FittedThrow, { distance_m, finish_m }: Rest): BagSpot {
  const { discId, disc, hand, averageDay_m } = t;
  return {
    discId,
    disc,
    hand,
    averageDay_m,
    finish_m: t.finish_m,
    lean: leanOf(t),
    headwind: { distance_m, finish_m },
  };
}

function distanceGaps(sorted: readonly FittedThrow[]): DistanceGap[] {
  return sorted.slice(1).flatMap((longer, i) => {
    const shorter = sorted[i]!;
    const width_m = longer.averageDay_m - shorter.averageDay_m;
    if (width_m <= GAP_M) return [];
    const sd_m = Math.hypot(longer.averageDaySd_m, shorter.averageDaySd_m);
    return [
      {
        hand: longer.hand,
        shorter: shorter.disc,
        longer: longer.disc,
        from_m: shorter.averageDay_m,
        to_m: longer.averageDay_m,
        isSure: width_m - ONE_SIDED_95 * sd_m > GAP_M,
      },
    ];
  });
}

function finishGaps(sorted: readonly FittedThrow[]): FinishGap[] {
  const last = sorted.at(-1);
  if (last === undefined || sorted.length < FEWEST_FOR_FINISHES) return [];
  const reach_m = last.averageDay_m;
  return LEANS.flatMap(lean => {
    const longest_m = sorted.findLast(t => leanOf(t) === lean)?.averageDay_m ?? null;
    if (longest_m !== null && reach_m - longest_m <= FINISH_GAP_M) return [];
    return [{ hand: last.hand, lean, longest_m, reach_m }];
  });
}

function doublesOf(own: readonly FittedThrow[], against: ReadonlyMap<FittedThrow, Rest>): BagDouble[] {
  return own.flatMap((a, i) =>
    own.slice(i + 1).flatMap(b => {
      const apartSds = apart(restOf(a), restOf(b));
      const apartInHeadwindSds = apart(against.get(a)!, against.get(b)!);
      if (Math.max(apartSds, apartInHeadwindSds) >= DOUBLE_UNDER_SD) return [];
      const doubt = Math.hypot(
        Math.hypot(a.averageDaySd_m, b.averageDaySd_m) / Math.hypot(a.distanceSd_m, b.distanceSd_m),
        Math.hypot(a.finishSd_m, b.finishSd_m) / Math.hypot(a.sideSd_m, b.sideSd_m),
      );
      const isMeasured = a.basis === 'measured' && b.basis === 'measured';
      return [
        {
          hand: a.hand,
          discs: [a.disc, b.disc] as const,
          apart_m: Math.hypot(a.averageDay_m - b.averageDay_m, a.finish_m - b.finish_m),
          apartSds,
          apartInHeadwindSds,
          tellApartChance: normalBelow(apartSds / 2),
          isSure: isMeasured && apartSds + ONE_SIDED_95 * doubt < 1,
        },
      ];
    }),
  );
}

function restOf(t: FittedThrow): Rest {
  const { averageDay_m: distance_m, finish_m, distanceSd_m, sideSd_m } = t;
  return { distance_m, finish_m, distanceSd_m, sideSd_m };
}

/** Distance of two rests in standard deviations of one throw, along and sideways taken apart (their mean variance). */
function apart(a: Rest, b: Rest): number {
  const along = (a.distance_m - b.distance_m) ** 2 / ((a.distanceSd_m ** 2 + b.distanceSd_m ** 2) / 2);
  const side = (a.finish_m - b.finish_m) ** 2 / ((a.sideSd_m ** 2 + b.sideSd_m ** 2) / 2);
  return Math.sqrt(along + side);
}

/**
 * Standard normal distribution function.
 * @source Abramowitz & Stegun (1964) 26.2.17, error under 7.5e-8 (coefficients from memory, checked in tests)
 */
function normalBelow(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return x >= 0 ? 1 - tail : tail;
}
