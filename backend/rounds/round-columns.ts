/** What a column of a round table holds. Lengths may end in `_ft` instead of `_m`. */
export const ROUND_COLUMNS = [
  'date',
  'course',
  'player',
  'layout',
  'wind_mps',
  'wind_from_deg',
  'gust_mps',
  'real_wind_mps',
  'real_wind_from_deg',
  'real_gust_mps',
  'hole',
  'throw',
  'disc',
  'hand',
  'shape',
  'height',
  'power',
  'aim_deg',
  'hyzer_deg',
  'launch_deg',
  'rest_east_m',
  'rest_north_m',
  'rest_lon',
  'rest_lat',
  'rest_to_basket_m',
  'rest_side_m',
  'rest_beyond',
  'lie_east_m',
  'lie_north_m',
  'lie_lon',
  'lie_lat',
  'lie_to_basket_m',
  'lie_side_m',
  'lie_beyond',
  'hit',
  'penalties',
  'holed',
] as const;
export type RoundColumn = (typeof ROUND_COLUMNS)[number];

/** The column a header names, and metres in one of its units; null when it is none. */
export function roundColumn(header: string): Readonly<{ column: RoundColumn; unit_m: number }> | null {
  const name = header
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  const plain = ALIASES[name] ?? name;
  if (isColumn(plain)) return { column: plain, unit_m: 1 };
  const inMetres = plain.replace(/_ft$/, '_m');
  return plain.endsWith('_ft') && isColumn(inMetres) ? { column: inMetres, unit_m: 0.3048 } : null; // exact, NIST SP 811
}

const isColumn = (name: string): name is RoundColumn => (ROUND_COLUMNS as readonly string[]).includes(name);

const ALIASES: Readonly<Record<string, string>> = {
  hole_ref: 'hole',
  disc_id: 'disc',
  line: 'shape',
  penalty: 'penalties',
  to_basket_m: 'rest_to_basket_m',
  to_basket_ft: 'rest_to_basket_ft',
  side_m: 'rest_side_m',
  side_ft: 'rest_side_ft',
  beyond: 'rest_beyond',
  east_m: 'rest_east_m',
  north_m: 'rest_north_m',
  lon: 'rest_lon',
  lat: 'rest_lat',
};
