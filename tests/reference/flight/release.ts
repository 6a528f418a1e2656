import { cross, length, scaled, sum, turnedLeft, type Vector, vector } from './vector.ts';

/** A throw as its thrower would say it; angles in degrees. */
export type ReferenceRelease = Readonly<{
  speed_mps: number;
  /** About the disc normal, counter-clockwise from above positive: a right-hand backhand is negative. */
  spin_radps: number;
  launch_deg: number;
  /** Disc pitch minus launch. */
  nose_deg: number;
  /** Outer edge down positive. */
  hyzer_deg: number;
  /** Left of the aim positive. */
  azimuth_deg: number;
  height_m: number;
}>;

export type ReleaseState = Readonly<{ position: Vector; velocity: Vector; normal: Vector; spin_radps: number }>;

const radians = (angle_deg: number): number => (angle_deg * Math.PI) / 180;

/** Revolutions per minute to rad/s. */
export const spinFromRpm = (rpm: number): number => (rpm * 2 * Math.PI) / 60;

/** Position, velocity and disc normal at release; hyzer tilts the normal to the side the throw fades to. */
export function releaseState(release: ReferenceRelease): ReleaseState {
  const azimuth = radians(release.azimuth_deg);
  const launch = radians(release.launch_deg);
  const pitch = launch + radians(release.nose_deg);
  const hyzer = radians(release.hyzer_deg);
  const pointing = (elevation: number): Vector =>
    vector(Math.cos(elevation) * Math.cos(azimuth), Math.cos(elevation) * Math.sin(azimuth), Math.sin(elevation));
  const left = vector(-Math.sin(azimuth), Math.cos(azimuth), 0);
  const levelNormal = cross(pointing(pitch), left);
  const fadeSide = release.spin_radps < 0 ? left : scaled(left, -1);
  return {
    position: vector(0, 0, release.height_m),
    velocity: scaled(pointing(launch), release.speed_mps),
    normal: sum(scaled(levelNormal, Math.cos(hyzer)), scaled(fadeSide, Math.sin(hyzer))),
    spin_radps: release.spin_radps,
  };
}

/** The release whose state this is: the inverse of `releaseState`, for a disc that is not upside down. */
export function releaseOf({ position, velocity, normal, spin_radps }: ReleaseState): ReferenceRelease {
  const degrees = (angle: number): number => (angle * 180) / Math.PI;
  const azimuth = Math.atan2(velocity.y, velocity.x);
  const launch = Math.atan2(velocity.z, Math.hypot(velocity.x, velocity.y));
  const facing = turnedLeft(normal, -azimuth);
  const pitch = Math.atan2(-facing.x, facing.z);
  return {
    speed_mps: length(velocity),
    spin_radps,
    launch_deg: degrees(launch),
    nose_deg: degrees(pitch - launch),
    hyzer_deg: degrees(Math.asin(facing.y)) * (spin_radps < 0 ? 1 : -1),
    azimuth_deg: degrees(azimuth),
    height_m: position.z,
  };
}
