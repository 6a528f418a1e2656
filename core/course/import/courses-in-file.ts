import type { Feature, Position } from 'geojson';
import type { LonLat } from '../course.ts';
import { groundDistance_m } from '../ground-distance.ts';
import { positionsOf } from '../positions.ts';

/** A course of a file that may hold several, with the golf features (indices) that are its. */
export type CourseInFile = Readonly<{ id: string; name: string; holes: number; features: readonly number[] }>;
/** A course known by a relation: ids of its members. */
export type KnownMembers = Readonly<{ id: string; name: string; members: ReadonlySet<string> }>;

type Site = Readonly<{
  id: string;
  name: string;
  members?: ReadonlySet<string>;
  outline: readonly Position[];
  centre?: LonLat;
}>;

const isGolf = ({ properties }: Feature) => typeof properties?.disc_golf === 'string';
const isCourse = ({ properties }: Feature) => properties?.leisure === 'disc_golf_course';

/**
 * The courses of an OpenStreetMap extract. A tee, basket or hole belongs to the course that names it as a member, else to the
 * one whose outline it lies in, else to the nearest.
 * @returns one entry a course; a single one without name when the file marks none
 */
export function coursesInFile(features: readonly Feature[], relations: readonly KnownMembers[]): CourseInFile[] {
  const golf = features.flatMap((feature, index) =>
    isGolf(feature) && feature.geometry !== null ? [{ feature, index }] : [],
  );
  const sites = sitesOf(features, relations, golf);
  const holes = (indices: readonly number[]) =>
    indices.filter(index => features[index]!.properties?.disc_golf === 'hole').length;
  if (sites.length === 0) {
    const indices = golf.map(({ index }) => index);
    return golf.length === 0 ? [] : [{ id: '', name: '', holes: holes(indices), features: indices }];
  }
  const owned = Map.groupBy(golf, ({ feature }) => ownerOf(feature, sites));
  return sites.map(site => {
    const indices = (owned.get(site) ?? []).map(({ index }) => index);
    return { id: site.id, name: site.name, holes: holes(indices), features: indices };
  });
}

function sitesOf(
  features: readonly Feature[],
  relations: readonly KnownMembers[],
  golf: readonly Readonly<{ feature: Feature }>[],
): Site[] {
  const named = relations.map(({ id, name, members }): Site => {
    const member = golf.find(({ feature }) => members.has(String(feature.id)));
    const at = member === undefined ? undefined : positionsOf(member.feature.geometry)[0];
    return { id, name, members, outline: [], ...(at === undefined ? {} : { centre: at as unknown as LonLat }) };
  });
  const drawn = features.flatMap((feature, index): Site[] => {
    if (!isCourse(feature)) return [];
    const positions = positionsOf(feature.geometry);
    if (positions.length === 0) return [];
    const id = String(feature.id ?? `features[${index}]`);
    const name = typeof feature.properties?.name === 'string' ? feature.properties.name : '';
    // A relation and the outline it goes with are one course.
    if (named.some(site => site.id === id || (name !== '' && site.name === name))) return [];
    const mean = (axis: 0 | 1) => positions.reduce((sum, position) => sum + position[axis]!, 0) / positions.length;
    return [{ id, name, outline: positions.length > 2 ? positions : [], centre: [mean(0), mean(1)] }];
  });
  return [...named, ...drawn];
}

function ownerOf({ id, geometry }: Feature, sites: readonly Site[]): Site {
  const member = sites.find(({ members }) => members?.has(String(id)) === true);
  if (member !== undefined) return member;
  const at = positionsOf(geometry)[0] as unknown as LonLat;
  const inside = sites.find(({ outline }) => outline.length > 2 && isInside(at, outline));
  if (inside !== undefined) return inside;
  const far = (site: Site) =>
    site.centre === undefined ? Number.POSITIVE_INFINITY : groundDistance_m(site.centre, at);
  return sites.reduce((best, site) => (far(site) < far(best) ? site : best), sites[0]!);
}

/** Even-odd rule in longitude and latitude: enough for which course a tee lies in. */
function isInside([x, y]: LonLat, ring: readonly Position[]): boolean {
  let isIn = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi, xj, yj] = [ring[i]![0]!, ring[i]![1]!, ring[j]![0]!, ring[j]![1]!];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) isIn = !isIn;
  }
  return isIn;
}
