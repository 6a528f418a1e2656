import { z } from 'zod';
import { dayInputSchema } from '../../../core/air/day-input.ts';
import { RoundWindsSchema } from '../../../core/air/round-winds.ts';
import { BaseMapSchema } from './base-map.ts';
import { ATTITUDES } from './plans.ts';
import { Id, LimitsSchema, Name, Ref } from './values.ts';

export const SettingsSchema = z.strictObject({
  length: z.enum(['m', 'ft']),
  speed: z.enum(['mps', 'kmh', 'mph', 'kn']),
  temperature: z.enum(['C', 'F']),
  theme: z.enum(['system', 'light', 'dark']),
  courseId: Id.nullable().describe('shown last'),
  playerId: Id.nullable(),
  layouts: z.record(Id, Name).describe('the layout played, by course; the course as mapped when left out'),
  ref: Ref.nullable().describe('hole shown last'),
  day: dayInputSchema,
  winds: RoundWindsSchema.nullable().describe('wind by tee time, kept also while it is not used; null until the first'),
  isByTeeTime: z.boolean().describe('true: planned in `winds`; false: in the one wind of `day`'),
  startRefs: z.record(Id, Ref).describe('the hole thrown off first, by course; the first one when left out'),
  attitude: z.enum(ATTITUDES),
  target: z.int().min(1).max(500).nullable(),
  limits: LimitsSchema,
  baseMap: BaseMapSchema.nullable().describe('pictures under the map; none at first'),
});
export type Settings = z.output<typeof SettingsSchema>;

/** How the player reads and where they left off. */
export const settings = {
  getSettings: { input: z.strictObject({}), output: SettingsSchema },
  /** Only what is given changes. */
  setSettings: { input: z.strictObject({ change: SettingsSchema.partial() }), output: SettingsSchema },
};
