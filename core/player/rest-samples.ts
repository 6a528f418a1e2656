import type { MeanRelease, Scatter } from '../flight/dispersion.ts';
import { type Flier, LANDING } from '../flight/flier.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';

/**
 * Rest positions of scattered throws on level turf; disc, air and plane are those set on the flier.
 * The aim of a counter-clockwise throw is mirrored, so that a left-handed player is the exact mirror of a right-handed one.
 * @param normals - rows of SAMPLE_DIMENSIONS standard normals
 */
export function restSamples(
  flier: Flier,
  radius_m: number,
  release: MeanRelease,
  scatter: Scatter,
  normals: Float64Array,
): { along_m: number[]; left_m: number[] } {
  const play = new Float64Array(2);
  const along_m: number[] = [];
  const left_m: number[] = [];
  const mirror = release.spinPerSpeed > 0 ? -1 : 1;
  for (let i = 0; i < normals.length; i += SAMPLE_DIMENSIONS) {
    const speed = Math.max(1, release.speed_mps * (1 + scatter.speed * normals[i]!));
    flier.fly(
      speed,
      mirror * scatter.azimuth_deg * normals[i + 1]!,
      release.launch_deg + scatter.launch_deg * normals[i + 2]!,
      scatter.nose_deg * normals[i + 3]!,
      release.hyzer_deg + scatter.hyzer_deg * normals[i + 4]!,
      release.spinPerSpeed * speed,
      RELEASE_HEIGHT_M,
    );
    groundPlay(flier.landing, radius_m, SURFACE_FRICTION.turf, 0, 0, play);
    along_m.push(flier.landing[LANDING.x]! + play[0]!);
    left_m.push(flier.landing[LANDING.y]! + play[1]!);
  }
  return { along_m, left_m };
}
