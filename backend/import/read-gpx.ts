import { gpx } from '@tmcw/togeojson';
import type { Feature } from 'geojson';
import type { Result } from '../../core/units/result.ts';
import { degrees, isDegrees } from './degrees.ts';
import { type LooseMap, shortText } from './loose-map.ts';
import { reduceXml, type XmlVocabulary } from './reduce-xml.ts';
import { xmlTree } from './xml-tree.ts';

/** GPX 1.0 and 1.1. Times, sensors and links mean nothing to a course. */
const GPX: XmlVocabulary = {
  root: 'gpx',
  namespaces: ' xmlns="http://www.topografix.com/GPX/1/1" version="1.1"',
  kept: new Set([
    ...['gpx', 'metadata', 'wpt', 'rte', 'rtept', 'trk', 'trkseg', 'trkpt'],
    ...['name', 'cmt', 'desc', 'sym', 'type', 'ele'],
  ]),
  attributes: new Set(['lat', 'lon']),
  worthALine: {},
  fault: (name, attributes) => {
    if (!/^(?:wpt|rtept|trkpt)$/.test(name)) return undefined;
    const [lat, lon] = [degrees(attributes.get('lat')), degrees(attributes.get('lon'))];
    if (isDegrees(lat, 90) && isDegrees(lon, 180)) return undefined;
    const hint = isDegrees(lat, 180) && isDegrees(lon, 90) ? ': they look swapped' : '';
    return `this ${name} must have lat from -90 to 90 and lon from -180 to 180 degrees, but has lat="${attributes.get('lat') ?? ''}" lon="${attributes.get('lon') ?? ''}"${hint}`;
  },
};

const FROM: Readonly<Record<string, string>> = { rte: 'route', trk: 'track' };

/** Waypoints, routes and tracks. GPX knows no areas and no meanings. */
export function readGpx(text: string): Result<LooseMap> {
  const reduced = reduceXml(text, GPX);
  if (!reduced.ok) return reduced;
  const tree = xmlTree(reduced.value.xml);
  const features = gpx(tree).features.map((feature): Feature => {
    const properties = feature.properties ?? {};
    const name = shortText(properties.name, 120);
    const notes = [properties.desc, properties.cmt].filter(words => words !== undefined);
    const description = shortText([...new Set(notes)].join('; '), 1000);
    const symbol = shortText(properties.sym, 60);
    return {
      type: 'Feature',
      properties: {
        ...(name === undefined ? {} : { name }),
        ...(description === undefined ? {} : { description }),
        ...(symbol === undefined ? {} : { '@symbol': symbol }),
        '@from': FROM[String(properties._gpxType)] ?? 'waypoint',
      },
      geometry: feature.geometry,
    };
  });
  const title = shortText(tree.getElementsByTagName('metadata')[0]?.getElementsByTagName('name')[0]?.textContent, 120);
  return {
    ok: true,
    value: {
      ...(title === undefined ? {} : { name: title }),
      features,
      leftOut: reduced.value.leftOut,
      assumptions: [],
      heightsFrom: 'sea level',
    },
  };
}
