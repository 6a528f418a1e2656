import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isStale } from '../../start/stale.ts';

describe('stale', () => {
  let folder: string;
  let sources: string[];
  let outputs: string[];
  const touch = (name: string, at_s: number) => utimesSync(join(folder, name), at_s, at_s);

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'roundwright-stale-'));
    mkdirSync(join(folder, 'source', 'deep'), { recursive: true });
    for (const name of ['source/deep/a.ts', 'lock.json', 'out.html', 'out.js']) writeFileSync(join(folder, name), '');
    for (const name of ['source/deep/a.ts', 'source/deep', 'source', 'lock.json']) touch(name, 1000);
    for (const name of ['out.html', 'out.js']) touch(name, 2000);
    sources = [join(folder, 'source'), join(folder, 'lock.json')];
    outputs = [join(folder, 'out.html'), join(folder, 'out.js')];
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is not what is newer than its sources', () => expect(isStale(sources, outputs)).toBe(false));

  it('is what has a newer file deep among its sources', () => {
    touch('source/deep/a.ts', 2001);
    expect(isStale(sources, outputs)).toBe(true);
  });

  it('is what lost a source: its folder is newer', () => {
    rmSync(join(folder, 'source', 'deep', 'a.ts'));
    expect(isStale(sources, outputs)).toBe(true);
  });

  it('goes by the oldest output', () => {
    touch('source/deep/a.ts', 1500);
    touch('out.js', 1400);
    expect(isStale(sources, outputs)).toBe(true);
  });

  it('is what misses an output', () => {
    rmSync(join(folder, 'out.js'));
    expect(isStale(sources, outputs)).toBe(true);
  });

  it('passes over a source that does not exist', () =>
    expect(isStale([...sources, join(folder, 'none')], outputs)).toBe(false));
});
