import { z } from 'zod';
import { dayInputSchema } from '../../../core/air/day-input.ts';
import { ATTITUDES } from './plans.ts';
import { Id, LimitsSchema, Ref } from './values.ts';

export const SettingsSchema = z.strictObject({
  length: z.enum(['m', 'ft']),
  speed: z.enum(['mps', 'kmh', 'mph', 'kn']),
  temperature: z.enum(['C', 'F']),
  theme: z.enum(['system', 'light', 'dark']),
  courseId: Id.nullable().describe('shown last'),
  playerId: Id.nullable(),
  ref: Ref.nullable().describe('hole shown last'),
  day: dayInputSchema,
  attitude: z.enum(ATTITUDES),
  target: z.int().min(1).max(500).nullable(),
  limits: LimitsSchema,
});
export type Settings = z.output<typeof SettingsSchema>;

/** How the player reads and where they left off. */
export const settings = {
  getSettings: { input: z.strictObject({}), output: SettingsSchema },
  /** Only what is given changes. */
  setSettings: { input: z.strictObject({ change: SettingsSchema.partial() }), output: SettingsSchema },
};
