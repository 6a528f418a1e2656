import { z } from 'zod';
import { FilePath } from './terrain.ts';
import { plainText } from './values.ts';

/** Pictures under the course's map. */
export const BaseMapSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('file'), path: FilePath.describe('raster .mbtiles file on this machine') }),
  z.strictObject({
    kind: z.literal('web'),
    address: plainText(500).trim().min(1, 'is empty: write an address').describe('with {z}, {x} and {y}'),
    attribution: plainText(300)
      .trim()
      .min(1, 'is empty: write whose map it is, as they ask for it')
      .describe('shown on the map'),
    isAllowed: z.boolean().describe('the player lets the app fetch pictures from this server'),
  }),
]);
export type BaseMap = z.output<typeof BaseMapSchema>;

const FactsSchema = z.strictObject({
  name: z.string(),
  attribution: z.string(),
  minZoom: z.int(),
  maxZoom: z.int(),
  bounds: z.tuple([z.number(), z.number(), z.number(), z.number()]).readonly().optional(),
});

const Zoom = z.int().min(0).max(24);
const Index = z
  .int()
  .min(0)
  .max(2 ** 24 - 1);

/** The base map itself is a setting (`settings.baseMap`). */
export const baseMap = {
  /** What a base map is, before or after it is chosen; problems say what is wrong with its file or address. */
  describeBaseMap: { input: z.strictObject({ baseMap: BaseMapSchema }), output: FactsSchema },
  /** One picture of the chosen base map, for the hosts' `/tiles`; null where there is none. */
  getTile: {
    input: z.strictObject({ z: Zoom, x: Index, y: Index }),
    output: z.strictObject({ type: z.enum(['image/png', 'image/jpeg', 'image/webp']), base64: z.string() }).nullable(),
  },
};
