import { describe, expect, it } from 'vitest';
import { readTableFile } from '../../renderer/fieldwork/read-table-file.ts';

const TEXT = 'disc,note\nmid,naïve ✓\n';
const utf16 = (text: string, isBig: boolean) => {
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, !isBig);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i + 2, text.charCodeAt(i), !isBig);
  return bytes;
};

describe('the text of a table file', () => {
  it.each([
    { name: 'UTF-8', bytes: new TextEncoder().encode(TEXT) },
    { name: 'UTF-8 with its mark', bytes: new TextEncoder().encode(`\ufeff${TEXT}`) },
    { name: 'UTF-16, little end first', bytes: utf16(TEXT, false) },
    { name: 'UTF-16, big end first', bytes: utf16(TEXT, true) },
  ])('$name', async ({ bytes }) => {
    expect(await readTableFile(new File([bytes as Uint8Array<ArrayBuffer>], 't.csv'))).toEqual({
      ok: true,
      value: TEXT,
    });
  });

  it('in another encoding is refused with what to do', async () => {
    const latin1 = new Uint8Array([0x6d, 0x69, 0x64, 0xef, 0x0a]);
    expect(await readTableFile(new File([latin1], 't.csv'))).toEqual({
      ok: false,
      problems: [{ path: 't.csv', message: expect.stringContaining('CSV UTF-8') }],
    });
  });
});
