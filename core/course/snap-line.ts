import type { LonLat } from './course.ts';
import { snap_m } from './defaults.ts';
import { groundDistance_m } from './ground-distance.ts';
import { refKey } from './hole-ref.ts';
import type { Notes } from './notes.ts';
import type { HoleLine } from './read-hole-lines.ts';
import type { MappedSite, SiteKind } from './read-sites.ts';

/** A hole line read from tee to basket, with the tee and basket at its ends where the map has them. */
export type SnappedLine = Readonly<{
  line: HoleLine;
  positions: readonly LonLat[];
  tee?: MappedSite;
  basket?: MappedSite;
}>;
type Candidate = Readonly<{ site: MappedSite; distance_m: number }>;
type Reading = Readonly<{ tee?: Candidate; basket?: Candidate; cost_m: number }>;

/** What an end without a partner counts for, against an end whose partner is some metres off. */
const missing_m = 2 * snap_m;
/** Two readings nearer to each other than this are a toss-up. */
const tossUp_m = 1;
/** One end alone turns a line round only when the line is drawn right to it. */
const plain_m = 5;

/**
 * Finds the tee and the basket of a hole line (same `ref` first, else within 20 m), and its direction: lines are drawn
 * tee to basket, but one whose ends plainly lie at basket and tee is turned round. Toss-ups are noted as problems.
 */
export function snapLine(
  line: HoleLine,
  tees: readonly MappedSite[],
  baskets: readonly MappedSite[],
  notes: Notes,
): SnappedLine {
  const [start, end] = [line.positions[0]!, line.positions.at(-1)!];
  const drawn = read(line, start, end, tees, baskets);
  const turned = read(line, end, start, tees, baskets);
  if (drawn.tee && drawn.basket && turned.tee && turned.basket && Math.abs(drawn.cost_m - turned.cost_m) < tossUp_m) {
    notes.problems.push({
      path: line.feature.path,
      message: `${line.label}: both ends have a tee and a basket equally near, so its direction cannot be told; give the line, its tee and its basket the same ref`,
    });
  }
  const turn = plainlyTurned(line, drawn, turned);
  if (turn) {
    notes.assumptions.push({
      path: line.feature.path,
      message: `${line.label} is drawn from basket to tee: read the other way round`,
    });
  }
  const positions = turn ? line.positions.toReversed() : line.positions;
  const tee = pick(line, positions[0]!, tees, 'tee', notes);
  const basket = pick(line, positions.at(-1)!, baskets, 'basket', notes);
  return { line, positions, ...(tee === undefined ? {} : { tee }), ...(basket === undefined ? {} : { basket }) };
}

function plainlyTurned(line: HoleLine, drawn: Reading, turned: Reading): boolean {
  if (turned.cost_m >= drawn.cost_m - tossUp_m) return false;
  if ((turned.tee && turned.basket) || drawn.tee || drawn.basket) return true;
  const only = turned.tee ?? turned.basket;
  return only !== undefined && (only.distance_m <= plain_m || isNamed(only.site, line));
}

function read(
  line: HoleLine,
  teeEnd: LonLat,
  basketEnd: LonLat,
  tees: readonly MappedSite[],
  baskets: readonly MappedSite[],
): Reading {
  const [tee, basket] = [evidence(line, teeEnd, tees), evidence(line, basketEnd, baskets)];
  const cost_m = (tee?.distance_m ?? missing_m) + (basket?.distance_m ?? missing_m);
  return { ...(tee === undefined ? {} : { tee }), ...(basket === undefined ? {} : { basket }), cost_m };
}

/** The nearest site that names the line's hole, however far; else the nearest nameless one within reach. */
function evidence(line: HoleLine, end: LonLat, sites: readonly MappedSite[]): Candidate | undefined {
  const named = byDistance(
    sites.filter(site => isNamed(site, line)),
    end,
  );
  return named[0] ?? candidates(line, end, sites)[0];
}

/** Sites within 20 m of a line's end that can belong to it, nearest first; those that name its hole shut out the rest. */
function candidates(line: HoleLine, end: LonLat, sites: readonly MappedSite[]): Candidate[] {
  const near = byDistance(sites, end).filter(({ site, distance_m }) => distance_m <= snap_m && isOpenTo(site, line));
  const named = near.filter(({ site }) => isNamed(site, line));
  return named.length > 0 ? named : near;
}

function pick(
  line: HoleLine,
  end: LonLat,
  sites: readonly MappedSite[],
  kind: SiteKind,
  notes: Notes,
): MappedSite | undefined {
  const [nearest, ...others] = candidates(line, end, sites);
  if (nearest === undefined) return undefined;
  // A line drawn exactly to one of two close sites means that one.
  const margin_m = Math.min(tossUp_m, Math.max(0.1, nearest.distance_m));
  const rivals = others.filter(({ distance_m }) => distance_m - nearest.distance_m < margin_m);
  if (rivals.length === 0) return nearest.site;
  const tied = [nearest, ...rivals].sort((a, b) => a.site.feature.index - b.site.feature.index);
  const first = tied[0]!.site;
  const list = tied.map(({ site, distance_m }) => `${site.label} (${site.feature.path}, ${distance_m.toFixed(1)} m)`);
  const all = list.join(' and ');
  if (isNamed(first, line)) {
    notes.assumptions.push({
      path: line.feature.path,
      message: `${line.label}: its ${kind}s ${all} are equally near its end; ${first.feature.path} is planned for`,
    });
  } else {
    notes.problems.push({
      path: line.feature.path,
      message: `${line.label}: ${tied.length} ${kind}s are equally near its end, ${all}; give the line and its ${kind} the same ref, or draw the line right to it`,
    });
  }
  return first;
}

function byDistance(sites: readonly MappedSite[], end: LonLat): Candidate[] {
  return sites
    .map(site => ({ site, distance_m: groundDistance_m(site.site.position, end) }))
    .sort((a, b) => a.distance_m - b.distance_m);
}

function isNamed({ refs }: MappedSite, { ref }: HoleLine): boolean {
  return ref !== undefined && refs.includes(refKey(ref));
}

function isOpenTo(site: MappedSite, line: HoleLine): boolean {
  return site.refs.length === 0 || line.ref === undefined || isNamed(site, line);
}
