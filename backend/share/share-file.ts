import { z } from 'zod';
import { problemPath } from '../../core/course/problem-path.ts';
import type { Result } from '../../core/units/result.ts';
import { FileText, plainText } from '../api/contract/values.ts';
import { GroundFileSchema, readGroundFile } from '../terrain/ground-file.ts';

/** What a course sharing page carries inside, besides what it shows. */
const ShareSchema = z.strictObject({
  schema: z.literal('roundwright/course-share@1'),
  name: plainText(120).min(1).describe('the course goes by this name'),
  course: FileText.describe('the course file, GeoJSON, as it is exported'),
  notes: z.array(z.strictObject({ ref: plainText(60).min(1), text: plainText(2000).min(1) })).max(500),
  ground: GroundFileSchema.optional().describe('elevation models beside the course'),
});
export type CourseShare = z.output<typeof ShareSchema>;

const OPENING = '<script type="application/json" id="roundwright-course-share">';
const CLOSING = '</script>';
/** The parts lie at the end of the page; a picture of one course and its ground. */
const LARGEST_CHARACTERS = 50_000_000;

/**
 * A page with a course inside: any browser shows it, the app takes the course out again. The part is data: no browser runs it.
 * @param html - a whole page
 */
export function sharePage(html: string, share: CourseShare): string {
  // The only characters with which data could end their element, written the other way JSON has for them.
  const json = JSON.stringify(share).replaceAll('<', '\\u003c');
  const part = `${OPENING}${json}${CLOSING}\n`;
  const end = html.lastIndexOf('</body>');
  return end === -1 ? `${html}${part}` : `${html.slice(0, end)}${part}${html.slice(end)}`;
}

/** Whether a file is such a page, by what it holds. */
export function isSharePage(text: string): boolean {
  return /^\s*<!doctype html/i.test(text) && text.includes(OPENING);
}

/** @returns what the page carries, or problems with their place in it */
export function readSharePage(text: string): Result<CourseShare> {
  if (text.length > LARGEST_CHARACTERS) return refused('file', 'is too large to be a course sharing page');
  const start = text.lastIndexOf(OPENING);
  const end = text.indexOf(CLOSING, start);
  if (start === -1 || end === -1)
    return refused('file', 'holds no course: it is no course sharing page, or was cut off');
  let json: unknown;
  try {
    json = JSON.parse(text.slice(start + OPENING.length, end));
  } catch {
    return refused('file', 'holds a course that is damaged: ask for the page again, as a file and not as text');
  }
  const read = ShareSchema.safeParse(json);
  if (!read.success)
    return {
      ok: false,
      problems: read.error.issues.map(({ path, message }) => ({ path: problemPath(path) || 'file', message })),
    };
  const ground = read.data.ground === undefined ? undefined : readGroundFile(read.data.ground);
  if (ground?.ok === false)
    return { ok: false, problems: ground.problems.map(p => ({ ...p, path: `ground.${p.path}` })) };
  return { ok: true, value: read.data };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
