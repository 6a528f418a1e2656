import type { Picture } from './ico-file.ts';

/** Types that hold PNG, with the side of their picture. @source Apple, IconServices types as `iconutil` writes them */
const TYPES: readonly (readonly [type: string, side: number])[] = [
  ['icp4', 16],
  ['icp5', 32],
  ['ic11', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic08', 256],
  ['ic13', 256],
  ['ic09', 512],
  ['ic14', 512],
  ['ic10', 1024],
];
export const ICNS_SIDES: readonly number[] = [...new Set(TYPES.map(([, side]) => side))];

/**
 * An icon file for macOS.
 * @throws {RangeError} when a picture of a needed side is missing
 */
export function icnsFile(pictures: readonly Picture[]): Buffer {
  const parts = TYPES.map(([type, side]) => {
    const picture = pictures.find(picture => picture.side === side);
    if (picture === undefined) throw new RangeError(`there must be a picture of side ${side}`);
    return block(type, picture.png);
  });
  return block('icns', Buffer.concat(parts));
}

/** Four letters, the length with these eight bytes, the content. */
function block(type: string, content: Uint8Array): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 0, 'latin1');
  head.writeUInt32BE(content.length + 8, 4);
  return Buffer.concat([head, content]);
}
