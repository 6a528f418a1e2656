import type { FittedPlayer } from '../player/fitted-player.ts';
import { flownAs } from './flown-as.ts';
import { createSpread } from './hole-out.ts';
import type { Ends, Lie, Marcher } from './march.ts';
import { createRollOff } from './roll-path.ts';
import { planningScatter } from './throw-samples.ts';
import { addPath, type ThrowValue } from './throw-value.ts';
import { PATH_POINTS, PATH_STRIDE, ROLLER_POINTS } from './trajectory-library.ts';
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

/** @param player - whose throws the library's shots are: their scatter tells how often flights go in */
export function createShotMarcher(world: World, bins: WindBins, marcher: Marcher, player: FittedPlayer): ShotMarcher {
  const { samples, shots, aimNormals, speedNormals } = bins.library;
  const spread = createSpread();
  const scatters = shots.map(shot => planningScatter(player.throws[shot.throwIndex], shot));
  const releases_mps = shots.map(
    shot => flownAs(player.throws[shot.throwIndex], shot.shape).releaseSpeed_mps * shot.power,
  );
  const rollers = shots.map(shot => shot.shape === 'roller');
  const rollsOff = createRollOff();

  /** Where sample `k` stands in the scatter of a shot; the middle stands for the whole of it. */
  function place(shot: number, k: number): void {
    const scatter = scatters[shot];
    spread.aimSd_rad = scatter.azimuth_deg * DEGREE;
    spread.speedSd = scatter.speed;
    spread.aim_rad = spread.aimSd_rad * aimNormals[k];
    spread.speed = scatter.speed * speedNormals[k];
    spread.release_mps = releases_mps[shot] * (1 + spread.speed);
  }

  function roll(paths: Float32Array, first: number, lie: Lie, sin: number, cos: number): void {
    const at = first + 3 * ROLLER_POINTS;
    rollsOff.vx_mps = paths[at];
    rollsOff.vy_mps = paths[at + 1];
    rollsOff.bend_mps2 = paths[at + 3];
    rollsOff.resistance = paths[at + 4];
    marcher.march(paths, first, ROLLER_POINTS, lie, sin, cos, 0, 0, false, 0, undefined, rollsOff);
  }

  const dropX = world.dropZone ? world.dropZone[0] : Number.NaN;
  const dropY = world.dropZone ? world.dropZone[1] : Number.NaN;
  function trace(shot: number, sample: number, lie: Lie, aimBearing_deg: number): void {
    const { paths } = bins.at(aimBearing_deg);
    const first = (shot * samples + sample) * PATH_STRIDE;
    const skid = first + 3 * PATH_POINTS;
    const aim = aimBearing_deg * DEGREE;
    if (rollers[shot]) {
      roll(paths, first, lie, Math.sin(aim), Math.cos(aim));
      return;
    }
    place(shot, sample);
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
      spread,
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
        if (rollers[shot]) {
          roll(paths, first, lie, sin, cos);
          addPath(value, marcher.ends, field, dropX, dropY, 0);
          continue;
        }
        place(shot, k);
        marcher.march(
          paths,
          first,
          PATH_POINTS,
          lie,
          sin,
          cos,
          paths[skid],
          paths[skid + 1],
          false,
          paths[skid + 2],
          spread,
        );
        addPath(value, marcher.ends, field, dropX, dropY, 0);
      }
    },
  };
}
