/** A plain vector of the throw frame: x along the aim, y left, z up. */
export type Vector = Readonly<{ x: number; y: number; z: number }>;

export const vector = (x: number, y: number, z: number): Vector => ({ x, y, z });
export const ZERO: Vector = vector(0, 0, 0);
export const sum = (a: Vector, b: Vector): Vector => vector(a.x + b.x, a.y + b.y, a.z + b.z);
export const difference = (a: Vector, b: Vector): Vector => vector(a.x - b.x, a.y - b.y, a.z - b.z);
export const scaled = (a: Vector, factor: number): Vector => vector(a.x * factor, a.y * factor, a.z * factor);
export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const length = (a: Vector): number => Math.hypot(a.x, a.y, a.z);
export const distance = (a: Vector, b: Vector): number => length(difference(a, b));

export const cross = (a: Vector, b: Vector): Vector =>
  vector(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);

/** The direction of `a`; the zero vector stays zero, so a disc with no airspeed feels no force. */
export function unit(a: Vector): Vector {
  const size = length(a);
  return size === 0 ? ZERO : scaled(a, 1 / size);
}

/** `a` turned about the vertical, left positive. */
export function turnedLeft(a: Vector, angle_rad: number): Vector {
  const [cos, sin] = [Math.cos(angle_rad), Math.sin(angle_rad)];
  return vector(a.x * cos - a.y * sin, a.x * sin + a.y * cos, a.z);
}

/** `a` seen in a mirror standing on the aim line. */
export const mirrored = (a: Vector): Vector => vector(a.x, -a.y, a.z);
