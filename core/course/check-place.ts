import type { LonLat } from './course.ts';
import { groundDistance_m, lineLength_m } from './ground-distance.ts';
import { mostCourse_m } from './limits.ts';
import type { Notes } from './notes.ts';
import { parseOsmLength } from './osm-length.ts';
import { positionsOf } from './positions.ts';
import { siteKind } from './read-sites.ts';
import { linesOf, lonLat } from './shapes.ts';
import { label, type TaggedFeature, tagWord } from './tags.ts';

type Place = Readonly<{ feature: TaggedFeature; position: LonLat }>;

/**
 * Does the course lie in one place? Notes problems for tees, baskets and hole lines whose longitude and latitude are
 * swapped or that lie in another part of the world, and a word for surroundings that do.
 * @param features - only those that mean something to a course
 */
export function checkPlace(features: readonly TaggedFeature[], notes: Notes): void {
  const places = features.flatMap(feature =>
    positionsOf(feature.geometry)
      .slice(0, 1)
      .map(position => ({ feature, position: lonLat(position) })),
  );
  const golf = places.filter(({ feature }) => isGolf(feature));
  const centre = middle(golf);
  if (centre === undefined) return;
  for (const place of places) checkOne(place, centre, notes);
  if (notes.problems.length > 0) return;
  checkOrder(features, notes);
  const ends = golf.flatMap(({ feature }) => positionsOf(feature.geometry));
  if (ends.some(position => Math.abs(position[0]! - centre[0]) > 180)) {
    notes.assumptions.push({
      path: 'features',
      message: 'the course crosses the antimeridian (longitude 180): positions on either side are joined the short way',
    });
  }
}

function isGolf(feature: TaggedFeature): boolean {
  return siteKind(feature) !== undefined || tagWord(feature.tags, 'disc_golf') === 'hole';
}

/** The place with the least total distance to the others: a few stray ones do not move it. */
function middle(places: readonly Place[]): LonLat | undefined {
  const totals = places.map(({ position }) =>
    places.reduce((sum, other) => sum + groundDistance_m(position, other.position), 0),
  );
  return places[totals.indexOf(Math.min(...totals))]?.position;
}

function checkOne({ feature, position }: Place, centre: LonLat, notes: Notes): void {
  const away_m = groundDistance_m(position, centre);
  if (away_m <= mostCourse_m) return;
  const what = label(feature, tagWord(feature.tags, 'disc_golf') ?? 'feature');
  const [lon, lat] = position;
  if (Math.abs(lon) <= 90 && groundDistance_m([lat, lon], centre) <= mostCourse_m) {
    notes.problems.push({
      path: `${feature.path}.geometry.coordinates`,
      message: `${what}: longitude and latitude are swapped ([${lon}, ${lat}] lies ${km(away_m)} from the rest of the course, [${lat}, ${lon}] lies in it); GeoJSON writes [longitude, latitude]`,
    });
  } else if (isGolf(feature)) {
    notes.problems.push({
      path: `${feature.path}.geometry.coordinates`,
      message: `${what} lies ${km(away_m)} from the rest of the course: mend its position, or put it in a file of its own`,
    });
  } else {
    notes.assumptions.push({
      path: feature.path,
      message: `${what} begins ${km(away_m)} from the course: probably no part of it`,
    });
  }
}

function km(distance_m: number): string {
  return `${Math.round(distance_m / 1000)} km`;
}

/**
 * A file swapped throughout lies in one place, but the wrong one; there degrees have other lengths, so the published
 * lengths tell: they fit with the order reversed and not as written.
 */
function checkOrder(features: readonly TaggedFeature[], notes: Notes): void {
  const misfits = features.flatMap(feature => {
    const [line] = linesOf(feature);
    const dist = feature.tags.get('dist');
    if (line === undefined || dist === undefined || tagWord(feature.tags, 'disc_golf') !== 'hole') return [];
    const length = parseOsmLength(dist.value);
    const positions = line.coordinates.map(lonLat);
    if (!length.ok || length.length_m <= 0 || positions.some(([lon]) => Math.abs(lon) > 90)) return [];
    const misfit = (way: LonLat[]) => Math.abs(Math.log(lineLength_m(way) / length.length_m));
    return [{ written: misfit(positions), reversed: misfit(positions.map(([lon, lat]) => [lat, lon])) }];
  });
  if (misfits.length < 3) return;
  const [written, reversed] = [median(misfits.map(m => m.written)), median(misfits.map(m => m.reversed))];
  if (!(written > 0.2 && reversed < 0.05)) return;
  notes.problems.push({
    path: 'features',
    message: `longitude and latitude look swapped throughout: the hole lines fit their dist within ${Math.round(100 * reversed)} % with the order reversed, and miss it by ${Math.round(100 * written)} % as written; GeoJSON writes [longitude, latitude]`,
  });
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
