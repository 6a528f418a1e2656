import type { Day } from '../air/day.ts';
import { windProfile } from '../air/wind-profile.ts';
import { createFlier, type Flier, LANDING } from '../flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';
import type { FittedPlayer, FittedThrow } from '../player/fitted-player.ts';
import type { AllowedThrows } from './practice-limit.ts';

/** A full throw along one line in the wind of a hole, as far as a cheap estimate needs it. */
export type ReachLine = Readonly<{
  /** Average day, at rest. */
  distance_m: number;
  distanceSd_m: number;
  sideSd_m: number;
  /** Step points of the middle flight: distance along the aim, height above the lie. */
  path: readonly (readonly [along_m: number, up_m: number])[];
}>;

/** Against the launch that carries farthest, as the plan's own lines. */
const LOWER_DEG = [0, -3, -6] as const;
const LEAST_LAUNCH_DEG = 1;
const DEGREE = Math.PI / 180;

/** Makes the full throws of a limit for any direction of aim. @returns longest first */
export function reachLines(
  player: FittedPlayer,
  allowed: AllowedThrows,
  day: Day,
): (aimBearing_deg: number) => ReachLine[] {
  const flier = createFlier();
  flier.setStep(0.08);
  flier.setPlane(0, 0, 0);
  const thrown = player.throws.filter(
    ({ discId, hand, role }) =>
      role === 'throwing' && allowed.discIds.includes(discId) && (allowed.hands?.includes(hand) ?? true),
  );
  const profile = windProfile('open');
  return aimBearing_deg => {
    const from = (day.wind.from_deg - aimBearing_deg) * DEGREE;
    const { speed_mps } = day.wind;
    const calm = () => flier.setAir(day.density_kgpm3, 0, 0, profile);
    const windy = () =>
      flier.setAir(day.density_kgpm3, -speed_mps * Math.cos(from), speed_mps * Math.sin(from), profile);
    return thrown
      .flatMap(fitted => {
        flier.setDisc(fitted.model);
        calm();
        fly(flier, fitted, fitted.launch_deg);
        // the mean of scattered throws falls short of their middle by this share
        const share = fitted.averageDay_m / Math.max(1, rest_m(flier, fitted));
        windy();
        return LOWER_DEG.map(lower_deg => {
          fly(flier, fitted, Math.max(LEAST_LAUNCH_DEG, fitted.launch_deg + lower_deg));
          const distance_m = share * rest_m(flier, fitted);
          const spread = distance_m / Math.max(1, fitted.averageDay_m);
          return {
            distance_m,
            distanceSd_m: fitted.distanceSd_m * spread,
            sideSd_m: fitted.sideSd_m * spread,
            path: pathOf(flier),
          };
        });
      })
      .sort((a, b) => b.distance_m - a.distance_m);
  };
}

function fly(flier: Flier, fitted: FittedThrow, launch_deg: number): void {
  const speed = fitted.releaseSpeed_mps;
  flier.fly(speed, 0, launch_deg, 0, 0, fitted.spinPerSpeed * speed, RELEASE_HEIGHT_M);
}

const play = new Float64Array(2);

function rest_m(flier: Flier, fitted: FittedThrow): number {
  groundPlay(flier.landing, fitted.model.diameter_m / 2, SURFACE_FRICTION.turf, 0, 0, play);
  return Math.max(0, flier.landing[LANDING.x]! + play[0]!);
}

function pathOf(flier: Flier): [number, number][] {
  return Array.from({ length: flier.pathPoints() }, (_, i) => [flier.path[3 * i]!, flier.path[3 * i + 2]!]);
}
