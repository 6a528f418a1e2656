import type { CourseObject } from './course.ts';
import type { Notes } from './notes.ts';
import { readCovers } from './read-covers.ts';
import { readGolfObjects } from './read-golf-objects.ts';
import { readLostGround } from './read-lost-ground.ts';
import { readOutGround } from './read-out-ground.ts';
import { readOverhead } from './read-overhead.ts';
import { readPeople } from './read-people.ts';
import { readTrees } from './read-trees.ts';
import type { TaggedFeature } from './tags.ts';

/** Everything one feature is besides a hole, tee or basket: a building can be cover, out-of-bounds and a place of people. */
export function readObjects(feature: TaggedFeature, notes: Notes): CourseObject[] {
  return [
    ...readGolfObjects(feature, notes),
    ...readOverhead(feature, notes),
    ...readTrees(feature, notes),
    ...readCovers(feature, notes),
    ...readOutGround(feature, notes),
    ...readLostGround(feature, notes),
    ...readPeople(feature),
  ];
}
