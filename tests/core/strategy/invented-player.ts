import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel, releaseSpeedShare } from '../../../core/flight/disc-model.ts';
import {
  DEGREE_FIVE,
  farthestLaunch_deg,
  restMoments,
  type Scatter,
  TYPICAL_SCATTER,
} from '../../../core/flight/dispersion.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { type Hand, type Handedness, releaseSpin_radps } from '../../../core/flight/release.ts';
import { classOfSpeed } from '../../../core/player/disc-class.ts';
import type { FittedPlayer, FittedThrow, PuttingCurve } from '../../../core/player/fitted-player.ts';

/** Trade numbers of an invented disc. */
export type Numbers = Readonly<{ id: string; speed: number; glide: number; turn: number; fade: number }>;

/** An invented bag of six, one or two a class. */
export const BAG: readonly Numbers[] = [
  { id: 'thimble', speed: 3, glide: 4, turn: -0.5, fade: 1 },
  { id: 'kettle', speed: 5, glide: 5, turn: -1, fade: 1 },
  { id: 'mallet', speed: 5, glide: 4, turn: 0, fade: 3 },
  { id: 'ferry', speed: 7, glide: 5, turn: -1, fade: 1.5 },
  { id: 'lighthouse', speed: 9, glide: 5, turn: -1, fade: 2 },
  { id: 'meteor', speed: 12, glide: 5, turn: -1, fade: 3 },
];

const PUTTS: PuttingCurve = {
  floor: 0.002,
  ceiling: 0.99,
  half_m: 8,
  scale_m: 2,
  attempts: 300,
  basis: 'measured',
};

type Invented = Readonly<{
  arm_mps: number;
  discs?: readonly Numbers[];
  hands?: readonly Hand[];
  handedness?: Handedness;
  /** Multiplier of the typical scatter, or one by disc speed. */
  scatter?: number | ((discSpeed: number) => number);
}>;

/** A player who is known exactly: every disc thrown as its numbers say, scatter given, nothing fitted. */
export function inventedPlayer({
  arm_mps,
  discs = BAG,
  hands = ['backhand'],
  handedness = 'right',
  scatter = 1,
}: Invented): FittedPlayer {
  const flier = createFlightBatch();
  flier.setAir(1.2, 0, 0, windProfile('open'));
  flier.setPlane(0, 0, 0);
  flier.setStep(0.08);
  const throws = discs.flatMap(disc =>
    hands.map((hand): FittedThrow => {
      const model = discModel(disc);
      const radius_m = model.diameter_m / 2;
      const share = hand === 'forehand' ? 0.92 : 1;
      const speed_mps = share * arm_mps * releaseSpeedShare(disc.speed);
      const spinPerSpeed = releaseSpin_radps(hand, handedness, 1, model.diameter_m);
      const own = scaled(TYPICAL_SCATTER, typeof scatter === 'number' ? scatter : scatter(disc.speed));
      flier.setDisc(model);
      const release = { speed_mps, hyzer_deg: 0, spinPerSpeed };
      const launch_deg = farthestLaunch_deg(flier, radius_m, 'turf', release, own);
      const rest = restMoments(flier, radius_m, 'turf', { ...release, launch_deg }, own, DEGREE_FIVE);
      return {
        discId: disc.id,
        disc: disc.id,
        class: classOfSpeed(disc.speed),
        discSpeed: disc.speed,
        role: 'throwing',
        hand,
        n: 40,
        basis: 'measured',
        model,
        releaseSpeed_mps: speed_mps,
        releaseSpeedSd: 0.005,
        stabilityOffset: 0,
        stabilityOffsetSd: 0.1,
        spinPerSpeed,
        scatter: own,
        launch_deg,
        averageDay_m: rest.along_m,
        averageDaySd_m: 0.5,
        best_m: rest.along_m + 1.6449 * rest.alongSd_m,
        bestSd_m: 0.8,
        finish_m: -rest.left_m,
        finishSd_m: 0.5,
        distanceSd_m: rest.alongSd_m,
        sideSd_m: rest.leftSd_m,
        notes: [],
      };
    }),
  );
  return { name: 'Invented', handedness, throws, putting: PUTTS, notes: [] };
}

function scaled(scatter: Scatter, by: number): Scatter {
  return {
    speed: scatter.speed * by,
    azimuth_deg: scatter.azimuth_deg * by,
    hyzer_deg: scatter.hyzer_deg * by,
    launch_deg: scatter.launch_deg * by,
    nose_deg: scatter.nose_deg * by,
  };
}
