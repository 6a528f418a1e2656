const CLEAR = 256;
const END = 257;
const MOST_CODES = 4096;

/**
 * Unpacks LZW as TIFF writes it: most significant bit first, codes of 9 to 12 bits, widths growing one code early.
 * @throws {RangeError} when a code stands for nothing, or more than `most` bytes would come out
 * @source TIFF Revision 6.0 (Aldus, 1992), section 13
 */
export function unpackLzw(packed: Uint8Array, most: number): Uint8Array {
  // Each code is an earlier code and one byte more; where it was first written out says the same without a chain.
  const start = new Int32Array(MOST_CODES);
  const length = new Int32Array(MOST_CODES);
  let out = new Uint8Array(Math.min(most, Math.max(1024, packed.length * 4)));
  let size = 0;
  let [bits, held] = [0, 0];
  let at = 0;
  let width = 9;
  let next = END + 1;
  let before = -1;
  const room = (more: number) => {
    if (size + more > most) throw new RangeError(`unpacked LZW block is larger than ${most} bytes`);
    if (size + more <= out.length) return;
    const larger = new Uint8Array(Math.min(most, Math.max(size + more, out.length * 2)));
    larger.set(out.subarray(0, size));
    out = larger;
  };
  for (;;) {
    while (bits < width) {
      // Some writers leave out the end code.
      if (at >= packed.length) return out.subarray(0, size);
      held = ((held << 8) | packed[at++]!) & 0xffffff;
      bits += 8;
    }
    bits -= width;
    const code = (held >> bits) & ((1 << width) - 1);
    if (code === END) return out.subarray(0, size);
    if (code === CLEAR) {
      [width, next, before] = [9, END + 1, -1];
      continue;
    }
    const from = size;
    if (code < CLEAR) {
      room(1);
      out[size++] = code;
    } else if (code < next) {
      room(length[code]!);
      out.copyWithin(size, start[code]!, start[code]! + length[code]!);
      size += length[code]!;
    } else if (code === next && before >= 0) {
      const copied = sizeOf(before);
      room(copied + 1);
      out.copyWithin(size, from - copied, from);
      size += copied;
      out[size++] = out[from]!;
    } else throw new RangeError(`LZW code ${code} stands for nothing`);
    if (before >= 0 && next < MOST_CODES) {
      const copied = sizeOf(before);
      start[next] = from - copied;
      length[next] = copied + 1;
      next++;
      if (next + 1 === 1 << width && width < 12) width++;
    }
    before = code;
  }

  function sizeOf(code: number): number {
    return code < CLEAR ? 1 : length[code]!;
  }
}
