import type { Day } from '../air/day.ts';
import { windProfile } from '../air/wind-profile.ts';
import { createFlightBatch } from '../flight/flight-batch.ts';
import { normalSamples } from '../flight/normal-samples.ts';
import type { HoleMap } from '../geometry/hole-map.ts';
import { rasterize } from '../geometry/rasterize.ts';
import type { FittedPlayer } from '../player/fitted-player.ts';
import { createExactThrower, type HoleAir } from './exact-thrower.ts';
import { drawShot, type ShotDrawing } from './hole-drawing.ts';
import { createMarcher } from './march.ts';
import type { HolePlan } from './plan-report.ts';
import type { ShotSpec } from './shots.ts';
import { windScatterOf } from './throw-samples.ts';
import { makeWorld } from './world.ts';

const TEE = { east_m: 0, north_m: 0, ground_m: 0 };
const STEP_S = 0.08;
/** As many as a plan's answers rest on. */
const ROWS = 512;

/**
 * What to draw of a hole's choice where only its report is at hand: flown anew, without solving the hole.
 * @param seed - of the scatter, not of the plan
 * @throws {RangeError} when the player has no such disc from that hand
 */
export function drawPlannedShot(
  map: HoleMap,
  { choice, exposure, ref }: HolePlan,
  player: FittedPlayer,
  day: Day,
  seed: number,
): ShotDrawing {
  const throwIndex = player.throws.findIndex(({ discId, hand }) => discId === choice.discId && hand === choice.hand);
  if (throwIndex === -1)
    throw new RangeError(`hole ${ref}: ${player.name} has no ${choice.hand} with disc ${choice.discId}`);
  const world = makeWorld(map, rasterize(map));
  const air: HoleAir = {
    density_kgpm3: day.density_kgpm3,
    profile: windProfile(exposure),
    windFrom_deg: day.wind.from_deg,
    scatter: windScatterOf(day),
  };
  const thrower = createExactThrower(world, player, air, createFlightBatch(), createMarcher(world), STEP_S);
  const { shape, hyzer_deg, launch_deg, height, power } = choice;
  const shot: ShotSpec = { throwIndex, shape, hyzer_deg, launch_deg, height, power };
  return drawShot({ thrower, answerNormals: normalSamples(ROWS, seed) }, shot, TEE, choice.aimBearing_deg);
}
