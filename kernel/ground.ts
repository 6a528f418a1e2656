// The ground under the flights: a plane, or a grid of heights seen from a lie. Same arithmetic as core/flight/flier.ts.

let isGrid: bool = false;
let rise: f32 = 0;
let gradX: f32 = 0;
let gradY: f32 = 0;

let heights: usize = 0;
let columns: i32 = 1;
let rows: i32 = 1;
let west: f32 = 0;
let south: f32 = 0;
let cellsPerM: f32 = 1;
let originEast: f32 = 0;
let originNorth: f32 = 0;
let eastPerX: f32 = 1;
let northPerX: f32 = 0;
let zero: f32 = 0;
let highest: f32 = 0;

export function setPlane(rise_m: f32, slopeX: f32, slopeY: f32): void {
  isGrid = false;
  rise = rise_m;
  gradX = slopeX;
  gradY = slopeY;
}

/** The grid itself: `columns` × `rows` heights from `at`, none above `top_m`. */
export function setGrid(at: usize, gridColumns: i32, gridRows: i32, x0_m: f32, y0_m: f32, perM: f32, top_m: f32): void {
  heights = at;
  columns = gridColumns;
  rows = gridRows;
  west = x0_m;
  south = y0_m;
  cellsPerM = perM;
  highest = top_m;
}

/** Looks at the grid from a lie: x along the unit vector (sin, cos) of the aim, z from the ground there. */
export function lookFrom(east_m: f32, north_m: f32, sinAim: f32, cosAim: f32): void {
  isGrid = true;
  originEast = east_m;
  originNorth = north_m;
  eastPerX = sinAim;
  northPerX = cosAim;
  zero = 0;
  zero = groundAt(0, 0);
}

export function groundAt(x: f32, y: f32): f32 {
  if (!isGrid) return rise + gradX * x + gradY * y;
  const lastColumn = columns - 1;
  const lastRow = rows - 1;
  const column = clamped((originEast + eastPerX * x - northPerX * y - west) * cellsPerM, <f32>lastColumn);
  const row = clamped((originNorth + northPerX * x + eastPerX * y - south) * cellsPerM, <f32>lastRow);
  const c = min<i32>(<i32>column, max<i32>(0, lastColumn - 1));
  const r = min<i32>(<i32>row, max<i32>(0, lastRow - 1));
  const fc = column - <f32>c;
  const up: usize = lastRow > 0 ? (<usize>columns) << 2 : 0;
  const right: usize = lastColumn > 0 ? 4 : 0;
  const at = heights + ((<usize>(r * columns + c)) << 2);
  const here = load<f32>(at);
  const above = load<f32>(at + up);
  const low = here + (load<f32>(at + right) - here) * fc;
  const high = above + (load<f32>(at + up + right) - above) * fc;
  return low + (high - low) * (row - <f32>r) - zero;
}

/** Which of four flights may be under the ground: exact over a plane, over a grid those not above its highest point. */
export function mayTouch(x: v128, y: v128, z: v128): i32 {
  if (isGrid) return i32x4.bitmask(f32x4.le(z, f32x4.splat(highest - zero)));
  const sloped = f32x4.add(f32x4.mul(f32x4.splat(gradX), x), f32x4.mul(f32x4.splat(gradY), y));
  return i32x4.bitmask(f32x4.le(z, f32x4.add(f32x4.splat(rise), sloped)));
}

/** Not a number counts as 0, so that no read goes astray. */
function clamped(x: f32, most: f32): f32 {
  return x > 0 ? min<f32>(x, most) : 0;
}
