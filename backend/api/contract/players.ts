import { z } from 'zod';
import { DISC_CLASSES } from '../../../core/player/disc-class.ts';
import { ThrowsReportSchema } from '../../../core/player/throws-report.ts';
import { ChangedSchema, FileName, FileText, Id, Name, plainText, TextFileSchema } from './values.ts';

const disc = {
  id: z.string(),
  name: z.string(),
  class: z.enum(DISC_CLASSES),
  speed: z.number(),
  glide: z.number(),
  turn: z.number(),
  fade: z.number(),
  mass_g: z.number().optional(),
  diameter_mm: z.number().optional(),
  rimWidth_mm: z.number().optional(),
  wear: z.number().optional().describe('0 new to 1 beaten in'),
  role: z.enum(['putting', 'throwing']),
};

/** A disc as the player enters it; bounds and words are checked with the whole player. */
const DiscSchema = z.strictObject({
  ...disc,
  id: plainText(80).trim().min(1, 'is empty: write a short name of its own'),
  name: Name,
  class: disc.class.optional().describe('by the speed number when left out'),
  role: disc.role.optional(),
});
export type DiscEntry = z.output<typeof DiscSchema>;
/** As the file spells it. */
const DiscId = z.string().min(1).max(1000);

const PlayerLine = z.strictObject({
  playerId: Id,
  name: z.string(),
  handedness: z.enum(['right', 'left']),
  discs: z.int(),
  throws: z.int().describe('measured'),
  sample: z.boolean(),
});

const Session = z.strictObject({
  date: z.string().optional(),
  throws: z.int(),
  wind_mps: z.number().optional(),
  note: z.string().optional(),
});

const PlayerSummary = z.strictObject({
  name: z.string(),
  handedness: z.enum(['right', 'left']),
  discs: z.array(z.strictObject(disc)),
  sessions: z.array(Session),
  putting: z.array(z.strictObject({ distance_m: z.number(), attempts: z.int(), makes: z.int() })),
  notes: z.array(z.string()).describe('what was assumed'),
});

/** Players of the library: discs, fieldwork, putting. */
export const players = {
  listPlayers: { input: z.strictObject({}), output: z.array(PlayerLine) },
  getPlayer: {
    input: z.strictObject({ playerId: Id }),
    output: PlayerSummary.extend({ playerId: Id, sample: z.boolean() }),
  },
  /** The fitted range table; takes a moment the first time after a change. */
  getThrows: { input: z.strictObject({ playerId: Id }), output: ThrowsReportSchema },
  previewPlayer: { input: z.strictObject({ fileName: FileName, text: FileText }), output: PlayerSummary },
  importPlayer: {
    input: z.strictObject({ fileName: FileName, text: FileText }),
    output: ChangedSchema.extend({ playerId: Id }),
  },
  renamePlayer: { input: z.strictObject({ playerId: Id, name: Name }), output: ChangedSchema },
  removePlayer: { input: z.strictObject({ playerId: Id }), output: ChangedSchema },
  exportPlayer: { input: z.strictObject({ playerId: Id }), output: TextFileSchema },
  addDisc: { input: z.strictObject({ playerId: Id, disc: DiscSchema }), output: ChangedSchema },
  /** Replaces the disc with this id; its throws stay, also when the disc gets another id. */
  updateDisc: { input: z.strictObject({ playerId: Id, discId: DiscId, disc: DiscSchema }), output: ChangedSchema },
  /** Its measured throws go with it, and come back with `undo`. */
  removeDisc: { input: z.strictObject({ playerId: Id, discId: DiscId }), output: ChangedSchema },
};
