import type { WalkedHoleEntry } from '../../../core/geometry/walked-hole/walked-hole-input.ts';
import type { Problem, Result } from '../../../core/units/result.ts';
import { parseBearing } from '../../wind/parse-bearing.ts';

/** One thing met on the way, its numbers and choices as typed. */
export type Row = Readonly<Record<string, string>>;

/** What is typed into the form, before it is a hole. */
export type WalkTexts = Readonly<{
  ref: string;
  name: string;
  par: string;
  unit: 'paces' | 'm' | 'ft';
  /** Metres. */
  pace: string;
  sizes: 'm' | 'ft';
  length: string;
  bearing: string;
  rise: string;
  bends: readonly Row[];
  ceilings: readonly Row[];
  gaps: readonly Row[];
  trees: readonly Row[];
  out: readonly Row[];
}>;

/** @returns the hole as the backend takes it, or what cannot be read; paths as in the hole */
export function walkedEntry(texts: WalkTexts): Result<WalkedHoleEntry> {
  const problems: Problem[] = [];
  const number = (path: string, text: string | undefined): number => {
    const clean = (text ?? '')
      .trim()
      .replace(/^−/, '-')
      .replace(/^([+-]?\d*),(\d+)$/, '$1.$2');
    const value = clean === '' ? Number.NaN : Number(clean);
    if (Number.isFinite(value)) return value;
    problems.push({ path, message: clean === '' ? 'is empty: write a number' : `"${text}" is no number` });
    return 0;
  };
  const maybe = (path: string, text: string | undefined) =>
    (text ?? '').trim() === '' ? undefined : number(path, text);
  const rows = <T>(name: string, list: readonly Row[], read: (row: Row, path: string) => T): T[] =>
    list.map((row, i) => read(row, `${name}[${i}]`));
  const bearing = parseBearing(texts.bearing);
  if (!bearing.ok)
    problems.push({
      path: 'bearing_deg',
      message: 'write where the basket lies: degrees from north, like 250, or WSW',
    });
  const par = maybe('par', texts.par);
  const rise = maybe('rise', texts.rise);
  const entry: WalkedHoleEntry = {
    ref: texts.ref,
    name: texts.name,
    ...(par !== undefined && { par }),
    distances:
      texts.unit === 'paces' ? { unit: 'paces', pace_m: number('distances.pace_m', texts.pace) } : { unit: texts.unit },
    sizes: texts.sizes,
    length: number('length', texts.length),
    bearing_deg: bearing.ok ? bearing.value : 0,
    ...(rise !== undefined && { rise }),
    bends: rows('bends', texts.bends, (row, path) => ({
      at: number(`${path}.at`, row.at),
      turn_deg: (row.side === 'left' ? -1 : 1) * number(`${path}.turn_deg`, row.turn),
    })),
    ceilings: rows('ceilings', texts.ceilings, (row, path) => ({
      at: number(`${path}.at`, row.at),
      clearance: number(`${path}.clearance`, row.clearance),
      top: maybe(`${path}.top`, row.top),
    })),
    gaps: rows('gaps', texts.gaps, (row, path) => ({
      at: number(`${path}.at`, row.at),
      width: number(`${path}.width`, row.width),
      high: maybe(`${path}.high`, row.high),
    })),
    trees: rows('trees', texts.trees, (row, path) => ({
      at: number(`${path}.at`, row.at),
      side: row.side === 'left' ? 'left' : 'right',
      aside: number(`${path}.aside`, row.aside),
      height: maybe(`${path}.height`, row.height),
      branches: maybe(`${path}.branches`, row.branches),
    })),
    out: rows('out', texts.out, (row, path) => ({
      what: row.what === 'water' ? 'water' : 'outOfBounds',
      side: row.side as 'left',
      from: maybe(`${path}.from`, row.from),
      to: maybe(`${path}.to`, row.to),
      away: maybe(`${path}.away`, row.away),
    })),
  };
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: entry };
}

/** "46.916, 11.247", latitude first, as phones show it. @returns longitude, latitude */
export function readPlace(text: string): Result<[lon_deg: number, lat_deg: number]> {
  const [lat, lon, ...more] = text
    .trim()
    .split(/[,;\s]+/)
    .map(part => Number(part.replace('°', '').replace(/^−/, '-')));
  const isPlace =
    more.length === 0 && lat !== undefined && lon !== undefined && Math.abs(lat) <= 85 && Math.abs(lon) <= 180;
  if (isPlace) return { ok: true, value: [lon, lat] };
  const message = 'write latitude and longitude in degrees, like 46.916, 11.247 (south and west negative)';
  return { ok: false, problems: [{ path: 'start', message }] };
}
