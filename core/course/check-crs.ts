import type { FeatureCollection } from 'geojson';
import type { Notes } from './notes.ts';

/** RFC 7946 §4 knows only WGS 84 and dropped the `crs` member; older tools still write it, and other systems with it. */
export function checkCrs(source: FeatureCollection, notes: Notes): void {
  const crs = (source as { crs?: unknown }).crs;
  if (crs === undefined || crs === null) return;
  const name = (crs as { properties?: { name?: unknown } }).properties?.name;
  const text = typeof name === 'string' ? name : JSON.stringify(crs);
  if (/(?:CRS:?84|EPSG:+4326)$/i.test(text)) {
    notes.assumptions.push({
      path: 'crs',
      message: `crs ${text} is WGS 84: positions are read as [longitude, latitude], as RFC 7946 has it`,
    });
    return;
  }
  notes.problems.push({
    path: 'crs',
    message: `crs ${text} is not WGS 84: export the course again in WGS 84 (EPSG:4326), longitude first, without "crs"`,
  });
}
