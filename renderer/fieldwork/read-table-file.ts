import type { Result } from '../../core/units/result.ts';

const LARGEST_BYTES = 20_000_000;

/** The text of a table file: UTF-8, or UTF-16 with its mark, as spreadsheets write both. */
export async function readTableFile(file: File): Promise<Result<string>> {
  const wrong = (message: string): Result<never> => ({ ok: false, problems: [{ path: file.name, message }] });
  if (file.size > LARGEST_BYTES) return wrong(`is larger than ${LARGEST_BYTES / 1e6} MB: is it the right file?`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const [first, second] = bytes;
  const encoding =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
  try {
    return { ok: true, value: new TextDecoder(encoding, { fatal: true }).decode(bytes) };
  } catch {
    return wrong('is not UTF-8 text: save it again as "CSV UTF-8"');
  }
}
