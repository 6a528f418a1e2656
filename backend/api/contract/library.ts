import { z } from 'zod';
import { ChangedSchema, Id, LibraryText, TextFileSchema, UndoSchema } from './values.ts';

/** The library as a whole, and undo. */
export const library = {
  /** Everything as one JSON file. */
  exportLibrary: { input: z.strictObject({}), output: TextFileSchema },
  /** `merge` adds what is not there yet and leaves the rest; `replace` makes the library what the file says. */
  importLibrary: {
    input: z.strictObject({ text: LibraryText, how: z.enum(['merge', 'replace']) }),
    output: ChangedSchema.extend({
      courses: z.int(),
      players: z.int(),
      pins: z.int(),
      notes: z.int(),
      rounds: z.int(),
    }),
  },
  /** Takes a change back, also after a restart. Refused when what it touched was changed again since. */
  undo: { input: z.strictObject({ changeId: Id }), output: ChangedSchema },
  /** Newest first: what can be taken back. */
  listChanges: { input: z.strictObject({}), output: z.array(UndoSchema.extend({ at_ms: z.number() })) },
  /** What to say once at the start: a damaged library was set aside, a backup was made. */
  getStartNotes: {
    input: z.strictObject({}),
    output: z.strictObject({ version: z.string(), notes: z.array(z.string()) }),
  },
};
