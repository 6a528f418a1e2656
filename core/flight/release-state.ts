// The state vector, in the throw frame: x along the aim, y left, z up from the ground under the thrower.
export const X = 0;
export const Y = 1;
export const Z = 2;
export const VX = 3;
export const VY = 4;
export const VZ = 5;
export const NX = 6;
export const NY = 7;
export const NZ = 8;
export const SPIN = 9;
export const STATES = 10;

const DEGREE = Math.PI / 180;

/** State of a throw as it leaves the hand, into `state`; `z_m` is the height of the hand. */
export function releaseState(
  speed_mps: number,
  azimuth_deg: number,
  launch_deg: number,
  nose_deg: number,
  hyzer_deg: number,
  spin_radps: number,
  z_m: number,
  state: Float64Array,
): void {
  const cosAzimuth = Math.cos(azimuth_deg * DEGREE);
  const sinAzimuth = Math.sin(azimuth_deg * DEGREE);
  const cosLaunch = Math.cos(launch_deg * DEGREE);
  const cosPitch = Math.cos((launch_deg + nose_deg) * DEGREE);
  const sinPitch = Math.sin((launch_deg + nose_deg) * DEGREE);
  const cosHyzer = Math.cos(hyzer_deg * DEGREE);
  const sinHyzer = (spin_radps > 0 ? -1 : 1) * Math.sin(hyzer_deg * DEGREE);
  state[X] = 0;
  state[Y] = 0;
  state[Z] = z_m;
  state[VX] = speed_mps * cosLaunch * cosAzimuth;
  state[VY] = speed_mps * cosLaunch * sinAzimuth;
  state[VZ] = speed_mps * Math.sin(launch_deg * DEGREE);
  // n0 = forward × left, then tilted by the hyzer angle towards the fade side
  state[NX] = -sinPitch * cosAzimuth * cosHyzer - sinAzimuth * sinHyzer;
  state[NY] = -sinPitch * sinAzimuth * cosHyzer + cosAzimuth * sinHyzer;
  state[NZ] = cosPitch * cosHyzer;
  state[SPIN] = spin_radps;
}
