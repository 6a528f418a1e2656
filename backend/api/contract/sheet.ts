import { z } from 'zod';
import { Id, Ref } from './values.ts';

export const SHEET_FORMS = ['pocket', 'folded', 'fourAPage'] as const;

/** The printed sheet of a finished plan. */
export const sheet = {
  /** One self-contained HTML page: no network, no scripts, black-and-white safe. Pins and notes are on it. */
  renderSheet: {
    input: z.strictObject({
      planId: Id,
      form: z.enum(SHEET_FORMS),
      paper: z.enum(['a4', 'letter']).default('a4').describe('for folded and fourAPage'),
      holes: z.array(Ref).min(1).max(200).optional().describe('all when left out'),
      length: z.enum(['m', 'ft']),
      speed: z.enum(['mps', 'kmh', 'mph', 'kn']),
    }),
    output: z.strictObject({ title: z.string(), fileName: z.string(), html: z.string() }),
  },
};
