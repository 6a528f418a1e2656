import type { WindProfile } from '../air/wind-profile.ts';
import { TYPICAL_SCATTER } from '../flight/dispersion.ts';
import { type Flier, LANDING } from '../flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';
import { SURFACES } from '../geometry/obstacle-raster.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import type { Ends, Lie, Marcher } from './march.ts';
import type { ShotSpec } from './shots.ts';
import { createSampledThrow, planningScatter, sampleThrow, type WindScatter } from './throw-samples.ts';
import type { World } from './world.ts';

const DEGREE = Math.PI / 180;

/** Step of the flights that search and answer: landing error p95 2 cm, most 0.2 m, far below the scatter. */
export const PLAN_STEP_S = 0.15;

/** The air over one hole. */
export type HoleAir = Readonly<{
  density_kgpm3: number;
  profile: WindProfile;
  windFrom_deg: number;
  scatter: WindScatter;
}>;

/** Throws flown for real: exact wind by height, the hole's terrain, ground play on its slope and surface. */
export type ExactThrower = Readonly<{
  ends: Ends;
  flier: Flier;
  /** Sets disc, lie and aim for the throws that follow. */
  prepare(shot: ShotSpec, lie: Lie, aimBearing_deg: number): void;
  /** Flies sample `row` of `normals` (−1: the middle of the scatter); the results are in `ends` and the flier's fields. */
  throwOnce(normals: Float64Array, row: number): void;
  /** Touchdown-to-rest displacement of the last throw, throw frame. */
  play: Float64Array;
}>;

export function createExactThrower(
  world: World,
  player: FittedPlayer,
  air: HoleAir,
  flier: Flier,
  marcher: Marcher,
  step_s: number,
): ExactThrower {
  const sampled = createSampledThrow();
  const play = new Float64Array(2);
  const marched = new Float32Array(flier.path.length);
  const { raster } = world;
  const sloped = world.map.terrain.known;
  let shot: ShotSpec | null = null;
  let scatter = TYPICAL_SCATTER;
  let lie: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
  let aim_deg = 0;
  let sin = 0;
  let cos = 1;

  function cell(x: number, y: number): number {
    const east = lie.east_m + sin * x - cos * y;
    const north = lie.north_m + cos * x + sin * y;
    const column = Math.min(raster.columns - 1, Math.max(0, Math.floor((east - raster.x0_m) / raster.cell_m)));
    const row = Math.min(raster.rows - 1, Math.max(0, Math.floor((north - raster.y0_m) / raster.cell_m)));
    return row * raster.columns + column;
  }

  return {
    ends: marcher.ends,
    flier,
    play,
    prepare(nextShot, from, aimBearing_deg) {
      shot = nextShot;
      scatter = planningScatter(player.throws[shot.throwIndex], shot);
      lie = from;
      aim_deg = aimBearing_deg;
      sin = Math.sin(aim_deg * DEGREE);
      cos = Math.cos(aim_deg * DEGREE);
      flier.setDisc(player.throws[shot.throwIndex].model);
      flier.setStep(step_s);
      if (sloped) flier.setTerrain(world.map.terrain, lie.east_m, lie.north_m, aim_deg);
      else flier.setPlane(0, 0, 0);
    },
    throwOnce(normals, row) {
      if (!shot) throw new RangeError('prepare a shot before throwing');
      const fitted = player.throws[shot.throwIndex];
      sampleThrow(normals, row, scatter, air.scatter, sampled);
      const from = (air.windFrom_deg + sampled.windTurn_deg - aim_deg) * DEGREE;
      flier.setAir(
        air.density_kgpm3,
        -sampled.wind_mps * Math.cos(from),
        sampled.wind_mps * Math.sin(from),
        air.profile,
      );
      const speed = fitted.releaseSpeed_mps * shot.power * sampled.speedShare;
      flier.fly(
        speed,
        sampled.azimuth_deg,
        shot.launch_deg + sampled.launch_deg,
        sampled.nose_deg,
        shot.hyzer_deg + sampled.hyzer_deg,
        fitted.spinPerSpeed * speed,
        RELEASE_HEIGHT_M,
      );
      const x = flier.landing[LANDING.x];
      const y = flier.landing[LANDING.y];
      const surface = SURFACE_FRICTION[SURFACES[raster.surface[cell(x, y)]]];
      let gradX = 0;
      let gradY = 0;
      if (sloped) {
        gradX = (raster.ground_m[cell(x + 2, y)] - raster.ground_m[cell(x - 2, y)]) / 4;
        gradY = (raster.ground_m[cell(x, y + 2)] - raster.ground_m[cell(x, y - 2)]) / 4;
      }
      groundPlay(flier.landing, fitted.model.diameter_m / 2, surface, gradX, gradY, play);
      // all marches read the same kind of array: one machine code for stored and flown paths
      const numbers = 3 * flier.pathPoints();
      for (let i = 0; i < numbers; i++) marched[i] = flier.path[i];
      marcher.march(marched, 0, flier.pathPoints(), lie, sin, cos, play[0], play[1], true);
    },
  };
}
