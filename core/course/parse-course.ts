import type { Result } from '../units/result.ts';
import { assembleHoles } from './assemble-holes.ts';
import { checkCrs } from './check-crs.ts';
import { checkPlace } from './check-place.ts';
import { checkShape } from './check-shape.ts';
import { checkSize } from './check-size.ts';
import { checkStructure } from './check-structure.ts';
import type { Course } from './course.ts';
import { courseName } from './course-name.ts';
import { meaning } from './meaning.ts';
import { notMapped } from './not-mapped.ts';
import { noteSitesOut } from './note-sites-out.ts';
import { type Notes, newNotes, summariseStandIns } from './notes.ts';
import { readHeights } from './read-heights.ts';
import { isLayout, readLayouts } from './read-layouts.ts';
import { readObjects } from './read-objects.ts';
import { label, readTags, type TaggedFeature } from './tags.ts';

/**
 * A course from a GeoJSON FeatureCollection with OpenStreetMap tags, directly in `properties` or under `properties.tags`.
 * @param input - parsed JSON; kept as `source`, not copied and not changed
 * @param fileName - names the course when the file does not
 * @returns the course with everything assumed of it, or all problems; paths count features, as in `features[3].properties.height`
 */
export function parseCourse(input: unknown, fileName: string): Result<Course> {
  const structure = checkStructure(input);
  if (!structure.ok) return structure;
  const source = structure.value;
  const notes = newNotes();
  checkCrs(source, notes);
  if (notes.problems.length > 0) return { ok: false, problems: notes.problems };
  const all = source.features.map((feature, index) => readTags(feature, index, notes));
  const known = all.filter(feature => !isLayout(feature) && isUsable(feature, notes));
  notes.problems.push(...checkSize(known));
  if (notes.problems.length > 0) return { ok: false, problems: notes.problems };
  checkPlace(known, notes);
  if (notes.problems.length > 0) return { ok: false, problems: notes.problems };
  for (const feature of known) checkShape(feature, label(feature, meaning(feature.tags)!), notes);
  const name = courseName(source, all, fileName, notes);
  const objects = known.flatMap(feature => readObjects(feature, notes));
  const heights = readHeights(all, notes);
  const holes = assembleHoles(known, notes);
  const layouts = readLayouts(all, source, holes, notes);
  noteSitesOut(holes, objects, notes);
  if (notes.problems.length > 0) return { ok: false, problems: distinct(notes.problems) };
  const assumptions = [...notes.assumptions, ...summariseStandIns(notes.standIns)];
  return {
    ok: true,
    value: {
      name,
      holes,
      layouts,
      objects,
      heights,
      assumptions,
      notMapped: notMapped(known, { objects, heights }),
      source,
    },
  };
}

/** Has it a meaning for the course and a shape to go with it? What has no meaning only travels through. */
function isUsable(feature: TaggedFeature, notes: Notes): boolean {
  const what = meaning(feature.tags);
  if (feature.geometry === null || feature.geometry === undefined) {
    if (feature.tags.has('disc_golf') || feature.tags.has('obstacle')) {
      notes.problems.push({
        path: `${feature.path}.geometry`,
        message: `${label(feature, what!)} has no geometry: draw it, or delete the feature`,
      });
    } else {
      notes.assumptions.push({
        path: feature.path,
        message: `${label(feature, what ?? 'feature')} has no geometry: left out`,
      });
    }
    return false;
  }
  if (what === undefined) return false;
  if (feature.geometry.type === 'GeometryCollection') {
    notes.problems.push({
      path: `${feature.path}.geometry`,
      message: `${label(feature, what)} is a GeometryCollection, which has no one meaning: split it into features of one geometry each`,
    });
    return false;
  }
  return true;
}

/** Readers of one feature may each find the same bad number. */
function distinct(problems: Notes['problems']): Notes['problems'] {
  const seen = new Set<string>();
  return problems.filter(({ path, message }) => {
    const key = JSON.stringify([path, message]);
    return !seen.has(key) && seen.add(key);
  });
}
