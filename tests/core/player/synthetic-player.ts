import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel, releaseSpeedShare } from '../../../core/flight/disc-model.ts';
import {
  DEGREE_FIVE,
  farthestLaunch_deg,
  type RestMoments,
  restMoments,
  type Scatter,
  TYPICAL_SCATTER,
} from '../../../core/flight/dispersion.ts';
import { LANDING, LANDING_NUMBERS } from '../../../core/flight/flier.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import { inverseNormal, normalSamples } from '../../../core/flight/normal-samples.ts';
import { type Hand, type Handedness, RELEASE_HEIGHT_M, releaseSpin_radps } from '../../../core/flight/release.ts';
import { restSamples } from '../../../core/player/rest-samples.ts';

const BEST_SAMPLE = normalSamples(384, 77);

export type InventedDisc = Readonly<{
  id: string;
  name: string;
  speed: number;
  glide: number;
  turn: number;
  fade: number;
  throws: number;
}>;
export type InventedSession = Readonly<{ speed_mps: number; from_deg: number; bearing_deg: number; rise_m?: number }>;

/** Invented bag, all classes. */
export const INVENTED_BAG: readonly Omit<InventedDisc, 'throws'>[] = [
  { id: 'pebble', name: 'Pebble', speed: 2, glide: 3, turn: 0, fade: 1 },
  { id: 'acorn', name: 'Acorn', speed: 3, glide: 4, turn: -0.5, fade: 0.5 },
  { id: 'lantern', name: 'Lantern', speed: 5, glide: 5, turn: -1, fade: 1 },
  { id: 'anvil', name: 'Anvil', speed: 5, glide: 4, turn: 0, fade: 3 },
  { id: 'willow', name: 'Willow', speed: 7, glide: 5, turn: -1, fade: 1.5 },
  { id: 'harrier', name: 'Harrier', speed: 9, glide: 5, turn: -1, fade: 2 },
  { id: 'comet', name: 'Comet', speed: 12, glide: 5, turn: -1, fade: 3 },
];

export const CALM: readonly InventedSession[] = [{ speed_mps: 0, from_deg: 0, bearing_deg: 90 }];

export type InventedPlayer = Readonly<{
  seed: number;
  arm_mps: number;
  discs: readonly InventedDisc[];
  sessions?: readonly InventedSession[];
  /** Disc-to-disc spread of the release speed (share) and of the stability (turn units). */
  speedSpread?: number;
  stabilitySpread?: number;
  /** Multipliers of the typical scatter. */
  longScatter?: number;
  sideScatter?: number;
  hand?: Hand;
  handedness?: Handedness;
}>;

type Truth = Readonly<{
  discId: string;
  releaseSpeed_mps: number;
  stability: number;
  moments: RestMoments;
  /** 95th percentile of the distance, of 384 flights. */
  best_m: number;
}>;

/** Uniform and normal numbers from a seed. */
export function randomOf(seed: number) {
  const rng = xoroshiro128plus(seed);
  for (let i = 0; i < 32; i++) rng.next();
  const uniform = () => ((rng.next() >>> 0) + 0.5) / 2 ** 32;
  return { uniform, normal: () => inverseNormal(uniform()) };
}

/** A player with a known arm, and the fieldwork that player would write down: every throw is one scattered flight. */
export function inventPlayer(player: InventedPlayer) {
  const { normal } = randomOf(player.seed);
  const hand = player.hand ?? 'backhand';
  const handedness = player.handedness ?? 'right';
  const sessions = player.sessions ?? CALM;
  const long = player.longScatter ?? 1;
  const side = player.sideScatter ?? 1;
  const scatter: Scatter = {
    speed: TYPICAL_SCATTER.speed * long,
    launch_deg: TYPICAL_SCATTER.launch_deg * long,
    nose_deg: TYPICAL_SCATTER.nose_deg * long,
    azimuth_deg: TYPICAL_SCATTER.azimuth_deg * side,
    hyzer_deg: TYPICAL_SCATTER.hyzer_deg * side,
  };
  const flier = createFlightBatch();
  const open = windProfile('open');
  const play = new Float64Array(2);
  const landing = new Float64Array(LANDING_NUMBERS);
  const truths: Truth[] = [];
  const written = sessions.map(s => ({
    wind: { speed_mps: s.speed_mps, from_deg: s.from_deg },
    bearing_deg: s.bearing_deg,
    rise_m: s.rise_m ?? 0,
    throws: [] as { discId: string; hand: Hand; shape: 'flat'; power: 'full'; distance_m: number; side_m: number }[],
  }));
  for (const disc of player.discs) {
    const speed_mps =
      player.arm_mps * releaseSpeedShare(disc.speed) * Math.exp((player.speedSpread ?? 0.02) * normal());
    const stability = (player.stabilitySpread ?? 0.5) * normal();
    const model = discModel({ ...disc, stabilityOffset: stability });
    const radius_m = model.diameter_m / 2;
    const spinPerSpeed = releaseSpin_radps(hand, handedness, 1, model.diameter_m);
    const release = { speed_mps, hyzer_deg: 0, spinPerSpeed };
    const throwIn = (windX: number, windY: number, grade: number, count: number) => {
      flier.setDisc(model);
      flier.setPlane(0, 0, 0);
      flier.setAir(1.2, windX, 0, open);
      const launch_deg = farthestLaunch_deg(flier, radius_m, 'turf', release, scatter);
      flier.setAir(1.2, windX, windY, open);
      flier.setPlane(0, grade, 0);
      const rests: [number, number][] = [];
      for (let i = 0; i < count; i++) {
        const speed = speed_mps * (1 + scatter.speed * normal());
        flier.release(
          0,
          speed,
          scatter.azimuth_deg * normal(),
          launch_deg + scatter.launch_deg * normal(),
          scatter.nose_deg * normal(),
          scatter.hyzer_deg * normal(),
          spinPerSpeed * speed,
          RELEASE_HEIGHT_M,
        );
        flier.fly(1);
        flier.landing(0, landing);
        groundPlay(landing, radius_m, SURFACE_FRICTION.turf, grade, 0, play);
        rests.push([landing[LANDING.x]! + play[0]!, landing[LANDING.y]! + play[1]!]);
      }
      return { launch_deg, rests };
    };
    sessions.forEach((s, k) => {
      const count = Math.floor(disc.throws / sessions.length) + (k < disc.throws % sessions.length ? 1 : 0);
      if (count === 0) return;
      const angle = ((s.from_deg - s.bearing_deg) * Math.PI) / 180;
      const grade = (s.rise_m ?? 0) / 70;
      const { rests } = throwIn(-s.speed_mps * Math.cos(angle), s.speed_mps * Math.sin(angle), grade, count);
      for (const [along, left] of rests)
        written[k]!.throws.push({
          discId: disc.id,
          hand,
          shape: 'flat',
          power: 'full',
          distance_m: Math.max(1, along),
          side_m: -left,
        });
    });
    const { launch_deg } = throwIn(0, 0, 0, 0);
    flier.setPlane(0, 0, 0);
    truths.push({
      discId: disc.id,
      releaseSpeed_mps: speed_mps,
      stability,
      moments: restMoments(flier, radius_m, 'turf', { ...release, launch_deg }, scatter, DEGREE_FIVE),
      get best_m() {
        // only some ask for it, and it takes hundreds of flights
        flier.setDisc(model);
        flier.setAir(1.2, 0, 0, open);
        flier.setPlane(0, 0, 0);
        const best = restSamples(flier, radius_m, { ...release, launch_deg }, scatter, BEST_SAMPLE).along_m;
        return best.sort((a, b) => a - b)[Math.round(0.95 * (best.length - 1))]!;
      },
    });
  }
  const file = {
    name: `Invented ${player.seed}`,
    handedness,
    discs: player.discs.map(({ throws: _, ...disc }) => disc),
    sessions: written.filter(s => s.throws.length > 0),
  };
  return { file, truths };
}
