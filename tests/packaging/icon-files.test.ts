import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { icnsFile } from '../../packaging/icns-file.ts';
import { icoFile } from '../../packaging/ico-file.ts';

const icon = (name: string) => readFileSync(new URL(`../../packaging/icons/${name}`, import.meta.url));
/** Width and height of a PNG. @source PNG (W3C, third edition), 11.2.1: IHDR begins at byte 16 */
const sizeOf = (png: Buffer) => [png.readUInt32BE(16), png.readUInt32BE(20)];
const isPng = (png: Buffer) => png.subarray(1, 4).toString('latin1') === 'PNG';

describe('icons in the project', () => {
  it.each([16, 32, 48, 64, 128, 256, 512, 1024])('%d pixels', side => {
    const png = icon(`${side}x${side}.png`);
    expect(isPng(png)).toBe(true);
    expect(sizeOf(png)).toEqual([side, side]);
  });

  // Microsoft's ICONDIR: type 1, count, then 16 bytes an entry with size and place of its picture; 0 stands for 256.
  it('icon.ico leads to a PNG of each size it names', () => {
    const file = icon('icon.ico');
    expect([file.readUInt16LE(0), file.readUInt16LE(2)]).toEqual([0, 1]);
    const sides = Array.from({ length: file.readUInt16LE(4) }, (_, k) => {
      const entry = 6 + 16 * k;
      const [size, at] = [file.readUInt32LE(entry + 8), file.readUInt32LE(entry + 12)];
      const png = file.subarray(at, at + size);
      const side = file.readUInt8(entry) || 256;
      expect(isPng(png)).toBe(true);
      expect(sizeOf(png)).toEqual([side, side]);
      return side;
    });
    expect(sides).toEqual([16, 24, 32, 48, 64, 128, 256]);
  });

  // Apple's icns: each block is four letters, its length with the eight bytes of both, its content.
  it('icon.icns is a chain of PNGs that ends with the file', () => {
    const file = icon('icon.icns');
    expect(file.toString('latin1', 0, 4)).toBe('icns');
    expect(file.readUInt32BE(4)).toBe(file.length);
    const types: string[] = [];
    let at = 8;
    for (; at < file.length; at += file.readUInt32BE(at + 4)) {
      types.push(file.toString('latin1', at, at + 4));
      expect(isPng(file.subarray(at + 8))).toBe(true);
    }
    expect(at).toBe(file.length);
    expect(types).toContain('ic10');
    expect(types).toContain('ic07');
  });
});

it('a size that an icon file cannot hold, or lacks, is refused', () => {
  expect(() => icoFile([{ side: 512, png: new Uint8Array(4) }])).toThrow(/512/);
  expect(() => icnsFile([{ side: 16, png: new Uint8Array(4) }])).toThrow(/side 32/);
});
