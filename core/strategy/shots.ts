import type { WindProfile } from '../air/wind-profile.ts';
import { farthestLaunch_deg } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import {
  type DiscClass,
  type FittedPlayer,
  type FittedThrow,
  SPECIAL_SHAPES,
  type SpecialShape,
} from '../player/fitted-player.ts';
import { fittedSpecial } from './flown-as.ts';

export type LineShape = 'hyzer' | 'flat' | 'anhyzer';

/** A shot the player can be asked for; the aim is chosen with the lie. */
export type ShotSpec = Readonly<{
  /** Index into `FittedPlayer.throws`. */
  throwIndex: number;
  shape: LineShape | SpecialShape;
  /** Positive tilts towards the fade side; a roller or an overhead throw leaves the hand on its edge. */
  hyzer_deg: number;
  launch_deg: number;
  /** How the launch compares with the farthest one: low lines fly under things, high ones land soft. */
  height: 'low' | 'standard' | 'high';
  /** Share of the full release speed. */
  power: number;
}>;

/** What the player allows: everything when empty. */
export type Limits = Readonly<{
  classes?: readonly DiscClass[];
  hands?: readonly ('backhand' | 'forehand')[];
  discIds?: readonly string[];
}>;

const HYZER_DEG = 12;
const STEEP_HYZER_DEG = 25;
const ANHYZER_DEG = -10;

/** Lines offered with every disc and hand: bank, launch against the farthest one, powers. */
const LINES: readonly Readonly<{
  shape: LineShape;
  hyzer_deg: number;
  lift_deg: number;
  height: ShotSpec['height'];
  powers: readonly number[];
}>[] = [
  { shape: 'flat', hyzer_deg: 0, lift_deg: 0, height: 'standard', powers: [1, 0.92, 0.84, 0.76, 0.68, 0.6] },
  { shape: 'flat', hyzer_deg: 0, lift_deg: -3, height: 'low', powers: [1, 0.88, 0.76, 0.66] },
  { shape: 'flat', hyzer_deg: 0, lift_deg: -6, height: 'low', powers: [1, 0.86, 0.72] },
  { shape: 'flat', hyzer_deg: 0, lift_deg: 4, height: 'high', powers: [1, 0.82, 0.68] },
  { shape: 'hyzer', hyzer_deg: HYZER_DEG, lift_deg: 0, height: 'standard', powers: [1, 0.87, 0.74, 0.62] },
  { shape: 'hyzer', hyzer_deg: HYZER_DEG, lift_deg: -4, height: 'low', powers: [1, 0.8] },
  { shape: 'hyzer', hyzer_deg: STEEP_HYZER_DEG, lift_deg: 5, height: 'high', powers: [1, 0.8] },
  { shape: 'anhyzer', hyzer_deg: ANHYZER_DEG, lift_deg: 0, height: 'standard', powers: [1, 0.86, 0.72] },
  { shape: 'anhyzer', hyzer_deg: ANHYZER_DEG, lift_deg: -4, height: 'low', powers: [1, 0.8] },
];
/** Slow discs are also thrown softly. */
const SOFT_POWERS = [0.52, 0.44, 0.37, 0.3];
const SOFT_CLASSES: readonly DiscClass[] = ['putter', 'midrange'];
/** Rollers and overhead throws are offered as they were measured, and softer (their part power is judged: scatter grows with it). */
const SPECIAL_POWERS: Readonly<Record<SpecialShape, readonly number[]>> = {
  roller: [1, 0.88, 0.76, 0.64],
  overhead: [1, 0.92, 0.84, 0.76, 0.68],
};
const LAUNCH_POWERS = [1, 0.75, 0.5] as const;
const SEARCH_STEP_S = 0.15;

/**
 * Every shot of the bag: disc × hand × bank × height × power. The putting putter is kept for putts.
 * Launches are those that carry the scattered throw farthest at each power, calm; wind is met by choosing among the heights
 * (and refined at the lie).
 */
export function shotsOf(
  player: FittedPlayer,
  limits: Limits,
  flier: FlightBatch,
  profile: WindProfile,
  density_kgpm3: number,
): ShotSpec[] {
  const shots: ShotSpec[] = [];
  player.throws.forEach((fitted, throwIndex) => {
    if (!isAllowed(fitted, limits)) return;
    const launches = LAUNCH_POWERS.map(power => calmLaunch_deg(fitted, power, flier, profile, density_kgpm3));
    for (const line of LINES) {
      for (const power of powersOf(line, fitted)) {
        const launch_deg = Math.max(1, launchAt(launches, power) + line.lift_deg);
        shots.push({
          throwIndex,
          shape: line.shape,
          hyzer_deg: line.hyzer_deg,
          launch_deg,
          height: line.height,
          power,
        });
      }
    }
    shots.push(...specialShots(fitted, throwIndex));
  });
  return shots;
}

/** How many shots `shotsOf` gives, without flying any. */
export function shotCount(player: FittedPlayer, limits: Limits): number {
  return player.throws
    .filter(fitted => isAllowed(fitted, limits))
    .reduce(
      (sum, fitted) =>
        sum + LINES.reduce((own, line) => own + powersOf(line, fitted).length, 0) + specialShots(fitted, 0).length,
      0,
    );
}

/** Only shapes that were measured often enough; height is part of the shape. */
function specialShots(fitted: FittedThrow, throwIndex: number): ShotSpec[] {
  const shapes = SPECIAL_SHAPES.filter(shape => fitted.specials?.some(known => known.shape === shape && known.fit));
  return shapes.flatMap(shape => {
    const { hyzer_deg, launch_deg } = fittedSpecial(fitted, shape);
    return SPECIAL_POWERS[shape].map(
      (power): ShotSpec => ({ throwIndex, shape, hyzer_deg, launch_deg, height: 'standard', power }),
    );
  });
}

function powersOf(line: (typeof LINES)[number], fitted: FittedThrow): readonly number[] {
  const soft = line.height === 'standard' && line.shape === 'flat' && SOFT_CLASSES.includes(fitted.class);
  return soft ? [...line.powers, ...SOFT_POWERS] : line.powers;
}

export function isAllowed(fitted: FittedThrow, limits: Limits): boolean {
  return (
    fitted.role === 'throwing' &&
    (!limits.classes || limits.classes.includes(fitted.class)) &&
    (!limits.hands || limits.hands.includes(fitted.hand)) &&
    (!limits.discIds || limits.discIds.includes(fitted.discId))
  );
}

function calmLaunch_deg(
  fitted: FittedThrow,
  power: number,
  flier: FlightBatch,
  profile: WindProfile,
  density_kgpm3: number,
): number {
  flier.setDisc(fitted.model);
  flier.setAir(density_kgpm3, 0, 0, profile);
  flier.setPlane(0, 0, 0);
  flier.setStep(SEARCH_STEP_S);
  const release = { speed_mps: fitted.releaseSpeed_mps * power, hyzer_deg: 0, spinPerSpeed: fitted.spinPerSpeed };
  return farthestLaunch_deg(flier, fitted.model.diameter_m / 2, 'turf', release, fitted.scatter);
}

/** Linear between the powers solved for; held below the lowest. */
function launchAt(launches: readonly number[], power: number): number {
  for (let i = 1; i < LAUNCH_POWERS.length; i++) {
    if (power >= LAUNCH_POWERS[i]) {
      const t = (power - LAUNCH_POWERS[i]) / (LAUNCH_POWERS[i - 1] - LAUNCH_POWERS[i]);
      return launches[i] + t * (launches[i - 1] - launches[i]);
    }
  }
  return launches[launches.length - 1];
}
