type Entry = Readonly<{ tag: number; type: 2 | 3 | 4 | 12; values: readonly number[] }>;
type Layout = Readonly<{
  entries: readonly Entry[];
  /** Blocks of pixels; `offsetsTag` of the entries is filled with where each came to lie (0: left out, a sparse block). */
  blocks: readonly (Uint8Array | null)[];
  offsetsTag: 273 | 324;
  countsTag: 279 | 325;
  bigEndian?: boolean;
}>;

const SIZE = { 2: 1, 3: 2, 4: 4, 12: 8 } as const;

/**
 * A classic TIFF laid out byte by byte from TIFF Revision 6.0 (header, one directory of 12-byte entries in tag order, values
 * too long for their entry after it, then the pixels): a file no library of ours wrote.
 */
export function tiffBytes({ entries, blocks, offsetsTag, countsTag, bigEndian = false }: Layout): Uint8Array {
  const offsets: Entry = { tag: offsetsTag, type: 4, values: blocks.map(() => 0) };
  const counts: Entry = { tag: countsTag, type: 4, values: blocks.map(block => block?.length ?? 0) };
  const all = [...entries, offsets, counts].sort((a, b) => a.tag - b.tag);
  const directoryAt = 8;
  let free = directoryAt + 2 + all.length * 12 + 4;
  const placed = all.map(entry => {
    const bytes = SIZE[entry.type] * entry.values.length;
    const at = bytes <= 4 ? null : free;
    if (at !== null) free += bytes + (bytes & 1);
    return { entry, at };
  });
  const blockAt = blocks.map(block => {
    if (block === null) return 0;
    const at = free;
    free += block.length + (block.length & 1);
    return at;
  });
  const bytes = new Uint8Array(free);
  const view = new DataView(bytes.buffer);
  const little = !bigEndian;
  const put = (type: Entry['type'], at: number, value: number) => {
    if (type === 2) view.setUint8(at, value);
    else if (type === 3) view.setUint16(at, value, little);
    else if (type === 4) view.setUint32(at, value, little);
    else view.setFloat64(at, value, little);
  };
  bytes.set(bigEndian ? [0x4d, 0x4d] : [0x49, 0x49]);
  put(3, 2, 42);
  put(4, 4, directoryAt);
  put(3, directoryAt, all.length);
  placed.forEach(({ entry, at }, k) => {
    const where = directoryAt + 2 + k * 12;
    const values = entry.tag === offsetsTag ? blockAt : entry.values;
    put(3, where, entry.tag);
    put(3, where + 2, entry.type);
    put(4, where + 4, values.length);
    if (at !== null) put(4, where + 8, at);
    values.forEach((value, i) => {
      put(entry.type, (at ?? where + 8) + i * SIZE[entry.type], value);
    });
  });
  blocks.forEach((block, k) => {
    if (block !== null) bytes.set(block, blockAt[k]!);
  });
  return bytes;
}

const ascii = (text: string): number[] => [...Buffer.from(`${text}\0`, 'latin1')];

type Raster = Readonly<{
  width: number;
  height: number;
  values: readonly number[];
  /** GeoKeys as (key, value) of short keys. */
  keys: readonly (readonly [key: number, value: number])[];
  placing: readonly Entry[];
  noData?: string;
  compression?: number;
  pack?: (bytes: Uint8Array) => Uint8Array;
  bigEndian?: boolean;
}>;

/** A raster of 32-bit floats in one strip. */
export function rasterBytes({
  width,
  height,
  values,
  keys,
  placing,
  noData,
  compression = 1,
  pack = bytes => bytes,
  bigEndian = false,
}: Raster): Uint8Array {
  const pixels = new Uint8Array(width * height * 4);
  const view = new DataView(pixels.buffer);
  values.forEach((value, k) => {
    view.setFloat32(k * 4, value, !bigEndian);
  });
  return tiffBytes({
    entries: [
      { tag: 256, type: 4, values: [width] },
      { tag: 257, type: 4, values: [height] },
      { tag: 258, type: 3, values: [32] },
      { tag: 259, type: 3, values: [compression] },
      { tag: 262, type: 3, values: [1] },
      { tag: 277, type: 3, values: [1] },
      { tag: 278, type: 4, values: [height] },
      { tag: 339, type: 3, values: [3] },
      ...placing,
      geoKeys(keys),
      ...(noData === undefined ? [] : [{ tag: 42113, type: 2 as const, values: ascii(noData) }]),
    ],
    blocks: [pack(pixels)],
    offsetsTag: 273,
    countsTag: 279,
    bigEndian,
  });
}

/** Tag 34735: version 1.1.1 and short keys, in order. */
export function geoKeys(keys: readonly (readonly [key: number, value: number])[]): Entry {
  const sorted = [...keys].sort((a, b) => a[0] - b[0]);
  return {
    tag: 34735,
    type: 3,
    values: [1, 1, 1, keys.length, ...sorted.flatMap(([key, value]) => [key, 0, 1, value])],
  };
}

export const scaleAndTie = (
  sx: number,
  sy: number,
  [x, y]: readonly [number, number],
  [i, j]: readonly [number, number] = [0, 0],
): Entry[] => [
  { tag: 33550, type: 12, values: [sx, sy, 0] },
  { tag: 33922, type: 12, values: [i, j, 0, x, y, 0] },
];
