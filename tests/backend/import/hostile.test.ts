import { spawnSync } from 'node:child_process';
import { truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readCourseBytes } from '../../../backend/files/read-course-bytes.ts';
import { importedCourse } from '../../../backend/library/imported-course.ts';
import { openTestBackend } from '../api/open-test-backend.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { HOSTILE_FILES } from './hostile-files.ts';

/** The bounds of the project: 2 s and 300 MB for any file. Processor time, as other tests may run beside. */
const MOST_ms = 2000;
const MOST_MB = 300;
const IMPORT_ONE = join(import.meta.dirname, 'import-one.ts');
/** The heaviest of each kind, in a process of their own. */
const HEAVIEST = [
  ...[
    'a bomb that lies',
    'one text without end',
    'a track without end',
    'more nodes than a town',
    'rings within rings',
  ],
  ...['large and broken at its end', 'twenty thousand tees', 'a wood of a quarter million corners'],
];

describe('every hostile file ends in a clear message', () => {
  it.each(HOSTILE_FILES)('$name', ({ bytes, says }) => {
    const file = bytes();
    const before = process.cpuUsage();
    const answer = importedCourse(file, 'hostile', { roles: [] });
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(MOST_ms);
    if (answer.ok) throw new Error('it was taken');
    expect(answer.problems.map(({ path, message }) => `${path} ${message}`).join('\n')).toMatch(says);
    for (const { path, message } of answer.problems) {
      expect(path).not.toBe('');
      expect(message.length).toBeLessThan(500);
    }
    expect(answer.problems.length).toBeLessThan(100);
  });
});

describe('in a process of its own', () => {
  it.each(HEAVIEST)('%s: within 300 MB, with a small heap', name => {
    const file = join(temporaryFolder(), 'hostile');
    writeFileSync(file, HOSTILE_FILES.find(hostile => hostile.name === name)!.bytes());
    const run = spawnSync(process.execPath, ['--max-old-space-size=256', IMPORT_ONE, file], {
      encoding: 'utf8',
      timeout: 60_000,
    });
    expect(run.stderr).not.toContain('out of memory');
    const { ok, peak_MB } = JSON.parse(run.stdout) as { ok: boolean; peak_MB: number };
    expect(ok).toBe(false);
    expect(peak_MB).toBeLessThan(MOST_MB);
  });

  it('200 MB: refused by its size, not a byte of it read', () => {
    const file = join(temporaryFolder(), 'large.osm');
    writeFileSync(file, '');
    truncateSync(file, 200_000_000);
    const before = process.memoryUsage().rss;
    expect(readCourseBytes(file)).toMatchObject({
      ok: false,
      problems: [{ path: 'file', message: expect.stringContaining('is 200 MB') as unknown }],
    });
    expect(process.memoryUsage().rss - before).toBeLessThan(20e6);
  });
});

describe('nothing is imported', () => {
  it('whatever is handed in', async () => {
    const { backend, ask, faults } = openTestBackend();
    const [courses, changes] = [await ask('listCourses', {}), await ask('listChanges', {})];
    for (const { name, bytes } of HOSTILE_FILES) {
      const file = bytes();
      // The large ones are refused above; here it is the way in that is tested.
      if (file.length > 1_500_000) continue;
      const input = { fileName: 'x', data: Buffer.from(file).toString('base64'), choices: { roles: [] } };
      for (const method of ['importCourse', 'previewCourse'] as const)
        expect(await backend.call(method, input), `${name}, ${method}`).toMatchObject({ ok: false });
      const read = await backend.call('readCourseFile', input);
      if (read.ok) expect(read.value).toMatchObject({ report: { ok: false }, map: null });
    }
    expect(await ask('listCourses', {})).toEqual(courses);
    expect(await ask('listChanges', {})).toEqual(changes);
    expect(faults).toEqual([]);
  }, 120_000);
});
