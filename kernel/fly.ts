// Batches of flights, four abreast in single precision: the integrator of core/flight/flier.ts for many throws of one disc.
import { add, derive, dot, mul, one, rateNX, rateNY, rateNZ, rateSpin, rateVX, rateVY, rateVZ } from './derive';
import { mayTouch } from './ground';
import { AFTER, APEX, BEFORE, LANDED, POINTS, STATE, STEP, STRIDE, TIME, WIND_X, WIND_Y } from './memory';
import { land, record } from './touchdown';

export { lookFrom, setGrid, setPlane } from './ground';
export {
  apexAt,
  discAt,
  freeAt,
  landedAt,
  pathAt,
  pointsAt,
  profileAt,
  stateAt,
  stepAt,
  timeAt,
  windXAt,
  windYAt,
} from './memory';

const MAX_TIME_S: f32 = 40;
const LEAST_SPACING_S: f32 = 0.04;
const MOST_TURN_RAD: f32 = 1;

/** Flies the first `count` releases (rounded up to whole fours). */
export function fly(count: i32, isWindy: bool): void {
  for (let first = 0; first < count; first += 4) flyFour(first, isWindy, false);
}

/** Flies on from the landings, over the ground set since, adding to the paths. */
export function flyOn(count: i32, isWindy: bool): void {
  for (let first = 0; first < count; first += 4) flyFour(first, isWindy, true);
}

function lane(four: v128, i: i32): f32 {
  if (i === 0) return f32x4.extract_lane(four, 0);
  if (i === 1) return f32x4.extract_lane(four, 1);
  if (i === 2) return f32x4.extract_lane(four, 2);
  return f32x4.extract_lane(four, 3);
}

function flyFour(first: i32, isWindy: bool, goesOn: bool): void {
  const at = (<usize>first) << 2;
  let x = v128.load(STATE + at);
  let y = v128.load(STATE + at + STRIDE);
  let z = v128.load(STATE + at + 2 * STRIDE);
  let vx = v128.load(STATE + at + 3 * STRIDE);
  let vy = v128.load(STATE + at + 4 * STRIDE);
  let vz = v128.load(STATE + at + 5 * STRIDE);
  let nx = v128.load(STATE + at + 6 * STRIDE);
  let ny = v128.load(STATE + at + 7 * STRIDE);
  let nz = v128.load(STATE + at + 8 * STRIDE);
  let spin = v128.load(STATE + at + 9 * STRIDE);
  const windX = v128.load(WIND_X + at);
  const windY = v128.load(WIND_Y + at);
  const longest = v128.load(STEP + at);
  let time = one(0);
  let apex = z;
  if (goesOn) {
    time = v128.load(TIME + at);
    apex = v128.load(APEX + at);
  } else {
    for (let i = 0; i < 4; i++) {
      store<i32>(POINTS + at + ((<usize>i) << 2), 0);
      record(first + i, lane(x, i), lane(y, i), lane(z, i), false);
    }
  }
  v128.store(LANDED + at, i32x4.splat(0));
  // a fine step needs no more path points
  const spacing = f32x4.sub(
    mul(longest, f32x4.max(one(1), f32x4.floor(add(f32x4.div(one(LEAST_SPACING_S), longest), one(1e-4))))),
    one(1e-4),
  );
  let recorded = time;
  const half = one(0.5);
  const two = one(2);
  let flying = 15;
  while (flying !== 0) {
    derive(windX, windY, isWindy, z, vx, vy, vz, nx, ny, nz, spin);
    const turning = f32x4.sqrt(dot(rateNX, rateNY, rateNZ, rateNX, rateNY, rateNZ));
    let dt = longest;
    const isTumbling = f32x4.gt(mul(turning, longest), one(MOST_TURN_RAD));
    if (v128.any_true(isTumbling)) {
      dt = v128.bitselect(f32x4.div(one(MOST_TURN_RAD), turning), longest, isTumbling);
    }
    const halfStep = mul(half, dt);
    // sums of the four slopes, the middle two twice
    let sumVX = rateVX;
    let sumVY = rateVY;
    let sumVZ = rateVZ;
    let sumNX = rateNX;
    let sumNY = rateNY;
    let sumNZ = rateNZ;
    let sumSpin = rateSpin;
    let tvx = add(vx, mul(halfStep, rateVX));
    let tvy = add(vy, mul(halfStep, rateVY));
    let tvz = add(vz, mul(halfStep, rateVZ));
    let sumX = add(vx, mul(two, tvx));
    let sumY = add(vy, mul(two, tvy));
    let sumZ = add(vz, mul(two, tvz));
    derive(
      windX,
      windY,
      isWindy,
      add(z, mul(halfStep, vz)),
      tvx,
      tvy,
      tvz,
      add(nx, mul(halfStep, rateNX)),
      add(ny, mul(halfStep, rateNY)),
      add(nz, mul(halfStep, rateNZ)),
      add(spin, mul(halfStep, rateSpin)),
    );
    sumVX = add(sumVX, mul(two, rateVX));
    sumVY = add(sumVY, mul(two, rateVY));
    sumVZ = add(sumVZ, mul(two, rateVZ));
    sumNX = add(sumNX, mul(two, rateNX));
    sumNY = add(sumNY, mul(two, rateNY));
    sumNZ = add(sumNZ, mul(two, rateNZ));
    sumSpin = add(sumSpin, mul(two, rateSpin));
    let trialZ = add(z, mul(halfStep, tvz));
    tvx = add(vx, mul(halfStep, rateVX));
    tvy = add(vy, mul(halfStep, rateVY));
    tvz = add(vz, mul(halfStep, rateVZ));
    sumX = add(sumX, mul(two, tvx));
    sumY = add(sumY, mul(two, tvy));
    sumZ = add(sumZ, mul(two, tvz));
    derive(
      windX,
      windY,
      isWindy,
      trialZ,
      tvx,
      tvy,
      tvz,
      add(nx, mul(halfStep, rateNX)),
      add(ny, mul(halfStep, rateNY)),
      add(nz, mul(halfStep, rateNZ)),
      add(spin, mul(halfStep, rateSpin)),
    );
    sumVX = add(sumVX, mul(two, rateVX));
    sumVY = add(sumVY, mul(two, rateVY));
    sumVZ = add(sumVZ, mul(two, rateVZ));
    sumNX = add(sumNX, mul(two, rateNX));
    sumNY = add(sumNY, mul(two, rateNY));
    sumNZ = add(sumNZ, mul(two, rateNZ));
    sumSpin = add(sumSpin, mul(two, rateSpin));
    trialZ = add(z, mul(dt, tvz));
    tvx = add(vx, mul(dt, rateVX));
    tvy = add(vy, mul(dt, rateVY));
    tvz = add(vz, mul(dt, rateVZ));
    sumX = add(sumX, tvx);
    sumY = add(sumY, tvy);
    sumZ = add(sumZ, tvz);
    derive(
      windX,
      windY,
      isWindy,
      trialZ,
      tvx,
      tvy,
      tvz,
      add(nx, mul(dt, rateNX)),
      add(ny, mul(dt, rateNY)),
      add(nz, mul(dt, rateNZ)),
      add(spin, mul(dt, rateSpin)),
    );
    const sixth = f32x4.div(dt, one(6));
    const endX = add(x, mul(sixth, sumX));
    const endY = add(y, mul(sixth, sumY));
    const endZ = add(z, mul(sixth, sumZ));
    const endVX = add(vx, mul(sixth, add(sumVX, rateVX)));
    const endVY = add(vy, mul(sixth, add(sumVY, rateVY)));
    const endVZ = add(vz, mul(sixth, add(sumVZ, rateVZ)));
    let endNX = add(nx, mul(sixth, add(sumNX, rateNX)));
    let endNY = add(ny, mul(sixth, add(sumNY, rateNY)));
    let endNZ = add(nz, mul(sixth, add(sumNZ, rateNZ)));
    const endSpin = add(spin, mul(sixth, add(sumSpin, rateSpin)));
    const shrink = f32x4.div(one(1), f32x4.sqrt(dot(endNX, endNY, endNZ, endNX, endNY, endNZ)));
    endNX = mul(endNX, shrink);
    endNY = mul(endNY, shrink);
    endNZ = mul(endNZ, shrink);

    const near = mayTouch(endX, endY, endZ) & flying;
    if (near !== 0) {
      keep(BEFORE, x, y, z, vx, vy, vz, nx, ny, nz, spin);
      keep(AFTER, endX, endY, endZ, endVX, endVY, endVZ, endNX, endNY, endNZ, endSpin);
      for (let i = 0; i < 4; i++) {
        if (((near >> i) & 1) === 0) continue;
        if (land(first, i, lane(dt, i), lane(time, i), lane(apex, i))) flying &= ~(1 << i);
      }
    }
    x = endX;
    y = endY;
    z = endZ;
    vx = endVX;
    vy = endVY;
    vz = endVZ;
    nx = endNX;
    ny = endNY;
    nz = endNZ;
    spin = endSpin;
    time = add(time, dt);
    apex = f32x4.max(apex, z);
    const isDue = f32x4.gt(f32x4.sub(time, recorded), spacing);
    const due = i32x4.bitmask(isDue) & flying;
    if (due !== 0) {
      recorded = v128.bitselect(time, recorded, isDue);
      for (let i = 0; i < 4; i++) {
        if (((due >> i) & 1) !== 0) record(first + i, lane(x, i), lane(y, i), lane(z, i), false);
      }
    }
    const late = ~i32x4.bitmask(f32x4.lt(time, one(MAX_TIME_S))) & flying;
    if (late !== 0) {
      keep(AFTER, x, y, z, vx, vy, vz, nx, ny, nz, spin);
      for (let i = 0; i < 4; i++) {
        if (((late >> i) & 1) !== 0) giveUp(first, i, lane(time, i), lane(apex, i));
      }
      flying &= ~late;
    }
  }
}

function keep(
  to: usize,
  x: v128,
  y: v128,
  z: v128,
  vx: v128,
  vy: v128,
  vz: v128,
  nx: v128,
  ny: v128,
  nz: v128,
  spin: v128,
): void {
  v128.store(to, x);
  v128.store(to + 16, y);
  v128.store(to + 32, z);
  v128.store(to + 48, vx);
  v128.store(to + 64, vy);
  v128.store(to + 80, vz);
  v128.store(to + 96, nx);
  v128.store(to + 112, ny);
  v128.store(to + 128, nz);
  v128.store(to + 144, spin);
}

/** Time is up: the last state stands in for a landing. */
function giveUp(first: i32, i: i32, time: f32, apex: f32): void {
  const own = (<usize>i) << 2;
  const flight = ((<usize>first) << 2) + own;
  for (let q = 0; q < 10; q++)
    store<f32>(STATE + flight + <usize>q * STRIDE, load<f32>(AFTER + own + ((<usize>q) << 4)));
  store<f32>(TIME + flight, time);
  store<f32>(APEX + flight, apex);
}
