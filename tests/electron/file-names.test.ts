import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { filesIn } from '../../electron/opened-files.ts';

vi.mock('electron', () => ({ dialog: {}, nativeTheme: {} }));
const { safeName } = await import('../../electron/desktop-handlers.ts');

describe('a name the page offers for saving', () => {
  it.each([
    { name: 'Old Orchard.geojson', want: 'Old Orchard.geojson' },
    { name: '../../.bashrc', want: '.bashrc' },
    { name: '/etc/passwd', want: 'passwd' },
    { name: 'C:\\Windows\\a.json', want: 'a.json' },
    { name: 'Hole 1: up? "down".pdf', want: 'Hole 1- up- -down-.pdf' },
    { name: 'a\u0000b.json', want: 'a-b.json' },
    { name: '..', want: 'roundwright' },
    { name: '/', want: 'roundwright' },
  ])('$name becomes $want', ({ name, want }) => expect(safeName(name)).toBe(want));
});

describe('files on a command line', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'roundwright-words-'));
    for (const name of ['a.geojson', 'b.JSON', 'c.txt']) writeFileSync(join(folder, name), '');
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('are those that exist and have a known ending', () => {
    const words = ['.', '--allow=x.json', 'a.geojson', join(folder, 'b.JSON'), 'c.txt', 'missing.geojson'];
    expect(filesIn(words, folder)).toEqual([join(folder, 'a.geojson'), join(folder, 'b.JSON')]);
  });
});
