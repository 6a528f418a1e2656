import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkCanWrite, writeFileWhole } from '../../../backend/files/write-file-whole.ts';
import { temporaryFolder } from '../command-line/run-line.ts';

describe('writing a file whole', () => {
  it('writes a new file and replaces one, leaving nothing beside it', async () => {
    const folder = temporaryFolder();
    const path = join(folder, 'a.html');
    expect(await writeFileWhole(path, 'one')).toEqual({ ok: true, value: path });
    expect(await writeFileWhole(path, Uint8Array.of(1, 2))).toEqual({ ok: true, value: path });
    expect([...readFileSync(path)]).toEqual([1, 2]);
    expect(readdirSync(folder)).toEqual(['a.html']);
  });

  it('writes through a link and leaves the link', async () => {
    const folder = temporaryFolder();
    const [target, link] = [join(folder, 'target.html'), join(folder, 'link.html')];
    writeFileSync(target, 'old');
    symlinkSync(target, link);
    await writeFileWhole(link, 'new');
    expect(readFileSync(target, 'utf8')).toBe('new');
    expect(readFileSync(link, 'utf8')).toBe('new');
    expect(readdirSync(folder).sort()).toEqual(['link.html', 'target.html']);
  });

  it('keeps the old file and leaves nothing when it cannot', async () => {
    const folder = temporaryFolder();
    const path = join(folder, 'taken.html');
    mkdirSync(path);
    writeFileSync(join(path, 'inside'), 'x');
    const result = await writeFileWhole(path, 'new');
    expect(result).toMatchObject({
      ok: false,
      problems: [{ path: 'file', message: expect.stringContaining('folder') }],
    });
    expect(readdirSync(folder)).toEqual(['taken.html']);
    expect(statSync(path).isDirectory()).toBe(true);
  });

  it.each([
    { name: 'no folder', of: (folder: string) => join(folder, 'none', 'a.html'), says: 'its folder is not there' },
    { name: 'a file for a folder', of: (folder: string) => join(folder, 'plain', 'a.html'), says: 'a file' },
    { name: 'a folder', of: (folder: string) => folder, says: 'is a folder' },
  ])('$name: says "$says" beforehand', async ({ of, says }) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'plain'), '');
    const asked = await checkCanWrite(of(folder));
    expect(asked).toMatchObject({ ok: false, problems: [{ path: 'file', message: expect.stringContaining(says) }] });
    expect(readdirSync(folder)).toEqual(['plain']);
  });

  // root may write anywhere
  it.runIf(process.getuid?.() !== 0)('a folder closed to writing is said beforehand', async () => {
    const folder = temporaryFolder();
    chmodSync(folder, 0o500);
    expect(await checkCanWrite(join(folder, 'a.html'))).toMatchObject({
      ok: false,
      problems: [{ message: expect.stringContaining('may not be written') }],
    });
  });
});
