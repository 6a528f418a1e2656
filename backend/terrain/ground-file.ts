import { createHash } from 'node:crypto';
import { deflateSync, inflateSync } from 'node:zlib';
import { z } from 'zod';
import type { CourseGround, ElevationModel } from '../../core/course/elevation-grid.ts';
import { problemPath } from '../../core/course/problem-path.ts';
import type { Result } from '../../core/units/result.ts';
import { isPlainText } from '../api/contract/values.ts';

/** Heights are kept to the centimetre; what an elevation model knows ends sooner. */
const STEPS_PER_m = 100;
const NO_DATA = -(2 ** 31);
/** As `cut-window` makes them at most, with room for one that was made otherwise. */
const MOST_NODES = 6_000_000;

const Line = z.string().max(300).refine(isPlainText);
const ModelSchema = z.strictObject({
  west_deg: z.number().min(-540).max(540),
  north_deg: z.number().min(-90).max(90),
  stepLon_deg: z.number().positive().max(10),
  stepLat_deg: z.number().positive().max(10),
  columns: z.int().min(2).max(MOST_NODES),
  rows: z.int().min(2).max(MOST_NODES),
  source: Line,
  crs: Line,
  resolution_m: z.number().positive(),
  datum: Line,
  heights: z
    .base64()
    .describe(
      'centimetres as 32-bit little-endian differences along each row, row after row, deflated; -2^31 is no data',
    ),
});

/** A course's ground as the library keeps it and as library and course sharing files carry it. */
export const GroundFileSchema = z.strictObject({
  schema: z.literal('roundwright/ground@1'),
  terrain: ModelSchema,
  surface: ModelSchema.optional(),
});
export type GroundFile = z.output<typeof GroundFileSchema>;

export function groundFile({ terrain, surface }: CourseGround): GroundFile {
  return {
    schema: 'roundwright/ground@1',
    terrain: written(terrain),
    ...(surface !== undefined && { surface: written(surface) }),
  };
}

/** @returns the ground, or problems with the path in the file */
export function readGroundFile(input: unknown): Result<CourseGround> {
  const parsed = GroundFileSchema.safeParse(input);
  if (!parsed.success)
    return {
      ok: false,
      problems: parsed.error.issues.map(({ path, message }) => ({ path: problemPath(path) || 'ground', message })),
    };
  const { terrain, surface } = parsed.data;
  const ground = read(terrain, 'terrain');
  if (!ground.ok) return ground;
  if (surface === undefined) return { ok: true, value: { terrain: ground.value } };
  const tops = read(surface, 'surface');
  return tops.ok ? { ok: true, value: { terrain: ground.value, surface: tops.value } } : tops;
}

/** The same for the same ground. */
export function groundDigest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function written({ height_m, ...facts }: ElevationModel): GroundFile['terrain'] {
  const steps = new Int32Array(height_m.length);
  let before = 0;
  height_m.forEach((value_m, k) => {
    if (k % facts.columns === 0) before = 0;
    if (Number.isNaN(value_m)) {
      steps[k] = NO_DATA;
      return;
    }
    const value = Math.round(value_m * STEPS_PER_m);
    steps[k] = value - before;
    before = value;
  });
  return { ...facts, heights: deflateSync(littleEndian(steps)).toString('base64') };
}

function read({ heights, ...facts }: GroundFile['terrain'], path: string): Result<ElevationModel> {
  const refused = (message: string): Result<never> => ({
    ok: false,
    problems: [{ path: `${path}.heights`, message }],
  });
  const nodes = facts.columns * facts.rows;
  if (nodes > MOST_NODES) return refused(`are ${nodes}, more than the ${MOST_NODES} taken`);
  let bytes: Buffer;
  try {
    bytes = inflateSync(Buffer.from(heights, 'base64'), { maxOutputLength: nodes * 4 });
  } catch {
    return refused('are damaged: they cannot be unpacked');
  }
  if (bytes.length !== nodes * 4) return refused(`are damaged: ${bytes.length / 4} in place of ${nodes}`);
  const height_m = new Float32Array(nodes);
  let before = 0;
  for (let k = 0; k < nodes; k++) {
    if (k % facts.columns === 0) before = 0;
    const step = bytes.readInt32LE(k * 4);
    if (step !== NO_DATA) before += step;
    height_m[k] = step === NO_DATA ? Number.NaN : before / STEPS_PER_m;
  }
  return { ok: true, value: { ...facts, height_m } };
}

function littleEndian(steps: Int32Array): Buffer {
  const bytes = Buffer.alloc(steps.length * 4);
  steps.forEach((step, k) => {
    bytes.writeInt32LE(step, k * 4);
  });
  return bytes;
}
