import { describe, expect, it } from 'vitest';
import { type CourseShare, isSharePage, readSharePage, sharePage } from '../../../backend/share/share-file.ts';
import { addTinyRound, openTestBackend } from '../api/open-test-backend.ts';
import { fileWith, runLine } from '../command-line/run-line.ts';
import { taken } from '../taken.ts';
import { modelFile } from '../terrain/model-file.ts';

const UNITS = { length: 'm', speed: 'mps' } as const;
const page = '<!DOCTYPE html>\n<html lang="en"><body><h1>Sheet</h1></body></html>';
const share = (course: string): CourseShare => ({
  schema: 'roundwright/course-share@1',
  name: 'Tiny Links',
  course,
  notes: [],
});

describe('a course sharing page', () => {
  it('carries any text, and nothing in it becomes markup', () => {
    const nasty = '{"name":"</script><script>alert(1)</script><!-- \u2028 ]]> & \' \\" é 🙂"}';
    const html = sharePage(page, share(nasty));
    expect(taken(readSharePage(html)).course).toBe(nasty);
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html.match(/<\/script>/g)).toHaveLength(1);
    expect(html.indexOf('</body>')).toBeGreaterThan(html.indexOf('</script>'));
  });

  it.each<readonly [string, string, RegExp]>([
    ['cut off', sharePage(page, share('{}')).slice(0, 200), /cut off/],
    ['spoilt', sharePage(page, share('{}')).replace('"schema"', '"schema'), /damaged/],
    ['of another kind', sharePage(page, share('{}')).replace('course-share@1', 'course-share@9'), /./],
    ['without a course', page, /no course/],
  ])('%s is refused', (_, text, want) => {
    const read = readSharePage(text);
    expect(read.ok ? '' : read.problems[0]!.message).toMatch(want);
  });

  it('is told from other pages', () => {
    expect(isSharePage(page)).toBe(false);
    expect(isSharePage(sharePage(page, share('{}')))).toBe(true);
  });
});

describe('handing a course on', () => {
  it('with its ground and notes, into another library, and out of it again the same', async () => {
    const first = openTestBackend();
    const { courseId } = await addTinyRound(first);
    await first.ask('setNote', { courseId, ref: '2', text: 'Mind the <path> & its walkers' });
    const terrain = modelFile({
      code: 32635,
      lon_deg: 25.0007,
      lat_deg: 60.0009,
      pixel: 5,
      side: 201,
      height: dx => 20 + 0.03 * dx,
    });
    await first.ask('addTerrain', { courseId, terrain });
    const { fileName, text } = await first.ask('shareCourse', { courseId, ...UNITS });
    expect(fileName).toBe('tiny-links-course.html');
    expect(text).toContain('2 holes, par 6, 160 m along the lines of play');
    expect(text).toContain('Mind the &lt;path&gt; &amp; its walkers');

    const second = openTestBackend();
    const data = Buffer.from(text).toString('base64');
    const added = await second.ask('importCourse', { fileName, data });
    const course = await second.ask('getCourse', { courseId: added.courseId });
    expect(course.name).toBe('Tiny Links');
    const original = await first.ask('exportCourse', { courseId });
    expect((await second.ask('exportCourse', { courseId: added.courseId })).text).toBe(original.text);
    expect(await second.ask('getTerrain', { courseId: added.courseId })).toEqual(
      await first.ask('getTerrain', { courseId }),
    );
    expect(await second.ask('listNotes', { courseId: added.courseId })).toMatchObject([
      { ref: '2', text: 'Mind the <path> & its walkers' },
    ]);
    await second.ask('undo', { changeId: added.undo.changeId });
    expect((await second.ask('listCourses', {})).map(({ courseId }) => courseId)).not.toContain(added.courseId);
  });

  it('the command line reads the page like a course file', async () => {
    const { ask } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    const { text } = await ask('shareCourse', { courseId, ...UNITS });
    const { code, out } = await runLine(['check', fileWith('shared.html', text)]);
    expect(code).toBe(0);
    expect(out).toContain('ok, "Tiny Links"');
  });

  it('a plan of another course is refused', async () => {
    const { ask, refused } = openTestBackend();
    const { courseId } = await addTinyRound({ ask });
    const planId = '00000000-0000-4000-8000-000000000000';
    expect(await refused('shareCourse', { courseId, planId, ...UNITS })).toMatchObject([{ path: 'planId' }]);
  });
});
