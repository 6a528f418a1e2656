import type { MeanRelease, Scatter } from '../flight/dispersion.ts';
import { LANDING, LANDING_NUMBERS } from '../flight/flier.ts';
import { type FlightBatch, MOST_FLIGHTS } from '../flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';

/**
 * Rest positions of scattered throws on level turf; disc, air and plane are those set on the flier.
 * The aim of a counter-clockwise throw is mirrored, so that a left-handed player is the exact mirror of a right-handed one.
 * @param normals - rows of SAMPLE_DIMENSIONS standard normals
 */
export function restSamples(
  flier: FlightBatch,
  radius_m: number,
  release: MeanRelease,
  scatter: Scatter,
  normals: Float64Array,
): { along_m: number[]; left_m: number[] } {
  const play = new Float64Array(2);
  const landing = new Float64Array(LANDING_NUMBERS);
  const along_m: number[] = [];
  const left_m: number[] = [];
  const mirror = release.spinPerSpeed > 0 ? -1 : 1;
  const rows = normals.length / SAMPLE_DIMENSIONS;
  for (let first = 0; first < rows; first += MOST_FLIGHTS) {
    const count = Math.min(MOST_FLIGHTS, rows - first);
    for (let flight = 0; flight < count; flight++) {
      const at = (first + flight) * SAMPLE_DIMENSIONS;
      const speed = Math.max(1, release.speed_mps * (1 + scatter.speed * normals[at]!));
      flier.release(
        flight,
        speed,
        mirror * scatter.azimuth_deg * normals[at + 1]!,
        release.launch_deg + scatter.launch_deg * normals[at + 2]!,
        scatter.nose_deg * normals[at + 3]!,
        release.hyzer_deg + scatter.hyzer_deg * normals[at + 4]!,
        release.spinPerSpeed * speed,
        RELEASE_HEIGHT_M,
      );
    }
    flier.fly(count);
    for (let flight = 0; flight < count; flight++) {
      flier.landing(flight, landing);
      groundPlay(landing, radius_m, SURFACE_FRICTION.turf, 0, 0, play);
      along_m.push(landing[LANDING.x]! + play[0]!);
      left_m.push(landing[LANDING.y]! + play[1]!);
    }
  }
  return { along_m, left_m };
}
