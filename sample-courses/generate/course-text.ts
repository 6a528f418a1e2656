import type { Feature, Geometry, Position } from 'geojson';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { localFrame, toLonLat } from '../../core/geometry/local-frame.ts';
import type { MapItem } from './map-item.ts';

export type Site = Readonly<{
  originLon_deg: number;
  originLat_deg: number;
  /** Turns the drawing counter-clockwise, so that nothing lies north–south by accident. */
  turn_deg: number;
  /** Height of the ground at a place of the drawing. */
  height_m: (p: LocalPoint) => number;
}>;

/** The items as the text of a GeoJSON file, one feature a line. */
export function courseText(items: readonly MapItem[], site: Site): string {
  const lines = items.map((item, i) => JSON.stringify(toFeature(item, site, i)));
  return `{"type":"FeatureCollection","features":[\n${lines.join(',\n')}\n]}\n`;
}

function toFeature(item: MapItem, site: Site, index: number): Feature {
  const properties = item.nested
    ? { type: item.form === 'point' ? 'node' : 'way', id: 9_000_001 + index, tags: item.tags, meta: {} }
    : { ...item.tags };
  return { type: 'Feature', properties, geometry: toGeometry(item, site) };
}

function toGeometry(item: MapItem, site: Site): Geometry {
  const place = (p: LocalPoint) => toPosition(p, site, item.withHeight === true);
  if (item.form === 'point') return { type: 'Point', coordinates: place(item.points[0]!) };
  if (item.form === 'line') return { type: 'LineString', coordinates: item.points.map(place) };
  const rings = [wound(item.points, 1), ...(item.cutouts ?? []).map(ring => wound(ring, -1))];
  return { type: 'Polygon', coordinates: rings.map(ring => [...ring, ring[0]!].map(place)) };
}

/** The ring counter-clockwise (sense 1) or clockwise (sense −1): RFC 7946 §3.1.6. */
function wound(ring: readonly LocalPoint[], sense: 1 | -1): readonly LocalPoint[] {
  const twiceArea = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.sign(twiceArea) === sense ? ring : ring.toReversed();
}

function toPosition(p: LocalPoint, site: Site, withHeight: boolean): Position {
  const turn = (site.turn_deg * Math.PI) / 180;
  const east_m = p[0] * Math.cos(turn) - p[1] * Math.sin(turn);
  const north_m = p[0] * Math.sin(turn) + p[1] * Math.cos(turn);
  const [lon, lat] = toLonLat(localFrame(site.originLon_deg, site.originLat_deg), [east_m, north_m]);
  // 7 decimals are about a centimetre: RFC 7946 §11.2
  const position = [Number(lon.toFixed(7)), Number(lat.toFixed(7))];
  return withHeight ? [...position, Number(site.height_m(p).toFixed(2))] : position;
}
