// Rates of change of four flights at once. The equations, with their sources, are those of core/flight/flier.ts.
import { DISC, PROFILE, WIND_CELLS } from './memory';

const GRAVITY_MPS2: f32 = 9.80665;
const PRECESSION_CAP_RADPS: f32 = 10;
/** Table cells per √m: 96 cells to 63 m (core/air/wind-profile.ts). */
const CELLS_PER_ROOT_M: f32 = <f32>(96.0 / Math.sqrt(63.0));

export let rateVX: v128 = f32x4.splat(0);
export let rateVY: v128 = f32x4.splat(0);
export let rateVZ: v128 = f32x4.splat(0);
export let rateNX: v128 = f32x4.splat(0);
export let rateNY: v128 = f32x4.splat(0);
export let rateNZ: v128 = f32x4.splat(0);
export let rateSpin: v128 = f32x4.splat(0);

export function one(x: f32): v128 {
  return f32x4.splat(x);
}
export function add(a: v128, b: v128): v128 {
  return f32x4.add(a, b);
}
export function sub(a: v128, b: v128): v128 {
  return f32x4.sub(a, b);
}
export function mul(a: v128, b: v128): v128 {
  return f32x4.mul(a, b);
}
export function dot(ax: v128, ay: v128, az: v128, bx: v128, by: v128, bz: v128): v128 {
  return add(add(mul(ax, bx), mul(ay, by)), mul(az, bz));
}

/** Coefficient `i` of the disc, for all four. */
function disc(i: usize): v128 {
  return v128.load32_splat(DISC + (i << 2));
}

/** Wind at a height over wind at 10 m in the open, from the table: linear in √z. */
function windRatio(z: v128): v128 {
  const position = mul(f32x4.sqrt(f32x4.max(z, one(0))), one(CELLS_PER_ROOT_M));
  const cell = f32x4.min(one(<f32>WIND_CELLS), position);
  const index = i32x4.min_s(i32x4.trunc_sat_f32x4_s(cell), i32x4.splat(WIND_CELLS - 1));
  const offset = i32x4.shl(index, 3);
  let first = v128.load64_zero(PROFILE + <usize>i32x4.extract_lane(offset, 0));
  first = v128.load64_lane(PROFILE + <usize>i32x4.extract_lane(offset, 1), first, 1);
  let last = v128.load64_zero(PROFILE + <usize>i32x4.extract_lane(offset, 2));
  last = v128.load64_lane(PROFILE + <usize>i32x4.extract_lane(offset, 3), last, 1);
  const ratio = v128.shuffle<f32>(first, last, 0, 2, 4, 6);
  const rising = v128.shuffle<f32>(first, last, 1, 3, 5, 7);
  return add(ratio, mul(rising, sub(cell, f32x4.convert_i32x4_s(index))));
}

/** Leaves the rates in `rateVX` … `rateSpin` (those of the position are the velocity itself). */
export function derive(
  windX: v128,
  windY: v128,
  isWindy: bool,
  z: v128,
  vx: v128,
  vy: v128,
  vz: v128,
  nx: v128,
  ny: v128,
  nz: v128,
  spin: v128,
): void {
  let ux = vx;
  let uy = vy;
  if (isWindy) {
    const ratio = windRatio(z);
    ux = sub(ux, mul(windX, ratio));
    uy = sub(uy, mul(windY, ratio));
  }
  const speedSq = dot(ux, uy, vz, ux, uy, vz);
  const speed = add(f32x4.sqrt(speedSq), one(1e-12));
  const sine = f32x4.max(one(-1), f32x4.min(one(1), f32x4.div(f32x4.neg(dot(ux, uy, vz, nx, ny, nz)), speed)));

  const lift = add(disc(0), mul(disc(1), sine));
  const off = sub(sine, disc(5));
  const rising = mul(disc(3), mul(off, off));
  const drag = add(disc(2), f32x4.div(rising, add(one(1), mul(rising, disc(4)))));
  const accel = disc(13);
  const alongNormal = mul(mul(accel, speedSq), lift);
  const alongAir = mul(mul(accel, speed), sub(mul(lift, sine), drag));
  rateVX = add(mul(alongNormal, nx), mul(alongAir, ux));
  rateVY = add(mul(alongNormal, ny), mul(alongAir, uy));
  rateVZ = sub(add(mul(alongNormal, nz), mul(alongAir, vz)), one(GRAVITY_MPS2));

  const t = mul(sub(sine, disc(8)), disc(9));
  const plateau = mul(one(0.5), sub(one(1), f32x4.div(t, f32x4.sqrt(add(one(1), mul(t, t))))));
  const h = sub(sine, disc(11));
  const hinge = mul(one(0.5), add(h, f32x4.sqrt(add(mul(h, h), disc(12)))));
  const hingeSq = mul(hinge, hinge);
  const fade = f32x4.div(mul(disc(10), hingeSq), add(one(1), mul(one(6), hingeSq)));
  const pitch = mul(mul(disc(14), speed), add(add(disc(7), mul(disc(6), plateau)), fade));
  const roll = mul(disc(15), spin);
  const damp = mul(disc(16), speed);
  const momentum = mul(disc(18), spin);
  const inverse = f32x4.div(one(1), add(add(mul(momentum, momentum), mul(damp, damp)), disc(19)));
  let b1 = mul(add(mul(momentum, pitch), mul(damp, roll)), inverse);
  let b2 = mul(sub(mul(momentum, roll), mul(damp, pitch)), inverse);
  const rateSq = mul(mul(add(mul(b1, b1), mul(b2, b2)), speedSq), sub(one(1), mul(sine, sine)));
  const isFast = f32x4.gt(rateSq, one(PRECESSION_CAP_RADPS * PRECESSION_CAP_RADPS));
  if (v128.any_true(isFast)) {
    const rate = f32x4.sqrt(f32x4.max(rateSq, one(1e-12)));
    const over = sub(rate, one(PRECESSION_CAP_RADPS));
    const eased = f32x4.div(over, add(one(1), f32x4.div(over, one(30))));
    const soft = f32x4.div(add(one(PRECESSION_CAP_RADPS), eased), rate);
    const factor = v128.bitselect(soft, one(1), isFast);
    b1 = mul(b1, factor);
    b2 = mul(b2, factor);
  }
  const along = mul(sine, speed);
  rateNX = add(mul(b1, sub(mul(uy, nz), mul(vz, ny))), mul(b2, add(ux, mul(along, nx))));
  rateNY = add(mul(b1, sub(mul(vz, nx), mul(ux, nz))), mul(b2, add(uy, mul(along, ny))));
  rateNZ = add(mul(b1, sub(mul(ux, ny), mul(uy, nx))), mul(b2, add(vz, mul(along, nz))));
  rateSpin = mul(mul(disc(17), speed), spin);
}
