import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';

const POINTS = 48;

/** An ellipse as a ring of local points. */
export function ellipseRing({
  centre,
  semiMajor_m,
  semiMinor_m,
  bearing_deg,
}: ShotDrawing['spread'][number]): LocalPoint[] {
  const angle = (bearing_deg * Math.PI) / 180;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return Array.from({ length: POINTS }, (_, i) => {
    const turn = (i / POINTS) * 2 * Math.PI;
    const [long, across] = [semiMajor_m * Math.cos(turn), semiMinor_m * Math.sin(turn)];
    return [centre[0] + long * sin + across * cos, centre[1] + long * cos - across * sin] as const;
  });
}
