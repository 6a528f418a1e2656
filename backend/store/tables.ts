import { z } from 'zod';

const Truth = z.union([z.literal(0), z.literal(1)]);
const Time = z.int().min(0);

/** A row as SQLite holds it. */
const CourseRow = z.strictObject({
  courseId: z.string(),
  name: z.string(),
  fileName: z.string(),
  sample: Truth,
  addedAt_ms: Time,
});
const CourseFileRow = z.strictObject({ courseId: z.string(), text: z.string() });
const CourseOriginRow = z.strictObject({ courseId: z.string(), text: z.string() });
const CourseDraftRow = z.strictObject({
  courseId: z.string().describe('of the course it will be, or become'),
  name: z.string(),
  text: z.string().describe('GeoJSON as drawn so far; may not be readable as a course yet'),
  changedAt_ms: Time,
});
const PlayerRow = z.strictObject({
  playerId: z.string(),
  file: z.string().describe('PlayerFile as JSON'),
  sample: Truth,
  addedAt_ms: Time,
});
const LayoutName = z.string().describe('empty: the course as mapped');
const PinRow = z.strictObject({
  courseId: z.string(),
  playerId: z.string(),
  layout: LayoutName,
  ref: z.string(),
  shot: z.string().describe('ShotChoice as JSON'),
  title: z.string(),
});
const NoteRow = z.strictObject({ courseId: z.string(), layout: LayoutName, ref: z.string(), text: z.string() });
const RoundRow = z.strictObject({
  roundId: z.string(),
  courseId: z.string(),
  playerId: z.string(),
  date: z.string().describe('like 2026-05-30'),
  file: z.string().describe('RoundFile as JSON'),
  addedAt_ms: Time,
});

const GroundRow = z.strictObject({
  courseId: z.string(),
  digest: z.string().describe('of the text in groundFiles'),
});
const GroundFileRow = z.strictObject({ courseId: z.string(), text: z.string().describe('GroundFile as JSON') });

/** The tables whose rows the user can change and take back. */
export const TABLES = {
  courses: { key: ['courseId'], row: CourseRow },
  courseFiles: { key: ['courseId'], row: CourseFileRow },
  courseOrigins: { key: ['courseId'], row: CourseOriginRow },
  courseDrafts: { key: ['courseId'], row: CourseDraftRow },
  players: { key: ['playerId'], row: PlayerRow },
  pins: { key: ['courseId', 'playerId', 'layout', 'ref'], row: PinRow },
  notes: { key: ['courseId', 'layout', 'ref'], row: NoteRow },
  grounds: { key: ['courseId'], row: GroundRow },
  groundFiles: { key: ['courseId'], row: GroundFileRow },
  rounds: { key: ['roundId'], row: RoundRow },
} as const;

export type TableName = keyof typeof TABLES;
export const TABLE_NAMES = Object.keys(TABLES) as readonly TableName[];
export type RowOf<T extends TableName> = z.output<(typeof TABLES)[T]['row']>;
export type KeyOf<T extends TableName> = Readonly<Record<(typeof TABLES)[T]['key'][number], string>>;
