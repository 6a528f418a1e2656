import type { LocalPoint } from '../../geometry/hole-map.ts';
import type { ShotDrawing } from '../../strategy/hole-drawing.ts';
import type { ShotReport } from '../../strategy/plan-report.ts';

export type SpreadEllipse = ShotDrawing['spread'][number];

const DEGREE = Math.PI / 180;

/** Where the middle of the throw comes to rest, from the tee. */
export function restPoint({ aimBearing_deg, distance_m, finish_m }: ShotReport): LocalPoint {
  const [sin, cos] = [Math.sin(aimBearing_deg * DEGREE), Math.cos(aimBearing_deg * DEGREE)];
  return [distance_m * sin + finish_m * cos, distance_m * cos - finish_m * sin];
}

/** Radius, in standard deviations, of the ellipse that holds this share of a normal spread: √(−2 ln(1 − share)), Rayleigh. */
const radius_sd = (share: number): number => Math.sqrt(-2 * Math.log(1 - share));

/** The ellipses that hold half and nine tenths of the throws, were nothing in the way. */
export function spreadOf(shot: ShotReport): SpreadEllipse[] {
  const { distanceSd_m, sideSd_m, aimBearing_deg } = shot;
  const isLong = distanceSd_m >= sideSd_m;
  return [0.5, 0.9].map(share => ({
    share,
    centre: [...restPoint(shot)],
    semiMajor_m: Math.max(distanceSd_m, sideSd_m) * radius_sd(share),
    semiMinor_m: Math.min(distanceSd_m, sideSd_m) * radius_sd(share),
    bearing_deg: isLong ? aimBearing_deg : aimBearing_deg + 90,
  }));
}

const CORNERS = 48;

export function ellipsePoints({ centre, semiMajor_m, semiMinor_m, bearing_deg }: SpreadEllipse): LocalPoint[] {
  const [sin, cos] = [Math.sin(bearing_deg * DEGREE), Math.cos(bearing_deg * DEGREE)];
  return Array.from({ length: CORNERS }, (_, k): LocalPoint => {
    const angle = (2 * Math.PI * k) / CORNERS;
    const [long, short] = [semiMajor_m * Math.cos(angle), semiMinor_m * Math.sin(angle)];
    return [centre[0] + long * sin + short * cos, centre[1] + long * cos - short * sin];
  });
}
