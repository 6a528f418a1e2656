import type { Result } from '../../core/units/result.ts';
import type { CourseFileInput } from './contract/course-file.ts';

/** The bytes of a file handed in. Text is marked as UTF-8, which it is by now, whatever an XML declaration in it says. */
export function courseFileBytes({ text, data }: Pick<CourseFileInput, 'text' | 'data'>): Result<Uint8Array> {
  if ((text === undefined) === (data === undefined))
    return { ok: false, problems: [{ path: 'text', message: 'hand in either the file’s text or its bytes (data)' }] };
  if (data !== undefined) return { ok: true, value: Buffer.from(data, 'base64') };
  return { ok: true, value: Buffer.from(text!.startsWith('\uFEFF') || text === '' ? text! : `\uFEFF${text}`, 'utf8') };
}
