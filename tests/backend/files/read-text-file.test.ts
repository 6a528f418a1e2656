import { truncateSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTextFile } from '../../../backend/files/read-text-file.ts';
import { fileWith, temporaryFolder } from '../command-line/run-line.ts';

const messageOf = (path: string): string => {
  const result = readTextFile(path);
  if (result.ok) throw new Error('it was read');
  expect(result.problems).toHaveLength(1);
  expect(result.problems[0]!.path).toBe('file');
  return result.problems[0]!.message;
};

describe('readTextFile', () => {
  it('gives the text back, with its byte order mark', () => {
    expect(readTextFile(fileWith('a.json', '\uFEFF{"é": 1}'))).toEqual({ ok: true, value: '\uFEFF{"é": 1}' });
  });

  it.each([
    { name: 'a missing file', path: () => `${temporaryFolder()}/none.json`, says: 'no such file' },
    { name: 'a path through a file', path: () => `${fileWith('a.json', '{}')}/b.json`, says: 'not a folder' },
    { name: 'a directory', path: () => temporaryFolder(), says: 'is a directory' },
    { name: 'UTF-16', path: () => fileWith('a.json', Buffer.from('\uFEFF{}', 'utf16le')), says: 'save it as UTF-8' },
    { name: 'Latin-1', path: () => fileWith('a.json', Uint8Array.of(0x7b, 0xe9, 0x7d)), says: 'not UTF-8' },
  ])('$name: says "$says"', ({ path, says }) => {
    expect(messageOf(path())).toContain(says);
  });

  it('refuses more than 50 MB without reading it', () => {
    const path = fileWith('large.json', '');
    truncateSync(path, 50_000_001); // sparse: takes no room
    expect(messageOf(path)).toContain('50 MB');
  });
});
