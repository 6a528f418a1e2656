import type { FeatureCollection } from 'geojson';
import type { Editor, Tables } from '../store/changes.ts';

const NOTHING: FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Before a course's file is changed by hand: keeps what came in, once. A course drawn here came from nowhere. */
export function keepOrigin(editor: Editor, tables: Tables, courseId: string): void {
  if (tables.courseOrigins.get({ courseId }) !== undefined) return;
  const text = tables.courseFiles.get({ courseId })?.text ?? JSON.stringify(NOTHING);
  editor.put('courseOrigins', { courseId, text });
}

/** The map as it last came in; of a course never changed since, its own file. */
export function originOf(tables: Tables, courseId: string): FeatureCollection {
  const text = tables.courseOrigins.get({ courseId })?.text ?? tables.courseFiles.get({ courseId })?.text;
  // Checked when it was kept.
  return text === undefined ? NOTHING : (JSON.parse(text.replace(/^\uFEFF/, '')) as FeatureCollection);
}
