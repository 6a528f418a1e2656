import { z } from 'zod';
import { LocalPointSchema, LonLatSchema } from './values.ts';

const Polygons = z.array(z.array(z.array(LocalPointSchema))).describe('polygons, each outer ring first, closed');
const Area = z.strictObject({
  source: z.string(),
  assumed: z.array(z.string()),
  polygons: Polygons,
  what: z.string().optional(),
  name: z.string().optional(),
});
const Reliefs = z
  .array(z.enum(['line', 'previousLie', 'dropZone']))
  .optional()
  .describe('where the course lets a throw that went out be played from; absent: any of them');
const origin = { source: z.string(), assumed: z.array(z.string()) };

/**
 * A `HoleMap` as plain JSON: x east, y north, metres from the tee; `null` stands for a height without end.
 * `terrain.height_m` runs row by row from the south-west corner.
 */
export const HoleMapSchema = z.strictObject({
  ref: z.string(),
  name: z.string().optional(),
  par: z.int(),
  parSource: z.enum(['tagged', 'derived']),
  origin: LonLatSchema.describe('of the tee: where the local frame sits'),
  basket: LocalPointSchema,
  line: z.array(LocalPointSchema).describe('line of play, tee first, basket last'),
  otherTees: z.array(LocalPointSchema),
  terrain: z.strictObject({
    x0_m: z.number(),
    y0_m: z.number(),
    cell_m: z.number(),
    columns: z.int(),
    rows: z.int(),
    height_m: z.array(z.number()).describe('above the tee’s ground'),
    known: z.boolean(),
  }),
  trees: z.array(
    z.strictObject({
      ...origin,
      at: LocalPointSchema,
      height_m: z.number(),
      crownRadius_m: z.number(),
      crownBase_m: z.number(),
      trunkRadius_m: z.number(),
    }),
  ),
  covers: z.array(
    z.strictObject({
      ...origin,
      form: z.enum(['wood', 'scrub', 'treeRow', 'hedge', 'wall', 'fence', 'building']),
      polygons: Polygons,
      height_m: z.number(),
      base_m: z.number(),
      density: z.number(),
    }),
  ),
  ceilings: z.array(
    z.strictObject({ ...origin, polygons: Polygons, clearance_m: z.number(), top_m: z.number().nullable() }),
  ),
  gaps: z.array(
    z.strictObject({
      ...origin,
      posts: z.tuple([LocalPointSchema, LocalPointSchema]),
      low_m: z.number(),
      high_m: z.number().nullable(),
    }),
  ),
  outOfBounds: z.array(Area.extend({ relief: Reliefs })),
  hazards: z.array(Area),
  islands: z.array(Area.extend({ relief: Reliefs })),
  lostGrounds: z.array(Area.extend({ share: z.number() })).describe('where a disc is not found with this chance'),
  dropZones: z.array(
    z.strictObject({
      ...origin,
      at: LocalPointSchema,
      uses: z.array(z.enum(['outOfBounds', 'mando', 'lostDisc'])).optional(),
    }),
  ),
  mandos: z.array(
    z.strictObject({
      ...origin,
      line: z.array(LocalPointSchema),
      side: z.enum(['left', 'right', 'above', 'below']),
      low_m: z.number(),
      high_m: z.number().nullable(),
      at: LocalPointSchema,
    }),
  ),
  fairways: z.array(Area.extend({ surface: z.enum(['longGrass', 'turf', 'hardpan']), ownHole: z.boolean() })),
  people: z.array(
    z.strictObject({ ...origin, what: z.string(), lines: z.array(z.array(LocalPointSchema)), closed: z.boolean() }),
  ),
  assumptions: z.array(z.string()),
});
export type PlainHoleMap = z.output<typeof HoleMapSchema>;
