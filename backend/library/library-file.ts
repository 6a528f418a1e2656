import { z } from 'zod';
import { problemPath } from '../../core/course/problem-path.ts';
import { parseJsonText } from '../../core/player/json-text.ts';
import { parsePlayer } from '../../core/player/player-file.ts';
import { parseRound } from '../../core/review/round-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { FileText, isPlainText, ShotChoiceSchema } from '../api/contract/values.ts';
import type { Store } from '../store/open-store.ts';
import type { RowOf } from '../store/tables.ts';
import { GroundFileSchema, groundDigest, readGroundFile } from '../terrain/ground-file.ts';
import { readDraft } from './draft.ts';
import { readableCourse } from './readable-course.ts';

const Time = z.int().min(0);
const Text = z.string().min(1).refine(isPlainText, 'holds characters that cannot be kept');
const LayoutName = z
  .union([z.literal(''), Text])
  .default('')
  .describe('empty, or left out by older files: the course as mapped');

/** Everything a player would miss, as one file; plans are left out: they are made anew. */
const LibraryFileSchema = z.object({
  schema: z.literal('roundwright/library@1', { error: 'must be "roundwright/library@1": this is no library file' }),
  courses: z.array(
    z.object({
      courseId: z.uuid(),
      name: Text,
      fileName: Text,
      sample: z.boolean(),
      addedAt_ms: Time,
      text: z
        .string()
        .refine(text => text.isWellFormed(), 'is not UTF-8 text')
        .describe('the GeoJSON file as it stands'),
      origin: FileText.optional().describe('the map as it last came in, of a course changed since'),
    }),
  ),
  courseDrafts: z
    .array(z.object({ courseId: z.uuid(), name: Text, changedAt_ms: Time, text: FileText }))
    .default([])
    .describe('maps still being drawn'),
  players: z.array(z.object({ playerId: z.uuid(), sample: z.boolean(), addedAt_ms: Time, file: z.unknown() })),
  pins: z.array(
    z.object({
      courseId: z.uuid(),
      playerId: z.uuid(),
      layout: LayoutName,
      ref: Text,
      shot: ShotChoiceSchema,
      title: Text,
    }),
  ),
  notes: z.array(z.object({ courseId: z.uuid(), layout: LayoutName, ref: Text, text: Text })),
  grounds: z
    .array(z.object({ courseId: z.uuid(), ground: GroundFileSchema }))
    .default([])
    .describe('elevation models beside the courses'),
  rounds: z
    .array(z.object({ roundId: z.uuid(), courseId: z.uuid(), playerId: z.uuid(), addedAt_ms: Time, file: z.unknown() }))
    .default([])
    .describe('left out by files of before rounds were kept'),
});

/** A library as rows, ready to be written. */
export type LibraryRows = Readonly<{
  courses: readonly RowOf<'courses'>[];
  courseFiles: readonly RowOf<'courseFiles'>[];
  courseOrigins: readonly RowOf<'courseOrigins'>[];
  courseDrafts: readonly RowOf<'courseDrafts'>[];
  players: readonly RowOf<'players'>[];
  pins: readonly RowOf<'pins'>[];
  notes: readonly RowOf<'notes'>[];
  grounds: readonly RowOf<'grounds'>[];
  groundFiles: readonly RowOf<'groundFiles'>[];
  rounds: readonly RowOf<'rounds'>[];
}>;

export function exportLibraryText({ tables }: Store): string {
  const file: z.input<typeof LibraryFileSchema> = {
    schema: 'roundwright/library@1',
    courses: tables.courses.where().map(({ sample, ...row }) => ({
      ...row,
      sample: sample === 1,
      text: tables.courseFiles.get({ courseId: row.courseId })!.text,
      origin: tables.courseOrigins.get({ courseId: row.courseId })?.text,
    })),
    courseDrafts: tables.courseDrafts.where(),
    players: tables.players
      .where()
      .map(({ sample, file, ...row }) => ({ ...row, sample: sample === 1, file: JSON.parse(file) as unknown })),
    pins: tables.pins.where().map(pin => ({ ...pin, shot: ShotChoiceSchema.parse(JSON.parse(pin.shot)) })),
    notes: tables.notes.where(),
    grounds: tables.groundFiles
      .where()
      .map(({ courseId, text }) => ({ courseId, ground: GroundFileSchema.parse(JSON.parse(text)) })),
    rounds: tables.rounds.where().map(({ date: _, file, ...row }) => ({ ...row, file: JSON.parse(file) as unknown })),
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

/** @returns all rows, or every problem: of the file, of a course or player in it, of a pin that points nowhere */
export function readLibraryText(text: string): Result<LibraryRows> {
  const json = parseJsonText(text);
  if (!json.ok) return json;
  const parsed = LibraryFileSchema.safeParse(json.value);
  if (!parsed.success)
    return {
      ok: false,
      problems: parsed.error.issues.map(({ path, message }) => ({ path: problemPath(path) || 'file', message })),
    };
  const { courses, courseDrafts, players, pins, notes, rounds, grounds } = parsed.data;
  const problems: Problem[] = [];
  const under = (start: string, found: readonly Problem[]) =>
    problems.push(...found.map(({ path, message }) => ({ path: `${start}: ${path}`, message })));
  const courseIds = new Set(courses.map(({ courseId }) => courseId));
  const playerIds = new Set(players.map(({ playerId }) => playerId));
  if (courseIds.size < courses.length) problems.push({ path: 'courses', message: 'hold the same courseId twice' });
  if (playerIds.size < players.length) problems.push({ path: 'players', message: 'hold the same playerId twice' });
  courses.forEach(({ text, fileName }, i) => {
    const course = readableCourse(text, fileName);
    if (!course.ok) under(`courses[${i}].text`, course.problems);
  });
  courses.forEach(({ origin }, i) => {
    const map = origin === undefined ? undefined : readDraft(origin);
    if (map?.ok === false) under(`courses[${i}].origin`, map.problems);
  });
  if (new Set(courseDrafts.map(({ courseId }) => courseId)).size < courseDrafts.length)
    problems.push({ path: 'courseDrafts', message: 'hold the same courseId twice' });
  courseDrafts.forEach(({ text }, i) => {
    const draft = readDraft(text);
    if (!draft.ok) under(`courseDrafts[${i}].text`, draft.problems);
  });
  const playerRows = players.flatMap(({ playerId, sample, addedAt_ms, file }, i) => {
    const player = parsePlayer(file);
    if (player.ok) return [{ playerId, sample: truth(sample), addedAt_ms, file: JSON.stringify(player.value) }];
    under(`players[${i}].file`, player.problems);
    return [];
  });
  pins.forEach(({ courseId, playerId }, i) => {
    if (!courseIds.has(courseId)) problems.push({ path: `pins[${i}].courseId`, message: 'is no course of this file' });
    if (!playerIds.has(playerId)) problems.push({ path: `pins[${i}].playerId`, message: 'is no player of this file' });
  });
  notes.forEach(({ courseId }, i) => {
    if (!courseIds.has(courseId)) problems.push({ path: `notes[${i}].courseId`, message: 'is no course of this file' });
  });
  const roundIds = new Set(rounds.map(({ roundId }) => roundId));
  if (roundIds.size < rounds.length) problems.push({ path: 'rounds', message: 'hold the same roundId twice' });
  const roundRows = rounds.flatMap(({ roundId, courseId, playerId, addedAt_ms, file }, i) => {
    if (!courseIds.has(courseId))
      problems.push({ path: `rounds[${i}].courseId`, message: 'is no course of this file' });
    if (!playerIds.has(playerId))
      problems.push({ path: `rounds[${i}].playerId`, message: 'is no player of this file' });
    const round = parseRound(file);
    if (round.ok)
      return [{ roundId, courseId, playerId, date: round.value.date, file: JSON.stringify(round.value), addedAt_ms }];
    under(`rounds[${i}].file`, round.problems);
    return [];
  });
  const groundRows = grounds.map(({ courseId, ground }, i) => {
    if (!courseIds.has(courseId))
      problems.push({ path: `grounds[${i}].courseId`, message: 'is no course of this file' });
    const read = readGroundFile(ground);
    if (!read.ok) under(`grounds[${i}].ground`, read.problems);
    return { courseId, text: JSON.stringify(ground) };
  });
  if (new Set(grounds.map(({ courseId }) => courseId)).size < grounds.length)
    problems.push({ path: 'grounds', message: 'hold the same courseId twice' });
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: {
      courses: courses.map(({ text: _, origin: __, sample, ...row }) => ({ ...row, sample: truth(sample) })),
      courseFiles: courses.map(({ courseId, text }) => ({ courseId, text })),
      courseOrigins: courses.flatMap(({ courseId, origin }) =>
        origin === undefined ? [] : [{ courseId, text: origin }],
      ),
      courseDrafts,
      players: playerRows,
      pins: pins.map(pin => ({ ...pin, shot: JSON.stringify(pin.shot) })),
      notes,
      grounds: groundRows.map(({ courseId, text }) => ({ courseId, digest: groundDigest(text) })),
      groundFiles: groundRows,
      rounds: roundRows,
    },
  };
}

const truth = (value: boolean): 0 | 1 => (value ? 1 : 0);
