import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { strToU8 } from 'fflate';
import type { Feature, FeatureCollection } from 'geojson';
import { describe, expect, it } from 'vitest';
import { convertCourse } from '../../../backend/import/convert-course.ts';
import { draftText } from '../../../backend/library/draft.ts';
import { addFeatures, moveFeature, removeFeature } from '../../../core/course/edit/edit-features.ts';
import { changeTags } from '../../../core/course/edit/edit-tags.ts';
import { exportCourse } from '../../../core/course/export-course.ts';
import { openTestBackend } from '../api/open-test-backend.ts';
import { taken } from '../taken.ts';
import { tinyCourse } from '../tiny-round.ts';

/* Import, edit, export, import: whatever was not edited is there as it was, be it known or not. */

const imported = (text: string) => taken(taken(convertCourse(strToU8(text), 'a.geojson')).course);

/** Keys and values no course knows; `__proto__` and the like must not get lost or do harm. */
const unknownTags = fc.dictionary(
  fc.oneof(
    fc.constantFrom('__proto__', 'constructor', 'toString', '@mine', 'ångström', 'a.b'),
    fc.string({ minLength: 1, maxLength: 8 }).map(key => `x:${key}`),
  ),
  fc.oneof(fc.string({ maxLength: 12 }), fc.integer(), fc.boolean(), fc.constant(null), fc.jsonValue({ maxDepth: 2 })),
  { maxKeys: 4 },
);
const position = fc
  .tuple(fc.integer({ min: -300, max: 300 }), fc.integer({ min: -300, max: 300 }))
  .map(([x, y]) => [25 + x / 1e5, 60 + y / 1e5]);
const unknownFeature = fc
  .record({
    tags: unknownTags,
    position,
    id: fc.option(fc.oneof(fc.string(), fc.integer())),
    more: fc.jsonValue({ maxDepth: 1 }),
  })
  .map(
    ({ tags, position, id, more }): Feature => ({
      type: 'Feature',
      ...(id === null ? {} : { id }),
      ...({ 'my member': more } as object),
      properties: tags,
      geometry: { type: 'Point', coordinates: position },
    }),
  );
const courseFile = fc
  .record({
    others: fc.array(unknownFeature, { maxLength: 6 }),
    member: fc.jsonValue({ maxDepth: 2 }),
    crs: fc.constant('mine'),
  })
  .map(({ others, member }) => {
    const tiny = tinyCourse() as { features: Feature[] };
    return JSON.parse(
      JSON.stringify({ ...tiny, 'my own': member, features: [...tiny.features, ...others] }),
    ) as FeatureCollection;
  });
/** Deep, with own keys named `__proto__`; the order of members says nothing. */
const same = (a: unknown, b: unknown) =>
  expect(isDeepStrictEqual(a, b), `${JSON.stringify(a)}\n${JSON.stringify(b)}`).toBe(true);

describe('import, edit, export, import', () => {
  it('without an edit, the text itself', () => {
    fc.assert(
      fc.property(courseFile, fc.constantFrom(0, 1, 2), (file, indent) => {
        const text = JSON.stringify(file, null, indent);
        const { course, text: kept } = imported(text);
        expect(kept).toBe(text);
        same(exportCourse(course), file);
      }),
      { numRuns: 200, seed: 41 },
    );
  });

  it('with edits, everything they did not touch', () => {
    const edit = fc.record({
      at: fc.nat(),
      east_m: fc.integer({ min: -5, max: 5 }),
      height: fc.integer({ min: 2, max: 20 }),
    });
    fc.assert(
      fc.property(courseFile, edit, (file, { at, east_m, height }) => {
        const others = file.features.slice(9);
        const index = 9 + (at % Math.max(1, others.length));
        let edited = imported(JSON.stringify(file)).course.source;
        if (others.length > 0) edited = moveFeature(edited, index, east_m, 1);
        edited = addFeatures(edited, {
          type: 'Feature',
          properties: { natural: 'tree' },
          geometry: { type: 'Point', coordinates: [25, 60.0002] },
        });
        edited = changeTags(edited, edited.features.length - 1, { height });
        const again = exportCourse(imported(draftText(edited)).course);
        for (const [i, feature] of file.features.entries()) {
          const { geometry, bbox: _, ...rest } = again.features[i]!;
          const { geometry: before, bbox: __, ...asItWas } = feature;
          same(rest, asItWas);
          if (i !== index) same(geometry, before);
        }
        const { features: _, bbox: __, ...members } = file;
        const { features: ___, ...membersAgain } = again;
        same(membersAgain, members);
        expect(again.features).toHaveLength(file.features.length + 1);
        const taken_back = removeFeature(again, again.features.length - 1);
        expect(taken_back.features).toHaveLength(file.features.length);
      }),
      { numRuns: 200, seed: 42 },
    );
  });

  it('through the library, the same', async () => {
    const { ask } = openTestBackend();
    await fc.assert(
      fc.asyncProperty(courseFile, async file => {
        const text = JSON.stringify(file);
        const { courseId } = await ask('importCourse', { fileName: 'a.geojson', text });
        const { name } = await ask('openDraft', { courseId });
        expect((await ask('exportCourse', { courseId })).text).toBe(text);
        const drawn = addFeatures(file, {
          type: 'Feature',
          properties: { natural: 'tree' },
          geometry: { type: 'Point', coordinates: [25, 60.0002] },
        });
        await ask('saveCourse', { courseId, name, text: JSON.stringify(drawn) });
        same(JSON.parse((await ask('exportCourse', { courseId })).text), drawn);
        await ask('removeCourse', { courseId });
      }),
      { numRuns: 25, seed: 43 },
    );
  });
});
