import { Inflate } from 'fflate';
import type { Problem, Result } from '../../core/units/result.ts';
import { importLimits } from './import-limits.ts';

type Entry = Readonly<{
  name: string;
  flags: number;
  method: number;
  packed_bytes: number;
  unpacked_bytes: number;
  header: number;
}>;

const [STORED, DEFLATED] = [0, 8];
/** Fed in such portions, an archive that grows a thousandfold is noticed before it fills the memory. */
const PORTION_bytes = 16_384;

/**
 * The map in a KMZ archive: `doc.kml` at its top, else its only or first KML. Nothing is written anywhere.
 * @returns the KML's bytes and the names of what was left in the archive, or what is wrong with it
 */
export function unzipMap(
  archive: Uint8Array,
): Result<Readonly<{ name: string; bytes: Uint8Array; others: readonly string[] }>> {
  const listed = listEntries(archive);
  if (!listed.ok) return listed;
  const files = listed.value.filter(({ name }) => !name.endsWith('/'));
  const problems = [...badNames(files), ...twice(files)];
  if (problems.length > 0) return { ok: false, problems };
  const total = files.reduce((sum, { unpacked_bytes }) => sum + unpacked_bytes, 0);
  if (total > importLimits.unzipped_bytes)
    return refuse(
      'file',
      `says it unpacks to ${megabytes(total)}, more than the ${megabytes(importLimits.unzipped_bytes)} taken: export the map without its pictures`,
    );
  const maps = files.filter(({ name }) => /\.kml$/i.test(name));
  const chosen = maps.find(({ name }) => /^doc\.kml$/i.test(name)) ?? maps.toSorted((a, b) => depth(a) - depth(b))[0];
  if (chosen === undefined)
    return refuse('file', 'is a zip archive without a KML file in it: unpack it, and take the map file itself');
  const bytes = unpack(archive, chosen);
  if (!bytes.ok) return bytes;
  return {
    ok: true,
    value: {
      name: chosen.name,
      bytes: bytes.value,
      others: files.filter(file => file !== chosen).map(({ name }) => name),
    },
  };
}

const depth = ({ name }: Entry) => name.split('/').length;

/** The archive's own table of contents, at its end. */
function listEntries(archive: Uint8Array): Result<Entry[]> {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  const end = findEnd(view);
  if (end === undefined) return refuse('file', 'is a zip archive that stops too early: save or download it again');
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  if (count === 0xffff || start === 0xffffffff)
    return refuse('file', 'is a zip archive of the 64-bit kind, far larger than a map: unpack it first');
  if (count > importLimits.zipEntries)
    return refuse(
      'file',
      `holds ${count} files; at most ${importLimits.zipEntries} are taken: export the course alone`,
    );
  const entries: Entry[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + 46 > end || view.getUint32(at, true) !== 0x02014b50)
      return refuse('file', `is a damaged zip archive: its table of contents breaks off at file ${i + 1} of ${count}`);
    const nameLength = view.getUint16(at + 28, true);
    const nameStart = at + 46;
    if (nameStart + nameLength > end)
      return refuse('file', `is a damaged zip archive: the name of file ${i + 1} runs over its end`);
    entries.push({
      name: new TextDecoder('utf-8').decode(archive.subarray(nameStart, nameStart + nameLength)),
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      packed_bytes: view.getUint32(at + 20, true),
      unpacked_bytes: view.getUint32(at + 24, true),
      header: view.getUint32(at + 42, true),
    });
    at = nameStart + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return { ok: true, value: entries };
}

/** The end record, before a comment of up to 65,535 bytes. */
function findEnd(view: DataView): number | undefined {
  const last = view.byteLength - 22;
  for (let at = last; at >= Math.max(0, last - 0xffff); at--) if (view.getUint32(at, true) === 0x06054b50) return at;
  return undefined;
}

/** Nothing is unpacked to disk, but a name that leads elsewhere shows that the archive means harm. */
function badNames(files: readonly Entry[]): Problem[] {
  return files.flatMap(({ name }) => {
    const leadsOut = /^[/\\]|^[a-z]:|(?:^|[/\\])\.\.(?:[/\\]|$)/i.test(name);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    const isOdd = name === '' || /[\u0000-\u001f\u007f\\]/.test(name);
    if (!leadsOut && !isOdd) return [];
    const why = leadsOut ? 'leads out of the archive' : 'is no name for a file';
    return [
      {
        path: `archive: ${JSON.stringify(name.slice(0, 80))}`,
        message: `${why}: the archive is refused; export the map again`,
      },
    ];
  });
}

function twice(files: readonly Entry[]): Problem[] {
  const seen = new Set<string>();
  return files.flatMap(({ name }) => {
    const key = name.toLowerCase();
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    return [
      {
        path: `archive: ${JSON.stringify(name.slice(0, 80))}`,
        message: 'is in the archive twice, so it cannot be told which one is meant: export the map again',
      },
    ];
  });
}

function unpack(archive: Uint8Array, entry: Entry): Result<Uint8Array> {
  const path = `archive: ${JSON.stringify(entry.name.slice(0, 80))}`;
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  if (entry.flags & 1) return refuse(path, 'is locked with a password: save the map without one');
  if (entry.method !== STORED && entry.method !== DEFLATED)
    return refuse(path, `is packed in a way not read here (method ${entry.method}): zip it the ordinary way`);
  if (entry.header + 30 > archive.length || view.getUint32(entry.header, true) !== 0x04034b50)
    return refuse(path, 'is not where the archive says: the archive is damaged; save or download it again');
  const start = entry.header + 30 + view.getUint16(entry.header + 26, true) + view.getUint16(entry.header + 28, true);
  const packed = archive.subarray(start, start + entry.packed_bytes);
  if (packed.length < entry.packed_bytes) return refuse(path, 'is cut off: save or download the archive again');
  if (entry.method === STORED) return { ok: true, value: packed };
  const most = Math.min(importLimits.unzipped_bytes, Math.max(1_000_000, packed.length * importLimits.zipRatio));
  const inflated = inflate(packed, most);
  if (inflated === 'tooLarge')
    return refuse(
      path,
      `unpacks to more than ${megabytes(most)} from ${megabytes(packed.length)}: no map does; it is refused`,
    );
  return inflated === 'damaged'
    ? refuse(path, 'cannot be unpacked: the archive is damaged; save or download it again')
    : { ok: true, value: inflated };
}

function inflate(packed: Uint8Array, most_bytes: number): Uint8Array | 'tooLarge' | 'damaged' {
  const parts: Uint8Array[] = [];
  let size = 0;
  let isDone = false;
  const stream = new Inflate((part, isFinal) => {
    parts.push(part);
    size += part.length;
    isDone ||= isFinal;
  });
  try {
    for (let at = 0; at < packed.length && size <= most_bytes; at += PORTION_bytes)
      stream.push(packed.subarray(at, at + PORTION_bytes), at + PORTION_bytes >= packed.length);
  } catch {
    return 'damaged';
  }
  if (size > most_bytes) return 'tooLarge';
  return isDone ? Buffer.concat(parts, size) : 'damaged';
}

function megabytes(bytes: number): string {
  return bytes < 100_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
}

function refuse(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
