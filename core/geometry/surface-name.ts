import type { SurfaceName } from './hole-map.ts';

/** OpenStreetMap `surface` values by how a disc skids on them; our own grouping. */
const BY_TAG: Readonly<Record<string, SurfaceName>> = {
  grass: 'turf',
  artificial_turf: 'turf',
  turf: 'turf',
  dirt: 'hardpan',
  earth: 'hardpan',
  ground: 'hardpan',
  clay: 'hardpan',
  hardpan: 'hardpan',
  compacted: 'hardpan',
  fine_gravel: 'hardpan',
  gravel: 'hardpan',
  paved: 'hardpan',
  asphalt: 'hardpan',
  concrete: 'hardpan',
  rock: 'hardpan',
  long_grass: 'longGrass',
  longGrass: 'longGrass',
  meadow: 'longGrass',
  heath: 'longGrass',
  rough: 'longGrass',
  woodchips: 'longGrass',
  mulch: 'longGrass',
  sand: 'longGrass',
  mud: 'longGrass',
  snow: 'longGrass',
};

/** The ground behind a `surface` tag; undefined when the word says nothing we know. */
export function surfaceName(tag: string): SurfaceName | undefined {
  return BY_TAG[tag];
}
