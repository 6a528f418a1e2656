import { type F, type Folder, kmlWithFolders, type Root } from '@tmcw/togeojson';
import type { Document, Element } from '@xmldom/xmldom';
import type { Feature, Geometry } from 'geojson';
import type { Problem, Result } from '../../core/units/result.ts';
import { degrees, isDegrees } from './degrees.ts';
import { type LooseMap, shortText } from './loose-map.ts';
import { leftOutCounter } from './osm-element.ts';
import { reduceXml, type XmlVocabulary } from './reduce-xml.ts';
import { xmlTree } from './xml-tree.ts';

/** KML 2.2. Looks, views and links mean nothing to a course, and no link is followed. */
const KML: XmlVocabulary = {
  root: 'kml',
  namespaces: ' xmlns="http://www.opengis.net/kml/2.2" xmlns:gx="http://www.google.com/kml/ext/2.2"',
  kept: new Set([
    ...['kml', 'Document', 'Folder', 'Placemark', 'name', 'description', 'ExtendedData', 'Data', 'value'],
    ...[
      'SchemaData',
      'SimpleData',
      'Point',
      'LineString',
      'LinearRing',
      'Polygon',
      'outerBoundaryIs',
      'innerBoundaryIs',
    ],
    ...['MultiGeometry', 'coordinates', 'altitudeMode', 'gx:altitudeMode', 'gx:Track', 'gx:MultiTrack', 'gx:coord'],
  ]),
  attributes: new Set(['name']),
  worthALine: {
    NetworkLink: ['links to other maps', 'no link is followed: save that map and import it by itself'],
    GroundOverlay: ['pictures laid on the ground', 'a picture says nothing of what stands there'],
    PhotoOverlay: ['photographs', 'a picture says nothing of what stands there'],
    Style: ['styles', 'colours and icons mean nothing to a course'],
    StyleMap: ['styles', 'colours and icons mean nothing to a course'],
    Model: ['solid models', 'not read'],
  },
};
const MOST_PROBLEMS = 20;

/** Placemarks with the folders they lie in. */
export function readKml(text: string): Result<LooseMap> {
  const reduced = reduceXml(text, KML);
  if (!reduced.ok) return reduced;
  const tree = xmlTree(reduced.value.xml);
  const problems = coordinateFaults(tree);
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
  const cut = cutLooseHeights(tree);
  const leftOut = leftOutCounter();
  for (const { what, count, why } of reduced.value.leftOut) leftOut.add(what, why, count);
  leftOut.add('heights', 'they are heights over the ground, not of the ground', cut);
  const features = flat(kmlWithFolders(tree), []).flatMap(({ feature, folders }) => {
    if (feature.geometry === null) {
      leftOut.add('placemarks', 'without a place');
      return [];
    }
    return [looseFeature(feature, feature.geometry, folders)];
  });
  const title = shortText(childText(tree.getElementsByTagName('Document')[0], 'name'), 120);
  return {
    ok: true,
    value: {
      ...(title === undefined ? {} : { name: title.replace(/\.km[lz]$/i, '') }),
      features,
      leftOut: leftOut.lines(),
      assumptions: [],
      heightsFrom: 'sea level',
    },
  };
}

type Found = Readonly<{ feature: F; folders: readonly string[] }>;

function flat(folder: Root | Folder, folders: readonly string[]): Found[] {
  return folder.children.flatMap((child): Found[] => {
    if (child.type !== 'folder') return [{ feature: child, folders }];
    const name = shortText(child.meta.name, 120);
    return flat(child, name === undefined ? folders : [...folders, name]);
  });
}

function looseFeature({ properties }: F, geometry: Geometry, folders: readonly string[]): Feature {
  const { name, description, ...rest } = properties ?? {};
  const data = Object.fromEntries(
    Object.entries(rest).filter(
      ([key, value]) => !key.startsWith('@') && key !== 'coordinateProperties' && typeof value === 'string',
    ),
  );
  const [title, words] = [shortText(name, 120), shortText(description, 1000)];
  return {
    type: 'Feature',
    properties: {
      ...data,
      ...(title === undefined ? {} : { name: title }),
      ...(words === undefined ? {} : { description: words }),
      '@from': 'placemark',
      ...(folders.length === 0 ? {} : { '@folder': folders.join(' / ') }),
    },
    geometry: single(geometry),
  };
}

/** Parts of one kind are one geometry of that kind; a placemark of several kinds stays a collection, which the user is told of. */
function single(geometry: Geometry): Geometry {
  if (geometry.type !== 'GeometryCollection') return geometry;
  const { geometries } = geometry;
  const only = <T extends Geometry['type']>(type: T) =>
    geometries.every(part => part.type === type) ? (geometries as Extract<Geometry, { type: T }>[]) : undefined;
  const [points, lines, areas] = [only('Point'), only('LineString'), only('Polygon')];
  if (points !== undefined) return { type: 'MultiPoint', coordinates: points.map(({ coordinates }) => coordinates) };
  if (lines !== undefined) return { type: 'MultiLineString', coordinates: lines.map(({ coordinates }) => coordinates) };
  if (areas !== undefined) return { type: 'MultiPolygon', coordinates: areas.map(({ coordinates }) => coordinates) };
  return geometry;
}

/** Corners are checked as text: what is no number would be dropped later without a word. */
function coordinateFaults(tree: Document): Problem[] {
  const problems: Problem[] = [];
  for (const element of [...tree.getElementsByTagName('coordinates'), ...tree.getElementsByTagName('gx:coord')]) {
    const isTrack = element.tagName === 'gx:coord';
    const tuples = isTrack
      ? [(element.textContent ?? '').trim().replace(/\s+/g, ',')]
      : tuplesOf(element.textContent ?? '');
    const bad = tuples.find(tuple => !isPlace(tuple));
    if (bad === undefined) continue;
    const owner = placemarkOf(element);
    const [lon = '', lat = '', ...more] = bad.split(',');
    const hint =
      more.length > 1
        ? '; decimals are written with a point'
        : isDegrees(degrees(lon), 90) && isDegrees(degrees(lat), 180)
          ? '; latitude and longitude look swapped'
          : '';
    problems.push({
      path: `placemark ${owner}`,
      message: `"${bad.slice(0, 60)}" is no place: write longitude,latitude in degrees (-180…180, -90…90), then if need be the height${hint}`,
    });
    if (problems.length >= MOST_PROBLEMS) break;
  }
  return problems;
}

const tuplesOf = (text: string) =>
  text
    .replace(/\s*,\s*/g, ',')
    .trim()
    .split(/\s+/)
    .filter(tuple => tuple !== '');

function isPlace(tuple: string): boolean {
  const [lon, lat, height, ...more] = tuple.split(',');
  const isHeight = height === undefined || height === '' || Number.isFinite(Number(height));
  return more.length === 0 && isDegrees(degrees(lon), 180) && isDegrees(degrees(lat), 90) && isHeight;
}

function placemarkOf(element: Element): string {
  let at: Element | null = element;
  while (at !== null && at.tagName !== 'Placemark') at = at.parentElement;
  const name = at === null ? undefined : shortText(childText(at, 'name'), 60);
  return name === undefined ? 'without a name' : `"${name}"`;
}

function childText(element: Element | null | undefined, name: string): string | undefined {
  if (element === null || element === undefined) return undefined;
  for (const child of Array.from(element.childNodes))
    if (child.nodeType === 1 && (child as Element).tagName === name) return child.textContent ?? undefined;
  return undefined;
}

/** Only "absolute" heights are heights of the ground; all others say how far over it a thing is drawn. @returns how many places lost one */
function cutLooseHeights(tree: Document): number {
  let cut = 0;
  for (const element of Array.from(tree.getElementsByTagName('coordinates'))) {
    const text = element.textContent ?? '';
    const tuples = tuplesOf(text);
    const keeps = isAbsolute(element.parentElement);
    const written = tuples.map(tuple => {
      const [lon, lat, height] = tuple.split(',');
      if (height === undefined || height === '') return `${lon},${lat}`;
      if (keeps) return tuple;
      if (Number(height) !== 0) cut++;
      return `${lon},${lat}`;
    });
    element.textContent = written.join(' ');
  }
  return cut;
}

/** Of a ring, its polygon says it. */
function isAbsolute(element: Element | null): boolean {
  for (let at = element; at !== null && at.tagName !== 'Placemark'; at = at.parentElement) {
    const mode = childText(at, 'altitudeMode') ?? childText(at, 'gx:altitudeMode');
    if (mode !== undefined) return mode.trim() === 'absolute';
  }
  return false;
}
