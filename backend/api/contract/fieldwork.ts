import { z } from 'zod';
import { DiscScatterSchema } from '../../../core/player/disc-scatter.ts';
import { ChangedSchema, FileText, Id, ProblemSchema, plainText, TextFileSchema } from './values.ts';

const HANDS = ['backhand', 'forehand'] as const;
const SHAPES = ['flat', 'hyzer', 'anhyzer', 'roller', 'overhead'] as const;
const SURFACES = ['longGrass', 'turf', 'hardpan'] as const;
const DiscId = z.string().min(1).max(1000);
const Place = z.int().min(0).max(1_000_000);
const Power = z.union([z.enum(['full', 'part']), z.number()]);

const wind = { speed_mps: z.number(), from_deg: z.number(), height_m: z.number() };
/** As entered; bounds and words are checked with the whole player. */
const ThrowEntry = z.strictObject({
  discId: DiscId,
  hand: z.enum(HANDS),
  shape: z.enum(SHAPES),
  power: Power,
  distance_m: z.number().describe('at rest, along the throwing line'),
  side_m: z.number().optional().describe('off the line, right positive; left out: not measured'),
});
export type ThrowEntry = z.output<typeof ThrowEntry>;
const Conditions = z.strictObject({
  date: plainText(60).optional(),
  wind: z.strictObject(wind).optional(),
  bearing_deg: z.number().optional().describe('of the throwing line, clockwise from true north'),
  rise_m: z.number().optional(),
  surface: z.enum(SURFACES).optional(),
  note: plainText(500).optional(),
});
export type SessionConditions = z.output<typeof Conditions>;

/** As the file has it: texts of any kind. */
const SessionShown = z.strictObject({
  date: z.string().optional(),
  wind: z.strictObject(wind).optional(),
  bearing_deg: z.number().optional(),
  rise_m: z.number().optional(),
  surface: z.enum(SURFACES).optional(),
  note: z.string().optional(),
  throws: z.array(ThrowEntry.extend({ discId: z.string() })),
});
export type SessionShown = z.output<typeof SessionShown>;

/** Sessions have no names of their own: their place, and how many throws the window saw there, so that no other is hit. */
const session = { playerId: Id, session: Place, throws: Place.describe('as seen; refused when there are others now') };
const thrown = { ...session, place: Place };

const CsvOptionsSchema = z.strictObject({
  delimiter: z.enum([',', ';', '\t']).optional(),
  hasHeader: z.boolean().optional(),
  columns: z
    .array(z.string().max(60).nullable())
    .max(100)
    .optional()
    .describe('one per column: a header such as distance_ft; null leaves the column out'),
  decimal: z.enum(['point', 'comma']).optional(),
  dates: z.enum(['ymd', 'dmy', 'mdy']).optional(),
  defaults: z
    .strictObject({
      discId: DiscId.optional(),
      hand: z.enum(HANDS).optional(),
      shape: z.enum(SHAPES).optional(),
      power: Power.optional(),
      date: plainText(60).optional(),
    })
    .optional()
    .describe('what counts where a column is missing or a cell empty'),
});

const CsvPreview = z.strictObject({
  delimiter: z.enum([',', ';', '\t']),
  hasHeader: z.boolean(),
  decimal: z.enum(['point', 'comma', 'any']),
  dates: z.enum(['ymd', 'dmy', 'mdy', 'any']),
  columns: z.array(z.strictObject({ name: z.string(), meaning: z.string().nullable() })),
  problems: z.array(ProblemSchema).describe('of the table as a whole: while there are any, no row is read'),
  rows: z
    .array(
      z.strictObject({
        line: z.int(),
        cells: z.array(z.string()),
        problems: z.array(z.strictObject({ column: z.int().nullable(), message: z.string() })),
      }),
    )
    .describe('the bad ones first of all, then some good ones; in the order of the file'),
  good: z.int().describe('rows'),
  bad: z.int().describe('rows'),
  known: z.int().describe('throws in whole sessions the player has already: left out'),
  throws: z.int().describe('that would be added'),
  sessions: z.int().describe('that would be added'),
});

/** Measured throws: sessions by place in the player's file. */
export const fieldwork = {
  getFieldwork: {
    input: z.strictObject({ playerId: Id }),
    output: z.strictObject({
      name: z.string(),
      handedness: z.enum(['right', 'left']),
      discs: z.array(
        z.strictObject({ id: z.string(), name: z.string(), speed: z.number(), role: z.enum(['putting', 'throwing']) }),
      ),
      sessions: z.array(SessionShown),
      notes: z.array(z.string()).describe('what was assumed'),
    }),
  },
  addSession: {
    input: z.strictObject({ playerId: Id, session: Conditions.extend({ throws: z.array(ThrowEntry).max(5000) }) }),
    output: ChangedSchema.extend({ session: z.int().describe('its place') }),
  },
  /** Date, wind, line, slope, surface and note; the throws stay. */
  updateSession: { input: z.strictObject({ ...session, conditions: Conditions }), output: ChangedSchema },
  removeSession: { input: z.strictObject(session), output: ChangedSchema },
  /** After those that are there. */
  addThrows: {
    input: z.strictObject({ playerId: Id, session: Place, add: z.array(ThrowEntry).min(1).max(5000) }),
    output: ChangedSchema,
  },
  updateThrow: { input: z.strictObject({ ...thrown, to: ThrowEntry }), output: ChangedSchema },
  removeThrow: { input: z.strictObject(thrown), output: ChangedSchema },
  /** What importing this table would add; nothing is stored. */
  previewThrowsCsv: {
    input: z.strictObject({ playerId: Id, text: FileText, options: CsvOptionsSchema.default({}) }),
    output: CsvPreview,
  },
  /** All of it or nothing; with bad rows only when `dropBad` says how many the player agreed to leave out. */
  importThrowsCsv: {
    input: z.strictObject({
      playerId: Id,
      text: FileText,
      options: CsvOptionsSchema.default({}),
      dropBad: z.int().min(0).max(1_000_000).default(0),
    }),
    output: ChangedSchema.extend({ throws: z.int(), sessions: z.int() }),
  },
  exportThrowsCsv: {
    input: z.strictObject({
      playerId: Id,
      length: z.enum(['m', 'ft']).default('m'),
      speed: z.enum(['mps', 'kmh', 'mph', 'kn']).default('mps'),
    }),
    output: TextFileSchema,
  },
  /** Where a disc came to rest, how far each throw counts, the fitted flight, and its drift; takes a moment after a change. */
  getDiscScatter: {
    input: z.strictObject({ playerId: Id, discId: DiscId, hand: z.enum(HANDS) }),
    output: DiscScatterSchema,
  },
};
