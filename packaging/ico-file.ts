/** A square picture as PNG. */
export type Picture = Readonly<{ side: number; png: Uint8Array }>;

const HEADER_BYTES = 6;
const ENTRY_BYTES = 16;

/**
 * An icon file for Windows, its pictures kept as PNG.
 * @throws {RangeError} for a side beyond 256, which the format cannot say
 * @source Microsoft, "ICO" (ICONDIR and ICONDIRENTRY); PNG entries since Windows Vista
 */
export function icoFile(pictures: readonly Picture[]): Buffer {
  const header = Buffer.alloc(HEADER_BYTES + ENTRY_BYTES * pictures.length);
  header.writeUInt16LE(1, 2);
  header.writeUInt16LE(pictures.length, 4);
  let at = header.length;
  pictures.forEach(({ side, png }, k) => {
    if (!(side >= 1 && side <= 256)) throw new RangeError(`side must be 1 to 256, got ${side}`);
    const entry = HEADER_BYTES + ENTRY_BYTES * k;
    // 0 stands for 256.
    header.writeUInt8(side % 256, entry);
    header.writeUInt8(side % 256, entry + 1);
    header.writeUInt16LE(1, entry + 4);
    header.writeUInt16LE(32, entry + 6);
    header.writeUInt32LE(png.length, entry + 8);
    header.writeUInt32LE(at, entry + 12);
    at += png.length;
  });
  return Buffer.concat([header, ...pictures.map(({ png }) => png)]);
}
