import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { oneAtATime } from '../../start/one-at-a-time.ts';

describe('one at a time', () => {
  let folder: string;
  let lock: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'roundwright-lock-'));
    lock = join(folder, 'deep', 'page.lock');
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('never lets two work at once, and lets all work', async () => {
    let working = 0;
    let most = 0;
    const work = async () => {
      most = Math.max(most, ++working);
      await setTimeout(5);
      working--;
      return 'done';
    };
    const all = await Promise.all(Array.from({ length: 5 }, () => oneAtATime(lock, work)));
    expect(all).toEqual(Array(5).fill('done'));
    expect(most).toBe(1);
    expect(existsSync(lock)).toBe(false);
  });

  it('lets go when the work fails', async () => {
    await expect(oneAtATime(lock, () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(existsSync(lock)).toBe(false);
  });

  it('does not wait for a process that is gone', async () => {
    const gone = execFileSync(process.execPath, ['-p', 'process.pid'], { encoding: 'utf8' }).trim();
    writeFileSync(lock, gone);
    expect(await oneAtATime(lock, async () => 'done')).toBe('done');
  });
});
