import proj4 from 'proj4';
import type { Result } from '../../core/units/result.ts';
import { geographicName, projectedDefinition } from './epsg-definitions.ts';

/** How the numbers of a raster's axes stand to longitude and latitude on WGS 84. */
export type CoordinateSystem = Readonly<{
  /** E.g. `EPSG:25832 (ETRS89 / UTM zone 32N)`; both ways give NaN for places the system does not reach. */
  name: string;
  isGeographic: boolean;
  toGrid(lon_deg: number, lat_deg: number): readonly [x: number, y: number];
  toLonLat(x: number, y: number): readonly [lon_deg: number, lat_deg: number];
}>;

/** The GeoKeys of a GeoTIFF that we look at, by the names of OGC 19-008r4, annex B. */
export type GeoKeys = Readonly<Record<string, unknown>>;

const USER_DEFINED = 32767;
const DEGREE = 9102;
/** Metres in a linear unit, by EPSG code. @source EPSG registry: 9001 metre, 9002 foot, 9003 US survey foot (1200/3937 m) */
const UNIT_m: Readonly<Record<number, number>> = { 9001: 1, 9002: 0.3048, 9003: 1200 / 3937 };

/** Codes of coordinate transformations (OGC 19-008r4, annex B: ProjMethodGeoKey) that a file may spell out itself. */
const TRANSVERSE_MERCATOR = 1;
const LAMBERT_2SP = 8;
const ALBERS = 11;

/** @returns the system, or one problem with path `file` that says which it is and what to do */
export function coordinateSystem(keys: GeoKeys): Result<CoordinateSystem> {
  const model = number(keys, 'GTModelTypeGeoKey');
  const projected = number(keys, 'ProjectedCSTypeGeoKey');
  const geographic = number(keys, 'GeographicTypeGeoKey');
  if (model === 3) return refused('has geocentric coordinates (X, Y, Z from the centre of the Earth)');
  if (model === 2 || (model === undefined && projected === undefined && geographic !== undefined))
    return geographicSystem(geographic, keys);
  if (projected !== undefined && projected !== USER_DEFINED) return projectedSystem(projected, keys);
  const spelt = speltOut(keys);
  if (spelt !== undefined) return projection(spelt.name, spelt.proj);
  return refused(
    projected === undefined
      ? 'does not say which coordinate system its pixels are in'
      : 'is in a coordinate system of its own making that we do not read',
  );
}

function geographicSystem(code: number | undefined, keys: GeoKeys): Result<CoordinateSystem> {
  const angular = number(keys, 'GeogAngularUnitsGeoKey') ?? DEGREE;
  if (angular !== DEGREE) return refused(`has angles in a unit other than degrees (EPSG:${angular})`);
  const name = code === undefined ? undefined : geographicName(code);
  if (name === undefined)
    return refused(`has latitudes and longitudes on a datum we do not know (${code ? `EPSG:${code}` : 'not named'})`);
  return {
    ok: true,
    value: {
      name: `EPSG:${code} (${name})`,
      isGeographic: true,
      toGrid: (lon_deg, lat_deg) => [lon_deg, lat_deg],
      toLonLat: (x, y) => [x, y],
    },
  };
}

function projectedSystem(code: number, keys: GeoKeys): Result<CoordinateSystem> {
  const known = projectedDefinition(code);
  if (known === undefined) return refused(`is in the coordinate system EPSG:${code}, which we do not know`);
  const unit = number(keys, 'ProjLinearUnitsGeoKey') ?? 9001;
  const metres = UNIT_m[unit];
  if (metres === undefined) return refused(`counts its coordinates in a unit we do not know (EPSG:${unit})`);
  return projection(`EPSG:${code} (${known.name})`, `${known.proj}${metres === 1 ? '' : ` +to_meter=${metres}`}`);
}

/** A projection whose parameters stand in the file itself, as state and county surveys write them. */
function speltOut(keys: GeoKeys): Readonly<{ name: string; proj: string }> | undefined {
  const unit = number(keys, 'ProjLinearUnitsGeoKey') ?? 9001;
  const metres = UNIT_m[unit] ?? number(keys, 'ProjLinearUnitSizeGeoKey');
  const base = number(keys, 'GeographicTypeGeoKey');
  if (metres === undefined || base === undefined || geographicName(base) === undefined) return undefined;
  const value = (...names: string[]) => names.map(name => number(keys, name)).find(found => found !== undefined);
  const shift = (...names: string[]) => (value(...names) ?? 0) * metres;
  const end = `+x_0=${shift('ProjFalseEastingGeoKey', 'ProjFalseOriginEastingGeoKey')} +y_0=${shift(
    'ProjFalseNorthingGeoKey',
    'ProjFalseOriginNorthingGeoKey',
  )} +ellps=GRS80 +towgs84=0,0,0 +to_meter=${metres} +no_defs`;
  const lat0 = value('ProjNatOriginLatGeoKey', 'ProjFalseOriginLatGeoKey', 'ProjCenterLatGeoKey');
  const lon0 = value('ProjNatOriginLongGeoKey', 'ProjFalseOriginLongGeoKey', 'ProjCenterLongGeoKey');
  if (lat0 === undefined || lon0 === undefined) return undefined;
  const origin = `+lat_0=${lat0} +lon_0=${lon0}`;
  const [lat1, lat2] = [value('ProjStdParallel1GeoKey'), value('ProjStdParallel2GeoKey')];
  const parallels = lat1 === undefined || lat2 === undefined ? undefined : `+lat_1=${lat1} +lat_2=${lat2}`;
  switch (number(keys, 'ProjCoordTransGeoKey')) {
    case TRANSVERSE_MERCATOR: {
      const k = value('ProjScaleAtNatOriginGeoKey') ?? 1;
      return { name: 'a transverse Mercator projection of its own', proj: `+proj=tmerc ${origin} +k=${k} ${end}` };
    }
    case LAMBERT_2SP:
      if (parallels === undefined) return undefined;
      return { name: 'a Lambert projection of its own', proj: `+proj=lcc ${origin} ${parallels} ${end}` };
    case ALBERS:
      if (parallels === undefined) return undefined;
      return { name: 'an Albers projection of its own', proj: `+proj=aea ${origin} ${parallels} ${end}` };
    default:
      return undefined;
  }
}

function projection(name: string, proj: string): Result<CoordinateSystem> {
  try {
    const converter = proj4('EPSG:4326', proj);
    return {
      ok: true,
      value: {
        name,
        isGeographic: false,
        toGrid: (lon_deg, lat_deg) => projected(converter.forward, lon_deg, lat_deg),
        toLonLat: (x, y) => projected(converter.inverse, x, y),
      },
    };
  } catch {
    return refused(`is in ${name}, whose numbers make no sense`);
  }
}

/** Far outside its zone a projection has no answer, which the library tells by throwing: NaN here. */
function projected(project: (at: [number, number]) => number[], x: number, y: number): readonly [number, number] {
  try {
    const [first = Number.NaN, second = Number.NaN] = project([x, y]);
    return [first, second];
  } catch {
    return [Number.NaN, Number.NaN];
  }
}

function number(keys: GeoKeys, name: string): number | undefined {
  const value = keys[name];
  const first = typeof value === 'object' && value !== null ? (value as ArrayLike<unknown>)[0] : value;
  return typeof first === 'number' && Number.isFinite(first) ? first : undefined;
}

function refused(what: string): Result<never> {
  const message = `${what}: convert it to WGS 84 (EPSG:4326) or a UTM zone, e.g. with a map program's "warp" or "reproject"`;
  return { ok: false, problems: [{ path: 'file', message }] };
}
