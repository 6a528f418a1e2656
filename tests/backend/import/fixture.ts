import { readFileSync } from 'node:fs';

const FOLDER = new URL('../../fixtures/import/', import.meta.url);

/** The same three invented holes in every kind of file. */
export const FIXTURES = [
  'lantern-hollow.gpx',
  'lantern-hollow.kml',
  'lantern-hollow.kmz',
  'lantern-hollow.osm',
  'lantern-hollow-overpass.json',
  'lantern-hollow-drawn.geojson',
] as const;
export type Fixture = (typeof FIXTURES)[number];

export const fixture = (name: Fixture): Uint8Array => readFileSync(new URL(name, FOLDER));
export const fixtureText = (name: Fixture): string => readFileSync(new URL(name, FOLDER), 'utf8');
export const fixturePath = (name: Fixture): string => new URL(name, FOLDER).pathname;
