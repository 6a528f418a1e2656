import type { PickedFile } from '../../backend/api/contract/course-file.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import type { Backend } from '../client/backend.ts';
import { readTableFile } from '../fieldwork/read-table-file.ts';
import type { TableFile } from '../fieldwork/waiting-table.ts';

type TextFile = Readonly<{ fileName: string; text: string }>;
export type FileKind = 'course' | 'player' | 'library';

/** What a file looks like it is; the import then says exactly what is wrong with it. */
export function kindOf(file: PickedFile): FileKind {
  if (!('text' in file)) return 'course';
  const { fileName, text } = file;
  if (/\.geojson$/i.test(fileName)) return 'course';
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null) {
      if ('type' in value && value.type === 'FeatureCollection') return 'course';
      if ('courses' in value && 'players' in value) return 'library';
      if ('discs' in value || 'sessions' in value) return 'player';
    }
  } catch {
    return 'course';
  }
  return 'course';
}

/** Asked before anything is read: a film dropped by mistake must not fill the memory. */
const LARGEST_bytes = 20_000_000;
/** A library carries all courses and their terrain. */
const LARGEST_JSON_bytes = 50_000_000;
const largestOf = ({ name }: File) => (/\.json$/i.test(name) ? LARGEST_JSON_bytes : LARGEST_bytes);

export type ReadFiles = Readonly<{
  files: readonly PickedFile[];
  /** Tables of throws or rounds (CSV). */
  tables: readonly TableFile[];
  problems: readonly Problem[];
}>;

const isTable = ({ name }: File) => /\.(csv|tsv)$/i.test(name);

/** The files as text or bytes; what is too large becomes a problem with the file's name as its path. */
export async function readFiles(picked: readonly File[]): Promise<ReadFiles> {
  const tooLarge = picked.filter(file => file.size > largestOf(file));
  const problems = tooLarge.map(file => ({
    path: file.name,
    message: `is ${(file.size / 1e6).toFixed(0)} MB, larger than the ${largestOf(file) / 1e6} MB taken: cut it down to one course`,
  }));
  const taken = picked.filter(file => !tooLarge.includes(file));
  const files = await Promise.all(taken.filter(file => !isTable(file)).map(readFile));
  const read = await Promise.all(
    taken.filter(isTable).map(async file => ({ name: file.name, table: await readTableFile(file) })),
  );
  return {
    files,
    tables: read.flatMap(({ name, table }) => (table.ok ? [{ name, text: table.value }] : [])),
    problems: [...problems, ...read.flatMap(({ table }) => (table.ok ? [] : table.problems))],
  };
}

/** JSON is handed on as text; other files say themselves how they are written, or are no text. */
async function readFile(file: File): Promise<PickedFile> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (/^\s*(?:[{[]|$)/.test(text)) return { fileName: file.name, text };
  } catch {
    // Not UTF-8: the backend looks at the bytes.
  }
  return { fileName: file.name, data: base64(bytes) };
}

function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  // A multiple of three, so that the parts join without padding; small enough to be arguments of one call.
  for (let at = 0; at < bytes.length; at += 24_576)
    parts.push(btoa(String.fromCharCode(...bytes.subarray(at, at + 24_576))));
  return parts.join('');
}

/**
 * Offers a text for saving: the shell's dialog, or the browser's download.
 * @returns whether it was saved, as far as can be known, or why it could not be
 */
export async function offerFile(backend: Backend, file: TextFile): Promise<Result<{ saved: boolean }>> {
  if (backend.desktop !== null) return backend.desktop.desktop.saveFile(file);
  const address = URL.createObjectURL(new Blob([file.text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file.fileName;
  link.click();
  URL.revokeObjectURL(address);
  return { ok: true, value: { saved: true } };
}
