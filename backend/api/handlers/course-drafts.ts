import type { FeatureCollection } from 'geojson';
import type { Course } from '../../../core/course/course.ts';
import type { ElevationModel } from '../../../core/course/elevation-grid.ts';
import { lineLength_m } from '../../../core/course/ground-distance.ts';
import { refKey } from '../../../core/course/hole-ref.ts';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { siteKey } from '../../../core/course/site-key.ts';
import { withLayout } from '../../../core/course/with-layout.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import { unplacedStart } from '../../../core/geometry/walked-hole/unplaced-start.ts';
import { walkHole } from '../../../core/geometry/walked-hole/walk-hole.ts';
import { withGround } from '../../../core/geometry/with-ground.ts';
import type { Result } from '../../../core/units/result.ts';
import { keepOrigin } from '../../library/course-origin.ts';
import { draftText, readDraft, soundPart } from '../../library/draft.ts';
import { readableCourse } from '../../library/readable-course.ts';
import { type AppContext, sayChanged } from '../app-context.ts';
import type { Output } from '../contract/api.ts';
import type { courseDrafts } from '../contract/course-drafts.ts';
import type { Handlers } from '../dispatch.ts';
import { fileNameOf } from '../file-name.ts';
import { plainHoleMap } from '../plain-hole-map.ts';

export function courseDraftHandlers(app: AppContext): Pick<Handlers, keyof typeof courseDrafts> {
  const { store } = app;
  const { tables, changes } = store;
  return {
    listDrafts: () => {
      const drafts = tables.courseDrafts.where().map(({ courseId, name, changedAt_ms }) => {
        const course = tables.courses.get({ courseId });
        return { courseId, name: course?.name ?? name, isCourse: course !== undefined, changedAt_ms };
      });
      return { ok: true, value: drafts.sort((a, b) => b.changedAt_ms - a.changedAt_ms) };
    },
    openDraft: ({ courseId }) => {
      const course = tables.courses.get({ courseId });
      const draft = tables.courseDrafts.get({ courseId });
      const text = draft?.text ?? tables.courseFiles.get({ courseId })?.text;
      const name = course?.name ?? draft?.name;
      if (text === undefined || name === undefined) return noDraft;
      return { ok: true, value: { name, text, isKept: draft !== undefined, isCourse: course !== undefined } };
    },
    keepDraft: ({ courseId, name, text }) => {
      const draft = readDraft(text);
      if (!draft.ok) return draft;
      const drawn = draftText(draft.value);
      const file = tables.courseFiles.get({ courseId });
      const course = file === undefined ? undefined : readDraft(file.text);
      // Drawn back to what the course is: nothing is left to keep.
      if (course?.ok && draftText(course.value) === drawn) tables.courseDrafts.remove({ courseId });
      else tables.courseDrafts.put({ courseId, name, text: drawn, changedAt_ms: app.now_ms() });
      return { ok: true, value: { kept: true } };
    },
    discardDraft: ({ courseId }) => {
      const draft = tables.courseDrafts.get({ courseId });
      if (draft === undefined) return noDraft;
      const undo = changes.change(`Discard the draft of ${draft.name}`, editor =>
        editor.remove('courseDrafts', { courseId }),
      );
      sayChanged(app, ['courseDrafts']);
      return { ok: true, value: { undo } };
    },
    saveCourse: ({ courseId, name, text }) => {
      const draft = readDraft(text);
      if (!draft.ok) return draft;
      const before = tables.courses.get({ courseId });
      const fileName = before?.fileName ?? fileNameOf(name, 'geojson');
      const saved = draftText(draft.value);
      const course = readableCourse(saved, fileName);
      if (!course.ok) return course;
      const undo = changes.change(before === undefined ? `Add ${name}` : `Edit ${name}`, editor => {
        const row = before ?? { courseId, fileName, sample: 0 as const, addedAt_ms: app.now_ms() };
        editor.put('courses', { ...row, name });
        keepOrigin(editor, tables, courseId);
        editor.put('courseFiles', { courseId, text: saved });
        editor.remove('courseDrafts', { courseId });
      });
      sayChanged(app, ['courses', 'courseDrafts']);
      return { ok: true, value: { undo } };
    },
    describeDraft: ({ text, courseId, ref, layout }) => {
      const draft = readDraft(text);
      if (!draft.ok) return draft;
      const saved = courseId === undefined ? undefined : app.courses.get(courseId);
      const terrain = saved?.ok ? saved.value.ground?.terrain : undefined;
      return { ok: true, value: describe(draft.value, terrain, ref, layout) };
    },
    buildWalkedHole: ({ hole, start, text }) => {
      const draft: Result<FeatureCollection> = text === undefined ? { ok: true, value: EMPTY } : readDraft(text);
      if (!draft.ok) return draft;
      const walked = walkHole(hole, start, unplacedStart(draft.value));
      if (!walked.ok)
        return {
          ok: false,
          problems: walked.problems.map(p => ({ ...p, path: p.path === 'start' ? p.path : `hole.${p.path}` })),
        };
      const { features, notes } = walked.value;
      const alone = parseCourse({ ...EMPTY, features }, 'walked hole');
      if (!alone.ok) return alone;
      const map = buildHoleMap(alone.value, alone.value.holes[0]!);
      return {
        ok: true,
        value: {
          features: features as unknown as Output<'buildWalkedHole'>['features'],
          notes: [...notes],
          map: plainHoleMap(map),
          report: describeHole(map, alone.value.notMapped),
        },
      };
    },
  };
}

const EMPTY: FeatureCollection = { type: 'FeatureCollection', features: [] };

const noDraft: Result<never> = {
  ok: false,
  problems: [{ path: 'courseId', message: 'is no course and no draft of the library: it may have been deleted' }],
};

function describe(
  draft: FeatureCollection,
  terrain: ElevationModel | undefined,
  ref: string | undefined,
  layout: string | undefined,
): Output<'describeDraft'> {
  const { course: sound, problems } = soundPart(draft, 'draft.geojson');
  const course = sound === null ? null : withGround(sound, terrain && { terrain });
  return {
    problems: problems.map(({ path, message }) => ({ path, message })),
    assumptions: (course?.assumptions ?? []).map(({ path, message }) => ({ path, message })),
    holes: (course?.holes ?? []).map(({ ref, name, par, line, tees, baskets }) => ({
      ref,
      ...(name === undefined ? {} : { name }),
      par: par ?? null,
      playLength_m: lineLength_m(line),
      tees: tees.map(tee => ({ key: siteKey(tee, tees), featureIndex: tee.featureIndex })),
      baskets: baskets.map(basket => ({ key: siteKey(basket, baskets), featureIndex: basket.featureIndex })),
    })),
    layouts: (course?.layouts ?? []).map(({ name, featureIndex }) => ({ name, featureIndex })),
    hole: course === null || ref === undefined ? null : reported(course, ref, layout),
  };
}

function reported(whole: Course, ref: string, layout: string | undefined): Output<'describeDraft'>['hole'] {
  const played = layout === undefined ? null : withLayout(whole, layout);
  const course = played?.ok ? played.value : whole;
  const hole = course.holes.find(hole => refKey(hole.ref) === refKey(ref));
  return hole === undefined ? null : { report: describeHole(buildHoleMap(course, hole), course.notMapped) };
}
