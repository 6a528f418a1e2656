import { crc32, deflateSync } from 'node:zlib';

const SIDE = 256;

/** A PNG of 256 × 256 in one colour with a darker frame and a diagonal from its north-west corner: enough to see how it lies. */
export function tilePicture([r, g, b]: readonly [number, number, number]): Buffer {
  const rows = Buffer.alloc(SIDE * (1 + SIDE * 3));
  for (let y = 0; y < SIDE; y++)
    for (let x = 0; x < SIDE; x++) {
      const isDrawn = x < 3 || y < 3 || (Math.abs(x - y) < 2 && x < 128);
      const at = y * (1 + SIDE * 3) + 1 + x * 3;
      for (const [k, value] of [r, g, b].entries()) rows[at + k] = isDrawn ? value / 2 : value;
    }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(SIDE, 0);
  header.writeUInt32BE(SIDE, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** @source PNG (W3C, third edition), 5.3: length, type, data, CRC-32 of type and data */
function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(data.length, 0);
  ends.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
}
