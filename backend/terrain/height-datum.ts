import type { GeoKeys } from './coordinate-system.ts';

/** What a model's heights count from and in which unit, as far as the file says. */
export type HeightDatum = Readonly<{
  /** In words. */ words: string /** Metres in one unit of height. */;
  unit_m: number;
}>;

/** Vertical systems public elevation models come in. @source EPSG registry, version 11.022 */
const VERTICAL: Readonly<Record<number, string>> = {
  5773: 'above the geoid EGM96',
  3855: 'above the geoid EGM2008',
  5703: 'NAVD88',
  6360: 'NAVD88',
  5702: 'NGVD29',
  5783: 'DHHN92',
  7837: 'DHHN2016',
  5621: 'EVRF2007',
  9389: 'EVRF2019',
  5720: 'NGF-IGN69',
  5701: 'Ordnance Datum Newlyn',
  5709: 'NAP',
  5613: 'RH2000',
  3900: 'N2000',
  5941: 'NN2000',
  5776: 'NN54',
  7839: 'NZVD2016',
  5711: 'AHD',
  6647: 'CGVD2013',
  5713: 'CGVD28',
  5728: 'LN02',
  4979: 'above the WGS 84 ellipsoid',
  5030: 'above the WGS 84 ellipsoid',
};
const UNIT_m: Readonly<Record<number, number>> = { 9001: 1, 9002: 0.3048, 9003: 1200 / 3937 };
/** Vertical systems counted in US survey feet whatever else the file says. */
const IN_FEET = new Set([6360]);

/**
 * @param unitWords - the band's unit as GDAL writes it, e.g. `metre`, `US survey foot`
 */
export function heightDatum(keys: GeoKeys, unitWords: string | undefined): HeightDatum {
  const code = typeof keys.VerticalCSTypeGeoKey === 'number' ? keys.VerticalCSTypeGeoKey : undefined;
  const citation = typeof keys.VerticalCitationGeoKey === 'string' ? clean(keys.VerticalCitationGeoKey) : '';
  const named = (code === undefined ? undefined : VERTICAL[code]) ?? (citation === '' ? undefined : citation);
  const unit = typeof keys.VerticalUnitsGeoKey === 'number' ? UNIT_m[keys.VerticalUnitsGeoKey] : undefined;
  const unit_m = unit ?? (code !== undefined && IN_FEET.has(code) ? 1200 / 3937 : unitOf(unitWords));
  const from = named ?? (code === undefined || code === 32767 ? 'the file does not say from where' : `EPSG:${code}`);
  return { words: `heights: ${from}`, unit_m: unit_m ?? 1 };
}

function unitOf(words: string | undefined): number | undefined {
  const text = words?.toLowerCase().trim() ?? '';
  if (/^(m|metre|meter|metres|meters)$/.test(text)) return 1;
  if (/us survey f(oo|ee)t|^us-?ft$|ftus/.test(text)) return 1200 / 3937;
  if (/^(ft|foot|feet|international foot)$/.test(text)) return 0.3048;
  return undefined;
}

/** One line of plain text: the file may say anything. */
function clean(text: string): string {
  return Array.from(text.toWellFormed())
    .filter(character => !/\p{C}/u.test(character))
    .join('')
    .replaceAll('|', ' ')
    .trim()
    .slice(0, 80);
}
