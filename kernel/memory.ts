// Where things lie in the kernel's memory; core/flight/flight-batch.ts writes releases and reads landings and paths there.

/** Flights a batch holds. */
export const MOST_FLIGHTS: i32 = 64;
/** Points kept of one flight: 24 s at the closest spacing. */
export const MOST_POINTS: i32 = 600;
/** Quantities of a flight's state: position, velocity, normal, spin. */
export const STATES: i32 = 10;
/** From one quantity of a flight to the next. */
export const STRIDE: usize = (<usize>MOST_FLIGHTS) << 2;
/** Wind table: see core/air/wind-profile.ts. */
export const WIND_CELLS: i32 = 96;

/** `[quantity][flight]`: the release before `fly`, the landing after it. */
export const STATE: usize = memory.data(10 * 64 * 4, 16);
export const WIND_X: usize = memory.data(64 * 4, 16);
export const WIND_Y: usize = memory.data(64 * 4, 16);
/** Longest step of each flight, s. */
export const STEP: usize = memory.data(64 * 4, 16);
export const TIME: usize = memory.data(64 * 4, 16);
export const APEX: usize = memory.data(64 * 4, 16);
/** Valid points of each path. */
export const POINTS: usize = memory.data(64 * 4, 16);
/** 1: touched down, 0: still flying when time was up. */
export const LANDED: usize = memory.data(64 * 4, 16);
/** Coefficients of the disc in this air, one after the other: `DISC` in core/flight/flight-batch.ts. */
export const DISC: usize = memory.data(32 * 4, 16);
/** Pairs: ratio, rise to the next. */
export const PROFILE: usize = memory.data(97 * 8, 16);
/** `[flight][point]` of x, y, z. */
export const PATH: usize = memory.data(64 * 600 * 12, 16);
/** State of four flights before and after the step in which one may touch down. */
export const BEFORE: usize = memory.data(10 * 16, 16);
export const AFTER: usize = memory.data(10 * 16, 16);

export function stateAt(): usize {
  return STATE;
}
export function windXAt(): usize {
  return WIND_X;
}
export function windYAt(): usize {
  return WIND_Y;
}
export function stepAt(): usize {
  return STEP;
}
export function timeAt(): usize {
  return TIME;
}
export function apexAt(): usize {
  return APEX;
}
export function pointsAt(): usize {
  return POINTS;
}
export function landedAt(): usize {
  return LANDED;
}
export function discAt(): usize {
  return DISC;
}
export function profileAt(): usize {
  return PROFILE;
}
export function pathAt(): usize {
  return PATH;
}
/** The first byte behind all this: heights of a terrain go there. */
export function freeAt(): usize {
  return __heap_base;
}
