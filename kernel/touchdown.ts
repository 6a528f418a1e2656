// Where in its step a flight meets the ground: Illinois false position on the cubic Hermite, as in core/flight/flier.ts.
import { groundAt } from './ground';
import { AFTER, APEX, BEFORE, LANDED, MOST_POINTS, PATH, POINTS, STATE, STATES, STRIDE, TIME } from './memory';

/** Adds a point to a flight's path while there is room; `isLast`: the landing, which takes the last place if it must. */
export function record(flight: i32, x: f32, y: f32, z: f32, isLast: bool): void {
  const count = POINTS + ((<usize>flight) << 2);
  const kept = load<i32>(count);
  if (kept >= MOST_POINTS - 1 && !isLast) return;
  const points = min<i32>(kept, MOST_POINTS - 1);
  const at = PATH + <usize>((flight * MOST_POINTS + points) * 12);
  store<f32>(at, x);
  store<f32>(at + 4, y);
  store<f32>(at + 8, z);
  store<i32>(count, points + 1);
}

/**
 * Brings flight `first + lane` down if the step of `dt` from BEFORE to AFTER ends under the ground; its landing goes into STATE.
 * @returns true when it touched down
 */
export function land(first: i32, lane: i32, dt: f32, time: f32, apex: f32): bool {
  const own = (<usize>lane) << 2;
  const gapAfter = gapOf(AFTER + own);
  if (!(gapAfter <= 0)) return false;
  const gapBefore = gapOf(BEFORE + own);
  const u = gapBefore <= 0 ? 0 : touchdown(own, <f64>dt, <f64>gapBefore, <f64>gapAfter);
  const flight = ((<usize>first) << 2) + own;
  const out = STATE + flight;
  for (let q = 0; q < 3; q++) store<f32>(out + <usize>q * STRIDE, <f32>hermite(own, q, <f64>dt, u));
  for (let q = 3; q < STATES; q++) {
    const at = own + ((<usize>q) << 4);
    store<f32>(out + <usize>q * STRIDE, <f32>((1 - u) * <f64>load<f32>(BEFORE + at) + u * <f64>load<f32>(AFTER + at)));
  }
  const nx = load<f32>(out + 6 * STRIDE);
  const ny = load<f32>(out + 7 * STRIDE);
  const nz = load<f32>(out + 8 * STRIDE);
  const length = sqrt<f32>(nx * nx + ny * ny + nz * nz);
  const inverse: f32 = length > 0 ? 1 / length : 1;
  store<f32>(out + 6 * STRIDE, nx * inverse);
  store<f32>(out + 7 * STRIDE, ny * inverse);
  store<f32>(out + 8 * STRIDE, nz * inverse);
  store<f32>(TIME + flight, time + <f32>u * dt);
  store<f32>(APEX + flight, max<f32>(apex, load<f32>(out + 2 * STRIDE)));
  store<i32>(LANDED + flight, 1);
  record(first + lane, load<f32>(out), load<f32>(out + STRIDE), load<f32>(out + 2 * STRIDE), true);
  return true;
}

function gapOf(state: usize): f32 {
  return load<f32>(state + 32) - groundAt(load<f32>(state), load<f32>(state + 16));
}

function hermite(own: usize, quantity: i32, dt: f64, u: f64): f64 {
  const place = own + ((<usize>quantity) << 4);
  const speed = own + ((<usize>(quantity + 3)) << 4);
  const u2 = u * u;
  const u3 = u2 * u;
  return (
    (2 * u3 - 3 * u2 + 1) * <f64>load<f32>(BEFORE + place) +
    (u3 - 2 * u2 + u) * dt * <f64>load<f32>(BEFORE + speed) +
    (3 * u2 - 2 * u3) * <f64>load<f32>(AFTER + place) +
    (u3 - u2) * dt * <f64>load<f32>(AFTER + speed)
  );
}

function touchdown(own: usize, dt: f64, gapBefore: f64, gapAfter: f64): f64 {
  let low: f64 = 0;
  let high: f64 = 1;
  let gapLow = gapBefore;
  let gapHigh = gapAfter;
  let u: f64 = 1;
  for (let i = 0; i < 40; i++) {
    u = (low * gapHigh - high * gapLow) / (gapHigh - gapLow);
    const ground = groundAt(<f32>hermite(own, 0, dt, u), <f32>hermite(own, 1, dt, u));
    const gap = hermite(own, 2, dt, u) - <f64>ground;
    // single precision resolves some 10⁻⁵ m at a hole's size
    if (Math.abs(gap) < 1e-5 || high - low < 1e-8) break;
    if (gap > 0) {
      low = u;
      gapLow = gap;
      gapHigh *= 0.5;
    } else {
      high = u;
      gapHigh = gap;
      gapLow *= 0.5;
    }
  }
  return u;
}
