import type { Course } from './course.ts';
import type { Notes } from './notes.ts';
import { label, type TaggedFeature, tagText } from './tags.ts';

type OnMap = Pick<Course['objects'][number], 'featureIndex' | 'path' | 'name' | 'ref' | 'assumed'>;

/** What every object carries: where it stands in the file, its name, the hole it belongs to, and what is assumed of it. */
export function onMap(feature: TaggedFeature, assumed: readonly string[] = []): OnMap {
  const [name, ref] = [tagText(feature.tags, 'name'), tagText(feature.tags, 'ref')];
  return {
    featureIndex: feature.index,
    path: feature.path,
    ...(name === undefined ? {} : { name }),
    ...(ref === undefined ? {} : { ref }),
    assumed,
  };
}

/** Notes that the feature must be drawn otherwise; `wanted` reads like "a Polygon". */
export function wrongShape(feature: TaggedFeature, what: string, wanted: string, notes: Notes): void {
  notes.problems.push({
    path: `${feature.path}.geometry`,
    message: `${label(feature, what)} is a ${feature.geometry?.type ?? 'feature without geometry'}: draw it as ${wanted}`,
  });
}

/** Keeps track of the defaults that stand in for one object's missing numbers. */
export function standInFor(feature: TaggedFeature, one: string, many: string, notes: Notes) {
  const assumed: string[] = [];
  /** `given`, or the default, noted under the field's name and in words. */
  const orDefault = (
    given: number | undefined,
    field: string,
    number: string,
    value: number,
    text = `${round(value)} m`,
  ): number => {
    if (given !== undefined) return given;
    assumed.push(field);
    notes.standIns.push({ path: feature.path, one, many, number, value: text });
    return value;
  };
  return { assumed, orDefault };
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}
