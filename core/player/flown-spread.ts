import { z } from 'zod';
import type { Scatter } from '../flight/dispersion.ts';
import { LANDING, LANDING_NUMBERS } from '../flight/flier.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../flight/ground-play.ts';
import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import { RELEASE_HEIGHT_M } from '../flight/release.ts';
import type { SurfaceName } from '../geometry/hole-map.ts';
import { cm, roundedSpread, SpreadEllipseSchema, spreadEllipses } from './spread-ellipse.ts';

const metres = z.number();
export const FlownSpreadSchema = z.strictObject({
  path: z
    .array(z.tuple([metres, metres, metres]))
    .describe('of the middle throw: along the line, right of it, above the ground there'),
  rest: z.tuple([metres, metres]).describe('of the middle throw: along, right'),
  mean: z.tuple([metres, metres]).describe('of all throws as fitted: along, right'),
  spread: z.array(SpreadEllipseSchema),
});

type FlownSpread = z.output<typeof FlownSpreadSchema>;

/** The middle of a throw's scatter, and what flies. */
export type FlownThrow = Readonly<{
  speed_mps: number;
  launch_deg: number;
  hyzer_deg: number;
  /** Signed spin per release speed, rad/m. */
  spinPerSpeed: number;
  radius_m: number;
  scatter: Scatter;
  surface: SurfaceName;
  /** Rise per metre along the throw; the flier's plane must be the same. */
  grade: number;
}>;

/**
 * The middle throw's path, and where the scattered ones come to rest; disc, air and plane are those set on the flier.
 * The aim of a counter-clockwise throw is mirrored, as in `restSamples`.
 * @param normals - rows of SAMPLE_DIMENSIONS standard normals
 */
export function flownSpread(flier: FlightBatch, thrown: FlownThrow, normals: Float64Array): FlownSpread {
  const { speed_mps, launch_deg, hyzer_deg, spinPerSpeed, radius_m, scatter, grade } = thrown;
  const friction = SURFACE_FRICTION[thrown.surface];
  const mirror = spinPerSpeed > 0 ? -1 : 1;
  const play = new Float64Array(2);
  const landing = new Float64Array(LANDING_NUMBERS);
  const fly = (speed: number, azimuth: number, launch: number, nose: number, hyzer: number): [number, number] => {
    flier.release(0, speed, azimuth, launch, nose, hyzer, spinPerSpeed * speed, RELEASE_HEIGHT_M);
    flier.fly(1);
    flier.landing(0, landing);
    groundPlay(landing, radius_m, friction, grade, 0, play);
    return [landing[LANDING.x]! + play[0]!, -(landing[LANDING.y]! + play[1]!)];
  };
  const rests = Array.from({ length: normals.length / SAMPLE_DIMENSIONS }, (_, i) => {
    const at = i * SAMPLE_DIMENSIONS;
    const [along_m, side_m] = fly(
      Math.max(1, speed_mps * (1 + scatter.speed * normals[at]!)),
      mirror * scatter.azimuth_deg * normals[at + 1]!,
      launch_deg + scatter.launch_deg * normals[at + 2]!,
      scatter.nose_deg * normals[at + 3]!,
      hyzer_deg + scatter.hyzer_deg * normals[at + 4]!,
    );
    return { along_m, side_m, weight: 1 };
  });
  const mean = (of: (rest: (typeof rests)[number]) => number) =>
    rests.reduce((sum, r) => sum + of(r), 0) / rests.length;
  const rest = fly(speed_mps, 0, launch_deg, 0, hyzer_deg);
  const points = flier.path();
  const path = Array.from({ length: flier.pathPoints(0) }, (_, i): [number, number, number] => {
    const at = flier.pathStart(0) + 3 * i;
    const x = points[at]!;
    return [cm(x), cm(-points[at + 1]!), cm(points[at + 2]! - grade * x)];
  });
  return {
    path,
    rest: [cm(rest[0]), cm(rest[1])],
    mean: [cm(mean(r => r.along_m)), cm(mean(r => r.side_m))],
    spread: roundedSpread(spreadEllipses(rests)),
  };
}
