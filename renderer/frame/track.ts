import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { ShotDrawing } from '../../core/strategy/hole-drawing.ts';

/** A place on the ground track of a flight. */
export type TrackPoint = Readonly<{
  at: LocalPoint /** Height of the middle flight above the tee's ground. */;
  z_m: number;
}>;

/** The middle of a flight at steps of about `step_m` over the ground, hand to rest. */
export function trackOf(path: ShotDrawing['path'], step_m: number): TrackPoint[] {
  const points: TrackPoint[] = [];
  for (let i = 1; i < path.length; i++) {
    const [ae, an, az] = path[i - 1]!;
    const [be, bn, bz] = path[i]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(be - ae, bn - an) / step_m));
    for (let j = 0; j < steps; j++) {
      const f = j / steps;
      points.push({ at: [ae + f * (be - ae), an + f * (bn - an)], z_m: az + f * (bz - az) });
    }
  }
  const last = path.at(-1);
  if (last !== undefined) points.push({ at: [last[0], last[1]], z_m: last[2] });
  return points;
}

/** The track drawn on, straight from where the disc rests to the basket: what stands there is still to come. */
export function trackToBasket(track: readonly TrackPoint[], basket: LocalPoint, step_m: number): LocalPoint[] {
  const flown = track.map(point => point.at);
  const end = flown.at(-1) ?? [0, 0];
  const left_m = Math.hypot(basket[0] - end[0], basket[1] - end[1]);
  const steps = Math.floor(left_m / step_m);
  for (let i = 1; i <= steps; i++)
    flown.push([
      end[0] + ((basket[0] - end[0]) * i * step_m) / left_m,
      end[1] + ((basket[1] - end[1]) * i * step_m) / left_m,
    ]);
  flown.push(basket);
  return flown;
}
