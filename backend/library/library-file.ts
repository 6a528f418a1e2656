import { z } from 'zod';
import { problemPath } from '../../core/course/problem-path.ts';
import { parseJsonText } from '../../core/player/json-text.ts';
import { parsePlayer } from '../../core/player/player-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { isPlainText, ShotChoiceSchema } from '../api/contract/values.ts';
import type { Store } from '../store/open-store.ts';
import type { RowOf } from '../store/tables.ts';
import { readableCourse } from './readable-course.ts';

const Time = z.int().min(0);
const Text = z.string().min(1).refine(isPlainText, 'holds characters that cannot be kept');

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
        .describe('the GeoJSON file as it came in'),
    }),
  ),
  players: z.array(z.object({ playerId: z.uuid(), sample: z.boolean(), addedAt_ms: Time, file: z.unknown() })),
  pins: z.array(
    z.object({
      courseId: z.uuid(),
      playerId: z.uuid(),
      ref: Text,
      shot: ShotChoiceSchema,
      title: Text,
    }),
  ),
  notes: z.array(z.object({ courseId: z.uuid(), ref: Text, text: Text })),
});

/** A library as rows, ready to be written. */
export type LibraryRows = Readonly<{
  courses: readonly RowOf<'courses'>[];
  courseFiles: readonly RowOf<'courseFiles'>[];
  players: readonly RowOf<'players'>[];
  pins: readonly RowOf<'pins'>[];
  notes: readonly RowOf<'notes'>[];
}>;

export function exportLibraryText({ tables }: Store): string {
  const file: z.input<typeof LibraryFileSchema> = {
    schema: 'roundwright/library@1',
    courses: tables.courses.where().map(({ sample, ...row }) => ({
      ...row,
      sample: sample === 1,
      text: tables.courseFiles.get({ courseId: row.courseId })!.text,
    })),
    players: tables.players
      .where()
      .map(({ sample, file, ...row }) => ({ ...row, sample: sample === 1, file: JSON.parse(file) as unknown })),
    pins: tables.pins.where().map(pin => ({ ...pin, shot: ShotChoiceSchema.parse(JSON.parse(pin.shot)) })),
    notes: tables.notes.where(),
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
  const { courses, players, pins, notes } = parsed.data;
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
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: {
      courses: courses.map(({ text: _, sample, ...row }) => ({ ...row, sample: truth(sample) })),
      courseFiles: courses.map(({ courseId, text }) => ({ courseId, text })),
      players: playerRows,
      pins: pins.map(pin => ({ ...pin, shot: JSON.stringify(pin.shot) })),
      notes,
    },
  };
}

const truth = (value: boolean): 0 | 1 => (value ? 1 : 0);
