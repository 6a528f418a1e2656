import type { SurfaceName } from '../geometry/hole-map.ts';
import { LANDING } from './flier.ts';
import { roll, rollingShare } from './rolling.ts';

type Surface = Readonly<{
  /** Share of the normal speed given back. */
  restitution: number;
  friction: number;
  slideFriction: number;
  /** Deceleration of a disc that rolls on its edge, over gravity. */
  rollingResistance: number;
}>;

/** Assumed, unvalidated: a coarse setting, never a precision. */
export const SURFACE_FRICTION: Readonly<Record<SurfaceName, Surface>> = {
  longGrass: { restitution: 0.1, friction: 0.7, slideFriction: 1.6, rollingResistance: 0.45 },
  turf: { restitution: 0.25, friction: 0.45, slideFriction: 0.9, rollingResistance: 0.2 },
  hardpan: { restitution: 0.4, friction: 0.3, slideFriction: 0.5, rollingResistance: 0.1 },
};

const GRAVITY_MPS2 = 9.80665;
const LONGEST_PLAY_M = 40;

/**
 * Skip, slide or roll after touchdown: the lowest rim point strikes, spin friction kicks, the disc may hop once, then slides to rest;
 * one that comes down on its edge spinning the way it travels rolls (rolling.ts), in between it does a share of each.
 * @param landing - state at touchdown (`LANDING` indices), throw frame
 * @param gradX, gradY - ground slope there (rise per metre along x and y)
 * @param out - receives the displacement from touchdown to rest `[dx_m, dy_m]`
 * @source own model (impulse with Coulomb friction, one hop, sliding friction); plausible in sign and size, unvalidated
 */
export function groundPlay(
  landing: Float64Array,
  radius_m: number,
  surface: Surface,
  gradX: number,
  gradY: number,
  out: Float64Array,
): void {
  // ground normal
  const scale = 1 / Math.sqrt(gradX * gradX + gradY * gradY + 1);
  const gx = -gradX * scale;
  const gy = -gradY * scale;
  const gz = scale;
  const rolls = rollingShare(landing, gx, gy, gz);
  if (rolls < 1) slide(landing, radius_m, surface, gradX, gradY, gx, gy, gz, out);
  if (rolls === 0) return;
  const slidX = rolls < 1 ? out[0] : 0;
  const slidY = rolls < 1 ? out[1] : 0;
  roll(landing, radius_m, surface.rollingResistance, gradX, gradY, out);
  out[0] = rolls * out[0] + (1 - rolls) * slidX;
  out[1] = rolls * out[1] + (1 - rolls) * slidY;
}

function slide(
  landing: Float64Array,
  radius_m: number,
  surface: Surface,
  gradX: number,
  gradY: number,
  gx: number,
  gy: number,
  gz: number,
  out: Float64Array,
): void {
  const scale = gz;
  const nx = landing[LANDING.nx];
  const ny = landing[LANDING.ny];
  const nz = landing[LANDING.nz];
  const facing = nx * gx + ny * gy + nz * gz;
  // direction to the lowest rim point, fading to the centre when the disc lands flat
  let px = -(gx - facing * nx);
  let py = -(gy - facing * ny);
  let pz = -(gz - facing * nz);
  const tilt = Math.sqrt(px * px + py * py + pz * pz);
  const reach = radius_m / Math.sqrt(tilt * tilt + 0.0025);
  px *= reach;
  py *= reach;
  pz *= reach;
  let vx = landing[LANDING.vx];
  let vy = landing[LANDING.vy];
  let vz = landing[LANDING.vz];
  const spin = landing[LANDING.spin];
  let cx = vx + spin * (ny * pz - nz * py);
  let cy = vy + spin * (nz * px - nx * pz);
  let cz = vz + spin * (nx * py - ny * px);
  const contactNormal = cx * gx + cy * gy + cz * gz;
  cx -= contactNormal * gx;
  cy -= contactNormal * gy;
  cz -= contactNormal * gz;
  const contactSpeed = Math.sqrt(cx * cx + cy * cy + cz * cz);
  const closing = Math.max(0, -(vx * gx + vy * gy + vz * gz));
  const impulse = (1 + surface.restitution) * closing;
  const rub = contactSpeed > 1e-9 ? Math.min(surface.friction * impulse, 0.3 * contactSpeed) / contactSpeed : 0;
  vx += closing * gx - rub * cx;
  vy += closing * gy - rub * cy;
  vz += closing * gz - rub * cz;
  let speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
  if (speed < 1e-9) {
    out[0] = 0;
    out[1] = 0;
    return;
  }
  const dirX = vx / speed;
  const dirY = vy / speed;
  const rebound = surface.restitution * closing;
  const hop = smoothStep(0.8, 1.2, rebound) * smoothStep(3.5, 4.5, speed);
  const hopLength = hop * 1.15 * speed * ((2 * rebound) / GRAVITY_MPS2);
  speed = Math.max(0, speed - hop * surface.friction * (1 + surface.restitution) * rebound);
  const slope = gradX * dirX + gradY * dirY;
  const deceleration = GRAVITY_MPS2 * Math.max(0.12, surface.slideFriction * scale + slope * scale);
  const length = Math.min(LONGEST_PLAY_M, hopLength + (speed * speed) / (2 * deceleration));
  out[0] = length * dirX;
  out[1] = length * dirY;
}

function smoothStep(from: number, to: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
}
