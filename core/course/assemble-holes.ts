import { buildHole } from './build-hole.ts';
import type { CourseHole, LonLat, Site } from './course.ts';
import { groundDistance_m } from './ground-distance.ts';
import { compareRefs, refKey } from './hole-ref.ts';
import { type NamedLine, nameLines } from './name-lines.ts';
import type { Notes } from './notes.ts';
import { readHoleFacts, readHoleLines } from './read-hole-lines.ts';
import { type MappedSite, readSites } from './read-sites.ts';
import { snapLine } from './snap-line.ts';
import type { TaggedFeature } from './tags.ts';

/** Two lines of one hole that start nearer to each other than this start from the same tee. */
const sameTee_m = 5;

/**
 * The holes of the map in natural order of their refs: from hole lines, and from tees and baskets that share a ref.
 * Missing partners, duplicates and toss-ups become problems.
 */
export function assembleHoles(features: readonly TaggedFeature[], notes: Notes): CourseHole[] {
  const tees = readSites(features, 'tee', notes);
  const baskets = readSites(features, 'basket', notes);
  const snapped = readHoleLines(features, notes).map(line => snapLine(line, tees, baskets, notes));
  const taken = new Set([...tees, ...baskets].flatMap(site => site.refs));
  const lines = nameLines(snapped, taken, notes);
  const groups = Map.groupBy(lines, line => refKey(line.ref));
  const drawn = [...groups].map(([key, group]) => drawnHole(key, group, tees, baskets, notes));
  const straight = [...taken].filter(key => !groups.has(key)).map(key => straightHole(key, tees, baskets, notes));
  const holes = [...drawn, ...straight].filter(hole => hole !== undefined);
  noteUnused(lines, [...tees, ...baskets], notes);
  if (holes.length === 0 && notes.problems.length === 0) notes.problems.push(noHoles(tees.length, baskets.length));
  return holes.sort((a, b) => compareRefs(a.ref, b.ref));
}

function drawnHole(
  key: string,
  group: readonly NamedLine[],
  tees: readonly MappedSite[],
  baskets: readonly MappedSite[],
  notes: Notes,
): CourseHole | undefined {
  const [first, ...others] = group;
  for (const [i, line] of group.entries()) {
    const twin = group.slice(0, i).find(earlier => startsTogether(earlier, line));
    if (twin === undefined) continue;
    notes.problems.push({
      path: line.line.feature.path,
      message: `a second line for hole ${line.ref} from the same tee (the first is ${twin.line.feature.path}): give it another ref or delete it`,
    });
  }
  if (others.length > 0) {
    const more = others.map(other => other.line.feature.path).join(', ');
    notes.assumptions.push({
      path: first!.line.feature.path,
      message: `hole ${first!.ref} has several lines: this one is planned for unless a layout plays ${more}`,
    });
  }
  return buildHole(
    {
      ref: first!.ref,
      facts: first!.line.facts,
      path: first!.line.feature.path,
      tees: unique([...group.map(line => lineEnd(line, 'tee', tees, notes)), ...named(tees, key)]),
      baskets: unique([...group.map(line => lineEnd(line, 'basket', baskets, notes)), ...named(baskets, key)]),
      bends: first!.positions.slice(1, -1),
      otherLines: others.map(other => wholeLine(other, tees, baskets, notes)),
      lineSource: 'drawn',
    },
    notes,
  );
}

/** Tee, bends and basket of a drawn line. What is assumed of its ends has been said already. */
function wholeLine(
  line: NamedLine,
  tees: readonly MappedSite[],
  baskets: readonly MappedSite[],
  notes: Notes,
): LonLat[] {
  const quiet = { ...notes, assumptions: [] };
  const [tee, basket] = [lineEnd(line, 'tee', tees, quiet), lineEnd(line, 'basket', baskets, quiet)];
  return [tee.position, ...line.positions.slice(1, -1), basket.position];
}

function straightHole(
  key: string,
  allTees: readonly MappedSite[],
  allBaskets: readonly MappedSite[],
  notes: Notes,
): CourseHole | undefined {
  const [tees, baskets] = [allTees, allBaskets].map(sites => sites.filter(site => site.refs.includes(key))) as [
    MappedSite[],
    MappedSite[],
  ];
  const [tee, basket] = [tees[0], baskets[0]];
  if (tee === undefined || basket === undefined) {
    const [alone, partner] = tee === undefined ? [basket!, 'tee'] : [tee, 'basket'];
    notes.problems.push({
      path: alone.feature.path,
      message: `${alone.label} has no ${partner}: add a ${partner} with ref=${key}, or a hole line from tee to basket`,
    });
    return undefined;
  }
  const facts = { ...readHoleFacts(basket.feature, notes), ...readHoleFacts(tee.feature, notes) };
  // The names of a tee and a basket are their own ("long pad"), not the hole's.
  const { name: _, ...ofHole } = facts;
  const ref = [tee, basket].map(({ site }) => site.ref!).find(text => refKey(text) === key) ?? key;
  const sites = { tees: tees.map(({ site }) => site), baskets: baskets.map(({ site }) => site) };
  return buildHole({ ref, facts: ofHole, path: tee.feature.path, ...sites, bends: [], lineSource: 'straight' }, notes);
}

/** The tee or basket at the line's end; without one the end itself, with an assumption that says so. */
function lineEnd(named: NamedLine, kind: 'tee' | 'basket', sites: readonly MappedSite[], notes: Notes): Site {
  const mapped = named[kind];
  const end: LonLat = kind === 'tee' ? named.positions[0]! : named.positions.at(-1)!;
  if (mapped !== undefined) {
    const height_m = mapped.site.height_m ?? end[2];
    return height_m === undefined ? mapped.site : { ...mapped.site, height_m };
  }
  const far = sites.find(site => site.refs.includes(refKey(named.ref)));
  const why =
    far === undefined
      ? `no ${kind} lies within 20 m of the line's end`
      : `${far.label} (${far.feature.path}) lies ${groundDistance_m(far.site.position, end).toFixed(0)} m from the line's end`;
  notes.assumptions.push({
    path: named.line.feature.path,
    message: `hole ${named.ref}: ${why}, so the end itself is taken as the ${kind}`,
  });
  return { position: end, ...(end[2] === undefined ? {} : { height_m: end[2] }), ref: named.ref, featureIndex: -1 };
}

function named(sites: readonly MappedSite[], key: string): Site[] {
  return sites.filter(site => site.refs.includes(key)).map(({ site }) => site);
}

/** Each site once; the first mention stays. */
function unique(sites: readonly Site[]): Site[] {
  const same = (a: Site, b: Site) =>
    a.featureIndex === b.featureIndex && a.position[0] === b.position[0] && a.position[1] === b.position[1];
  return sites.filter((site, i) => sites.findIndex(other => same(other, site)) === i);
}

function startsTogether(a: NamedLine, b: NamedLine): boolean {
  // From one tee to two baskets there are two lines of play.
  if (a.basket !== undefined && b.basket !== undefined && a.basket !== b.basket) return false;
  if (a.tee !== undefined && b.tee !== undefined) return a.tee === b.tee;
  return groundDistance_m(a.positions[0]!, b.positions[0]!) < sameTee_m;
}

function noteUnused(lines: readonly NamedLine[], sites: readonly MappedSite[], notes: Notes): void {
  const used = new Set(lines.flatMap(({ tee, basket }) => [tee, basket]));
  for (const site of sites.filter(site => site.refs.length === 0 && !used.has(site))) {
    notes.assumptions.push({
      path: site.feature.path,
      message: `${site.label} has no ref and is nearest to no hole line's end within 20 m: left out; give it the ref of its hole`,
    });
  }
}

function noHoles(tees: number, baskets: number): { path: string; message: string } {
  const found =
    tees + baskets === 0
      ? ''
      : ` (${tees} tee${tees === 1 ? '' : 's'} and ${baskets} basket${baskets === 1 ? '' : 's'} without refs are there)`;
  return {
    path: 'features',
    message: `the file has no hole${found}: add a LineString tagged disc_golf=hole from tee to basket, or a disc_golf=tee and a disc_golf=basket with the same ref`,
  };
}
