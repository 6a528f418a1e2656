import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { Result } from '../../../core/units/result.ts';
import { coursePage } from '../../share/course-page.ts';
import { type CourseShare, sharePage } from '../../share/share-file.ts';
import { GroundFileSchema } from '../../terrain/ground-file.ts';
import type { AppContext } from '../app-context.ts';
import type { Checked, Output } from '../contract/api.ts';
import type { share } from '../contract/share.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';

/** What the sharing page is made with: the handlers that export the course and draw the sheet. */
type Makers = Pick<Handlers, 'exportCourse' | 'renderSheet'>;

export function shareHandlers(app: AppContext, makers: Makers): Pick<Handlers, keyof typeof share> {
  const { tables } = app.store;

  async function page(input: Checked<'shareCourse'>, notes: CourseShare['notes']): Promise<Result<string>> {
    const { courseId, planId, form, length, speed } = input;
    if (planId !== undefined) {
      const plan = app.plans.get(planId);
      if (plan.ok && plan.value.request.courseId !== courseId) return refused('planId', 'is a plan of another course');
      const sheet = await makers.renderSheet({ planId, form, paper: 'a4', length, speed });
      return sheet.ok ? { ok: true, value: sheet.value.html } : sheet;
    }
    const course = app.courses.get(courseId);
    const maps = await app.courses.maps(courseId);
    if (!course.ok) return course;
    if (!maps.ok) return maps;
    const holes = maps.value.map(map => describeHole(map, course.value.notMapped));
    return { ok: true, value: coursePage({ name: course.value.name, holes, notes, units: { length } }) };
  }

  return {
    shareCourse: async (input): Promise<Result<Output<'shareCourse'>>> => {
      const { courseId } = input;
      const course = app.courses.get(courseId);
      const file = await makers.exportCourse({ courseId });
      if (!course.ok) return course;
      if (!file.ok) return file;
      const notes = tables.notes.where({ courseId, layout: '' }).map(({ ref, text }) => ({ ref, text }));
      const html = await page(input, notes);
      if (!html.ok) return html;
      const ground = tables.groundFiles.get({ courseId });
      const { name } = course.value;
      const share: CourseShare = {
        schema: 'roundwright/course-share@1',
        name,
        course: file.value.text,
        notes,
        ...(ground !== undefined && { ground: GroundFileSchema.parse(JSON.parse(ground.text)) }),
      };
      return {
        ok: true,
        value: { fileName: fileNameOf(`${name} course`, 'html'), text: sharePage(html.value, share) },
      };
    },
  };
}

function refused(path: string, message: string): Result<never> {
  return { ok: false, problems: [{ path, message }] };
}
