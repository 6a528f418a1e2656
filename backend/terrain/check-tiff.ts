import type { FileHandle } from 'node:fs/promises';
import type { Result } from '../../core/units/result.ts';

/** Directories looked at: an elevation model has one, and perhaps overviews and a mask. */
const MOST_DIRECTORIES = 64;
const MOST_TAGS = 200;
/** Side of a raster; a country at 1 m stays under it. */
const LARGEST_SIDE = 2_000_000;
/** One tile or strip, unpacked: GDAL's are up to some megabytes. */
export const LARGEST_BLOCK_BYTES = 64_000_000;
/** Values of one tag: the offsets of a large model's tiles. */
const MOST_VALUES = 20_000_000;

const SIZE_BYTES: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
  16: 8,
  17: 8,
  18: 8,
};

const WIDTH = 256;
const LENGTH = 257;
const BITS = 258;
const SAMPLES = 277;
const ROWS_PER_STRIP = 278;
const TILE_WIDTH = 322;
const TILE_LENGTH = 323;
const COMPRESSION = 259;
const STRIP_OFFSETS = 273;
const STRIP_COUNTS = 279;
const TILE_OFFSETS = 324;
const TILE_COUNTS = 325;

const COMPRESSIONS: Readonly<Record<number, string>> = {
  2: 'fax',
  3: 'fax',
  4: 'fax',
  6: 'JPEG',
  7: 'JPEG',
  32773: 'PackBits',
  34712: 'JPEG 2000',
  34887: 'LERC',
  50001: 'WebP',
  50002: 'JPEG XL',
};
const READ_COMPRESSIONS = new Set([1, 5, 8, 32946, 50000]);

/**
 * Looks over the skeleton of a TIFF before anything in it is believed: every table must lie in the file, and no number in it may
 * make a reader ask for more memory than the file deserves.
 * @returns true, or one problem with path `file`
 */
export async function checkTiff(file: FileHandle, size: number): Promise<Result<true>> {
  const head = await bytesAt(file, 0, 16);
  if (head.length < 8) return refused('is too short to be a TIFF');
  const order = head.toString('latin1', 0, 2);
  if (order !== 'II' && order !== 'MM') return refused('is no TIFF: it does not begin like one');
  const little = order === 'II';
  const read = reader(little);
  const magic = read.u16(head, 0 + 2);
  if (magic !== 42 && magic !== 43) return refused('is no TIFF: it does not begin like one');
  const big = magic === 43;
  if (big && head.length < 16) return refused('is too short to be a TIFF');
  let next = big ? read.u64(head, 8) : read.u32(head, 4);
  const seen = new Set<number>();
  let first = true;
  while (next !== 0) {
    if (seen.has(next) || seen.size >= MOST_DIRECTORIES)
      return refused('is damaged: its directories go on without end');
    seen.add(next);
    const directory = await readDirectory(file, size, next, big, read);
    if (!directory.ok) return directory;
    const fault = directoryFault(directory.value.values, first);
    if (fault !== undefined) return refused(fault);
    const missing = first && (await blocksMissing(file, size, directory.value.tables, read));
    if (missing) return refused('is cut off or damaged: some of its pixels lie beyond its end');
    first = false;
    next = directory.value.next;
  }
  return first ? refused('is damaged: it holds no picture') : { ok: true, value: true };
}

type Reader = Readonly<{
  u16(bytes: Buffer, at: number): number;
  u32(bytes: Buffer, at: number): number;
  u64(bytes: Buffer, at: number): number;
}>;

function reader(little: boolean): Reader {
  return {
    u16: (bytes, at) => (little ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at)),
    u32: (bytes, at) => (little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at)),
    u64: (bytes, at) => Number(little ? bytes.readBigUInt64LE(at) : bytes.readBigUInt64BE(at)),
  };
}

async function bytesAt(file: FileHandle, at: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, at);
  return buffer.subarray(0, bytesRead);
}

/** Where the values of one tag stand. */
type Table = Readonly<{ type: number; count: number; offset: number; inPlace: Buffer | null }>;
type Directory = Readonly<{
  /** First value of each tag that is a whole number. */
  values: ReadonlyMap<number, number>;
  tables: ReadonlyMap<number, Table>;
  next: number;
}>;

/** Whether a block of pixels lies outside the file: the reading library would give zeros for it. */
async function blocksMissing(
  file: FileHandle,
  size: number,
  tables: ReadonlyMap<number, Table>,
  read: Reader,
): Promise<boolean> {
  const list = async (tag: number) => {
    const table = tables.get(tag);
    return table === undefined ? new Float64Array(0) : wholeNumbers(file, table, read);
  };
  const tiled = tables.has(TILE_OFFSETS);
  const offsets = await list(tiled ? TILE_OFFSETS : STRIP_OFFSETS);
  const counts = await list(tiled ? TILE_COUNTS : STRIP_COUNTS);
  if (offsets.length === 0 || offsets.length !== counts.length) return true;
  // A block of no bytes was left out on purpose: it holds no data.
  return counts.some((count, k) => count > 0 && (count > LARGEST_BLOCK_BYTES || offsets[k]! + count > size));
}

async function wholeNumbers(
  file: FileHandle,
  { type, count, offset, inPlace }: Table,
  read: Reader,
): Promise<Float64Array> {
  const width = SIZE_BYTES[type] ?? 1;
  const bytes = inPlace ?? (await bytesAt(file, offset, width * count));
  const numbers = new Float64Array(Math.min(count, Math.floor(bytes.length / width)));
  for (let k = 0; k < numbers.length; k++)
    numbers[k] = width === 2 ? read.u16(bytes, k * 2) : width === 8 ? read.u64(bytes, k * 8) : read.u32(bytes, k * 4);
  return numbers;
}

async function readDirectory(
  file: FileHandle,
  size: number,
  at: number,
  big: boolean,
  read: Reader,
): Promise<Result<Directory>> {
  const [countBytes, entryBytes, pointerBytes] = big ? [8, 20, 8] : [2, 12, 4];
  const cut = refused('is cut off or damaged: a part of it lies beyond its end');
  const head = await bytesAt(file, at, countBytes);
  if (head.length < countBytes) return cut;
  const count = big ? read.u64(head, 0) : read.u16(head, 0);
  if (count === 0 || count > MOST_TAGS) return refused(`is damaged: a directory of ${count} entries`);
  const table = await bytesAt(file, at + countBytes, count * entryBytes + pointerBytes);
  if (table.length < count * entryBytes + pointerBytes) return cut;
  const values = new Map<number, number>();
  const tables = new Map<number, Table>();
  for (let k = 0; k < count; k++) {
    const entry = k * entryBytes;
    const tag = read.u16(table, entry);
    const type = read.u16(table, entry + 2);
    const number = big ? read.u64(table, entry + 4) : read.u32(table, entry + 4);
    const valueAt = entry + (big ? 12 : 8);
    const bytes = (SIZE_BYTES[type] ?? 1) * number;
    if (number > MOST_VALUES) return refused(`is damaged: tag ${tag} claims ${number} values`);
    const inPlace = bytes <= pointerBytes;
    const offset = big ? read.u64(table, valueAt) : read.u32(table, valueAt);
    if (!inPlace && offset + bytes > size) return cut;
    if (type === 3 || type === 4 || type === 16)
      tables.set(tag, {
        type,
        count: number,
        offset,
        inPlace: inPlace ? table.subarray(valueAt, valueAt + bytes) : null,
      });
    if (type !== 3 && type !== 4) continue;
    const source = inPlace ? table : await bytesAt(file, offset, 4);
    const where = inPlace ? valueAt : 0;
    if (source.length >= where + 4) values.set(tag, type === 3 ? read.u16(source, where) : read.u32(source, where));
  }
  const nextAt = count * entryBytes;
  return { ok: true, value: { values, tables, next: big ? read.u64(table, nextAt) : read.u32(table, nextAt) } };
}

function directoryFault(values: ReadonlyMap<number, number>, isFirst: boolean): string | undefined {
  const width = values.get(WIDTH) ?? 0;
  const length = values.get(LENGTH) ?? 0;
  if (width < 1 || length < 1) return isFirst ? 'is damaged: it holds no picture' : undefined;
  if (width > LARGEST_SIDE || length > LARGEST_SIDE)
    return `is ${width} × ${length} pixels, more than we read: cut out the part round the course`;
  const compression = values.get(COMPRESSION) ?? 1;
  if (isFirst && !READ_COMPRESSIONS.has(compression))
    return `is packed with ${COMPRESSIONS[compression] ?? `method ${compression}`}, which loses heights or which we do not read: save it with Deflate or LZW`;
  const bits = values.get(BITS) ?? 1;
  const samples = values.get(SAMPLES) ?? 1;
  if (bits > 64 || samples > 64) return `is damaged: ${samples} values of ${bits} bits a pixel`;
  const tiled = values.has(TILE_WIDTH);
  const blockWidth = tiled ? values.get(TILE_WIDTH)! : width;
  const blockLength = tiled ? (values.get(TILE_LENGTH) ?? 0) : Math.min(length, values.get(ROWS_PER_STRIP) ?? length);
  if (blockWidth < 1 || blockLength < 1) return 'is damaged: its tiles have no size';
  if ((blockWidth * blockLength * samples * bits) / 8 > LARGEST_BLOCK_BYTES)
    return 'keeps its pixels in blocks too large to read: save it tiled (256 × 256)';
  return undefined;
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'file', message }] };
}
