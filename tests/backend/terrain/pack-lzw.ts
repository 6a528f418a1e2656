/** LZW as TIFF Revision 6.0, section 13, tells an encoder to write it: most significant bit first, widths growing one code early. */
export function packLzw(bytes: Uint8Array): Uint8Array {
  const out: number[] = [];
  let [held, bits] = [0, 0];
  const put = (code: number, width: number) => {
    held = (held << width) | code;
    bits += width;
    while (bits >= 8) {
      bits -= 8;
      out.push((held >> bits) & 255);
      held &= (1 << bits) - 1;
    }
  };
  let table = new Map<string, number>();
  let [next, width] = [258, 9];
  put(256, 9);
  let omega = '';
  const codeOf = (text: string) => (text.length === 1 ? text.charCodeAt(0) : table.get(text)!);
  for (const byte of bytes) {
    const longer = omega + String.fromCharCode(byte);
    if (longer.length === 1 || table.has(longer)) {
      omega = longer;
      continue;
    }
    put(codeOf(omega), width);
    table.set(longer, next++);
    if (next === 512) width = 10;
    else if (next === 1024) width = 11;
    else if (next === 2048) width = 12;
    omega = String.fromCharCode(byte);
    if (next === 4095) {
      put(256, width);
      table = new Map();
      [next, width] = [258, 9];
    }
  }
  if (omega !== '') put(codeOf(omega), width);
  put(257, width);
  if (bits > 0) out.push((held << (8 - bits)) & 255);
  return Uint8Array.from(out);
}
