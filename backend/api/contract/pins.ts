import { z } from 'zod';
import { ChangedSchema, Id, Name, plainText, Ref, ShotChoiceSchema } from './values.ts';

const Layout = Name.optional().describe('the layout they belong to; the course as mapped when left out');

/** The player's own decisions on a course: pinned shots, and notes of holes. Each layout has its own. */
export const pins = {
  listPins: {
    input: z.strictObject({ courseId: Id, playerId: Id, layout: Layout }),
    output: z.array(z.strictObject({ ref: z.string(), shot: ShotChoiceSchema, title: z.string() })),
  },
  pinShot: {
    input: z.strictObject({
      courseId: Id,
      playerId: Id,
      layout: Layout,
      ref: Ref,
      shot: ShotChoiceSchema,
      title: plainText(200).min(1).describe('of the shot, in plain words'),
    }),
    output: ChangedSchema,
  },
  unpinShot: { input: z.strictObject({ courseId: Id, playerId: Id, layout: Layout, ref: Ref }), output: ChangedSchema },
  listNotes: {
    input: z.strictObject({ courseId: Id, layout: Layout }),
    output: z.array(z.strictObject({ ref: z.string(), text: z.string() })),
  },
  /** An empty text takes the note away. */
  setNote: {
    input: z.strictObject({
      courseId: Id,
      layout: Layout,
      ref: Ref,
      text: plainText(2000),
    }),
    output: ChangedSchema,
  },
};
