import type { Course } from './course.ts';
import type { TaggedFeature } from './tags.ts';

/**
 * Kinds of thing the map says nothing about. They may be there on the ground: "not mapped", never "none".
 * `out_of_bounds=no` says something about out-of-bounds, so it counts as mapped.
 */
export function notMapped(
  features: readonly TaggedFeature[],
  { objects, heights }: Pick<Course, 'objects' | 'heights'>,
): string[] {
  const has = (test: (object: Course['objects'][number]) => boolean) => objects.some(test);
  const mapped: Readonly<Record<string, boolean>> = {
    trees: has(
      object =>
        object.kind === 'tree' || (object.kind === 'cover' && ['wood', 'scrub', 'treeRow'].includes(object.form)),
    ),
    'out-of-bounds':
      has(object => object.kind === 'outOfBounds' || object.kind === 'island') ||
      features.some(({ tags }) => tags.has('out_of_bounds')),
    mandos: has(object => object.kind === 'mando'),
    ceilings: has(object => object.kind === 'ceiling'),
    heights: heights.length > 0,
    paths: has(object => object.kind === 'people' && (object.what === 'path' || object.what === 'road')),
  };
  return Object.keys(mapped).filter(kind => !mapped[kind]);
}
