import { describe, expect, it } from 'vitest';
import { unpackLzw } from '../../../backend/terrain/unpack-lzw.ts';
import { packLzw } from './pack-lzw.ts';

describe('LZW', () => {
  // TIFF Revision 6.0, section 13: the worked example there encodes 7 7 7 8 8 7 7 6 6 as <Clear> 7 258 8 8 258 6 6 <End>.
  it('the worked example of the specification', () => {
    const codes = [256, 7, 258, 8, 8, 258, 6, 6, 257];
    const bits = codes.map(code => code.toString(2).padStart(9, '0')).join('');
    const packed = Uint8Array.from(bits.padEnd(Math.ceil(bits.length / 8) * 8, '0').match(/.{8}/g)!, byte =>
      Number.parseInt(byte, 2),
    );
    expect([...unpackLzw(packed, 100)]).toEqual([7, 7, 7, 8, 8, 7, 7, 6, 6]);
  });

  it.each([
    ['one value', new Uint8Array(100_000).fill(5)],
    ['a ramp', Uint8Array.from({ length: 50_000 }, (_, k) => k & 255)],
    ['little to find', Uint8Array.from({ length: 30_000 }, (_, k) => (k * k * 31 + (k >> 3) * 17) & 255)],
  ])('%s comes back as it was packed, code widths 9 to 12 and table resets included', (_, bytes) => {
    expect(unpackLzw(packLzw(bytes), bytes.length)).toEqual(bytes);
  });

  it('stops at the limit', () => {
    expect(() => unpackLzw(packLzw(new Uint8Array(100_000)), 50_000)).toThrow(/larger than 50000/);
  });

  it('refuses a code that stands for nothing', () => {
    // <Clear> 300
    expect(() => unpackLzw(Uint8Array.of(0x80, 0x4b, 0x00), 100)).toThrow(RangeError);
  });
});
