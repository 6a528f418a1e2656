import type { Ends, Lie, Marcher } from './march.ts';
import { addPath, type ThrowValue } from './throw-value.ts';
import { PATH_POINTS, PATH_STRIDE } from './trajectory-library.ts';
import type { ValueField } from './value-field.ts';
import type { WindBins } from './wind-bins.ts';
import type { World } from './world.ts';

const DEGREE = Math.PI / 180;

/** Marches stored paths of a shot from a lie along an aim, and values where they end. */
export type ShotMarcher = Readonly<{
  ends: Ends;
  /** One sample's ends, left in `ends`. */
  trace(shot: number, sample: number, lie: Lie, aimBearing_deg: number): void;
  /** Adds samples from…to−1 of the shot to `value`. */
  add(
    shot: number,
    from: number,
    to: number,
    lie: Lie,
    aimBearing_deg: number,
    field: ValueField,
    value: ThrowValue,
  ): void;
}>;

export function createShotMarcher(world: World, bins: WindBins, marcher: Marcher): ShotMarcher {
  const samples = bins.library.samples;
  const dropX = world.dropZone ? world.dropZone[0] : Number.NaN;
  const dropY = world.dropZone ? world.dropZone[1] : Number.NaN;
  function trace(shot: number, sample: number, lie: Lie, aimBearing_deg: number): void {
    const { paths } = bins.at(aimBearing_deg);
    const first = (shot * samples + sample) * PATH_STRIDE;
    const skid = first + 3 * PATH_POINTS;
    const aim = aimBearing_deg * DEGREE;
    marcher.march(
      paths,
      first,
      PATH_POINTS,
      lie,
      Math.sin(aim),
      Math.cos(aim),
      paths[skid],
      paths[skid + 1],
      false,
      paths[skid + 2],
    );
  }
  return {
    ends: marcher.ends,
    trace,
    add(shot, from, to, lie, aimBearing_deg, field, value) {
      const { paths } = bins.at(aimBearing_deg);
      const aim = aimBearing_deg * DEGREE;
      const sin = Math.sin(aim);
      const cos = Math.cos(aim);
      for (let k = from; k < to; k++) {
        const first = (shot * samples + k) * PATH_STRIDE;
        const skid = first + 3 * PATH_POINTS;
        marcher.march(paths, first, PATH_POINTS, lie, sin, cos, paths[skid], paths[skid + 1], false, paths[skid + 2]);
        addPath(value, marcher.ends, field, dropX, dropY, 0);
      }
    },
  };
}
