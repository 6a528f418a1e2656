import type { Feature, FeatureCollection } from 'geojson';
import type { LonLat } from '../course.ts';
import { groundDistance_m } from '../ground-distance.ts';
import { positionsOf } from '../positions.ts';
import { matchFeatures } from './match-features.ts';
import { kindOf, plainTags } from './plain-tags.ts';
import { changedTags, sameFeature, sameShape } from './same-feature.ts';

/** Who made the difference: the map that came again, or the user since the last import, or both at the same thing. */
type ChangedBy = 'file' | 'you' | 'both';

/** One thing in which the file that came again differs from the stored course. */
type Difference = Readonly<{
  /** Names it when differences are taken; holds as long as neither file changes. */
  key: string;
  /** What taking it does to the course. */
  does: 'add' | 'remove' | 'change';
  by: ChangedBy;
  /** In a word: tee, tree, water. */
  what: string;
  ref?: string;
  name?: string;
  /** How far a point, or the middle of a shape, moved; absent when it did not. */
  moved_m?: number;
  hasNewShape: boolean;
  tags: readonly Readonly<{ key: string; before: string | null; after: string | null }>[];
  /** Taken unless the user says otherwise: what only the map changed is; what the user drew stays. */
  isTaken: boolean;
}>;

export type Comparison = Readonly<{
  differences: readonly Difference[];
  /** Features that are the same in both. */
  same: number;
  /** The stored course with some differences taken. */
  merge: (taken: ReadonlySet<string>) => FeatureCollection;
}>;

/**
 * Compares a stored course with the same course as its map has it now.
 * @param stored - the course as it is, with all that was drawn since
 * @param origin - the map as it last came in; what the stored course has beyond it, the user drew
 * @param fresh - the map now
 * @param tellsAll - false for maps such as waypoints, whose silence about a par or a wood says nothing
 */
export function compareFiles(
  stored: FeatureCollection,
  origin: FeatureCollection,
  fresh: FeatureCollection,
  tellsAll: boolean,
): Comparison {
  const partnerOfFresh = matchFeatures(stored.features, fresh.features);
  const knownKinds = new Set(fresh.features.map(kindOf));
  const freshOf = new Map([...partnerOfFresh].map(([theirs, mine]) => [mine, theirs]));
  const originOfStored = matchFeatures(origin.features, stored.features);
  const originOfFresh = matchFeatures(origin.features, fresh.features);
  const keptOrigins = new Set(originOfStored.values());
  const differences: Difference[] = [];
  let same = 0;

  for (const [index, theirs] of fresh.features.entries()) {
    const mine = partnerOfFresh.get(index);
    const before = origin.features[originOfFresh.get(index) ?? -1];
    if (mine === undefined) {
      // It came in before and is gone from the course: the user deleted it.
      const wasDeleted = before !== undefined && !keptOrigins.has(originOfFresh.get(index)!);
      const changedToo = wasDeleted && !sameFeature(before, theirs);
      differences.push(
        difference(`new ${index}`, 'add', wasDeleted ? (changedToo ? 'both' : 'you') : 'file', theirs, theirs),
      );
      continue;
    }
    const own = stored.features[mine]!;
    const updated = tellsAll ? theirs : withUnsaid(own, theirs);
    if (sameFeature(own, updated)) {
      same++;
      continue;
    }
    const was = origin.features[originOfStored.get(mine) ?? -1];
    const byUser = was === undefined || !sameFeature(was, own);
    const byFile = was === undefined || !sameFeature(was, tellsAll ? theirs : withUnsaid(was, theirs));
    differences.push(difference(`new ${index}`, 'change', byUser ? (byFile ? 'both' : 'you') : 'file', own, updated));
  }
  for (const [index, own] of stored.features.entries()) {
    if (freshOf.has(index)) continue;
    const was = origin.features[originOfStored.get(index) ?? -1];
    const by = was === undefined ? 'you' : sameFeature(was, own) ? 'file' : 'both';
    const removal = difference(`old ${index}`, 'remove', by, own, own);
    // A map that knows no such thing at all (an extract without trees, waypoints without woods) does not say that it is gone.
    const speaks = knownKinds.has(kindOf(own)) && (tellsAll || !isLine(own));
    differences.push({ ...removal, isTaken: removal.isTaken && speaks });
  }
  return { differences, same, merge: taken => merged(stored, fresh, partnerOfFresh, tellsAll, taken) };
}

/** The map's thing with what only the stored one says: its id, its par, its height. */
function withUnsaid(stored: Feature, theirs: Feature): Feature {
  const said = plainTags(theirs);
  const own = stored.properties ?? {};
  const kept = [...plainTags(stored).keys()].filter(key => !said.has(key));
  const unsaid = Object.fromEntries(kept.map(key => [key, own[key] ?? (own.tags as Record<string, unknown>)[key]]));
  const id = theirs.id ?? stored.id;
  return { ...theirs, ...(id === undefined ? {} : { id }), properties: { ...unsaid, ...theirs.properties } };
}

/** A line of play: waypoints may know its ends only. */
const isLine = (feature: Feature) => kindOf(feature) === 'hole';

function difference(key: string, does: Difference['does'], by: ChangedBy, before: Feature, after: Feature): Difference {
  const [ref, name] = ['ref', 'name'].map(tag => plainTags(after).get(tag) ?? plainTags(before).get(tag));
  const moved_m = does === 'change' ? movedBy_m(before, after) : 0;
  return {
    key,
    does,
    by,
    what: kindOf(after),
    ...(ref === undefined ? {} : { ref }),
    ...(name === undefined ? {} : { name }),
    ...(moved_m > 0.01 ? { moved_m } : {}),
    hasNewShape: does === 'change' && !sameShape(before.geometry, after.geometry),
    tags: does === 'change' ? changedTags(before, after) : [],
    isTaken: by === 'file',
  };
}

/** Between points, the distance; between other shapes, that of the means of their corners. */
function movedBy_m(before: Feature, after: Feature): number {
  const [from, to] = [meanPlace(before), meanPlace(after)];
  return from === undefined || to === undefined ? 0 : groundDistance_m(from, to);
}

function meanPlace({ geometry }: Feature): LonLat | undefined {
  const positions = positionsOf(geometry);
  const [first] = positions;
  if (first === undefined) return undefined;
  // Beside the first, so that the antimeridian is no edge.
  const beside = (lon: number) => lon - 360 * Math.round((lon - first[0]!) / 360);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return [mean(positions.map(position => beside(position[0]!))), mean(positions.map(position => position[1]!))];
}

/** What stays keeps its place in the file; what is new comes at its end. Unknown members stay as they are. */
function merged(
  stored: FeatureCollection,
  fresh: FeatureCollection,
  partners: ReadonlyMap<number, number>,
  tellsAll: boolean,
  taken: ReadonlySet<string>,
): FeatureCollection {
  const freshOf = new Map([...partners].map(([theirs, mine]) => [mine, theirs]));
  const kept = stored.features.flatMap((own, index): Feature[] => {
    const theirs = freshOf.get(index);
    if (theirs === undefined) return taken.has(`old ${index}`) ? [] : [own];
    if (!taken.has(`new ${theirs}`)) return [own];
    const update = fresh.features[theirs]!;
    return [tellsAll ? update : withUnsaid(own, update)];
  });
  const added = fresh.features.filter((_, index) => !partners.has(index) && taken.has(`new ${index}`));
  const { features: _, bbox: __, ...members } = stored;
  return { ...members, type: 'FeatureCollection', features: [...kept, ...added] };
}
