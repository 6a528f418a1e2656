import { z } from 'zod';
import { ChangedSchema, Id } from './values.ts';

/** A file on this machine: chosen in the shell's dialog, typed, or just uploaded by the browser. */
export const FilePath = z.string().min(1, 'is empty: name a file').max(4096);

const ModelSchema = z.strictObject({
  source: z.string().describe('file it was cut out of'),
  crs: z.string().describe('coordinate system of that file'),
  resolution_m: z.number().describe('between its pixels, on the ground'),
  datum: z.string().describe('what its heights count from, as far as the file says'),
});

const GroundSchema = z.strictObject({
  terrain: ModelSchema,
  surface: ModelSchema.optional(),
  lowest_m: z.number().describe('of the heights kept, above the datum'),
  highest_m: z.number(),
  covered: z.array(z.string()).describe('holes whose ground it gives'),
  missing: z.array(z.string()).describe('holes it does not reach'),
  treeHeights: z.int().describe('trees and woods whose height is read from the surface model'),
  assumptions: z.array(z.string()).describe('what the player should know of it'),
});
export type Ground = z.output<typeof GroundSchema>;

/** Elevation models beside the courses. */
export const terrain = {
  /** null: none is kept. */
  getTerrain: { input: z.strictObject({ courseId: Id }), output: GroundSchema.nullable() },
  /** Cuts the course's surroundings out of the files and keeps them; the files are not needed afterwards. */
  addTerrain: {
    input: z.strictObject({
      courseId: Id,
      terrain: FilePath.describe('elevation model of the ground, GeoTIFF'),
      surface: FilePath.optional().describe('model with tree tops, GeoTIFF'),
    }),
    output: ChangedSchema.extend({ ground: GroundSchema }),
  },
  removeTerrain: { input: z.strictObject({ courseId: Id }), output: ChangedSchema },
};
