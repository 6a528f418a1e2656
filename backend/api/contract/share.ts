import { z } from 'zod';
import { SHEET_FORMS } from './sheet.ts';
import { Id, TextFileSchema } from './values.ts';

/** One file to hand on: any browser shows it, and `importCourse` takes the course out of it again, ground and notes too. */
export const share = {
  shareCourse: {
    input: z.strictObject({
      courseId: Id,
      planId: Id.optional().describe('shows the sheet of this finished plan; a list of holes when left out'),
      form: z.enum(SHEET_FORMS).default('fourAPage'),
      length: z.enum(['m', 'ft']),
      speed: z.enum(['mps', 'kmh', 'mph', 'kn']),
    }),
    output: TextFileSchema,
  },
};
