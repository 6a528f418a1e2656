import type { Place, RoundFile, RoundThrow } from '../../core/review/round-file.ts';
import { ROUND_COLUMNS, type RoundColumn } from './round-columns.ts';

type Cells = Partial<Record<RoundColumn, string | number | boolean | undefined>>;

/** A round as a table, one row a throw; air other than the wind, limits and the note are left out (the JSON file has them). */
export function writeRoundCsv(round: RoundFile): string {
  const rows = round.holes.flatMap(({ ref, throws }) =>
    throws.map((t, i) => ({ hole: ref, throw: i + 1, ...cellsOf(t) })),
  );
  const [first, ...rest] = rows;
  const all: Cells[] = first === undefined ? [] : [{ ...wideOf(round), ...first }, ...rest];
  const used = ROUND_COLUMNS.filter(column => all.some(row => textOf(row[column]) !== ''));
  const lines = all.map(row => used.map(column => quoted(textOf(row[column]))).join(','));
  return `${[used.join(','), ...lines].join('\n')}\n`;
}

function wideOf({ date, course, player, layout, day, realDay }: RoundFile): Cells {
  return {
    date,
    course,
    player,
    layout,
    wind_mps: day?.wind?.speed_mps,
    wind_from_deg: day?.wind?.from_deg,
    gust_mps: day?.wind?.gust_mps,
    real_wind_mps: realDay?.wind?.speed_mps,
    real_wind_from_deg: realDay?.wind?.from_deg,
    real_gust_mps: realDay?.wind?.gust_mps,
  };
}

function cellsOf(t: RoundThrow): Cells {
  return {
    disc: t.discId,
    hand: t.hand,
    shape: t.shape,
    height: t.height,
    power: t.power,
    aim_deg: t.aimBearing_deg,
    hyzer_deg: t.hyzer_deg,
    launch_deg: t.launch_deg,
    ...placeCells('rest', t.rest),
    ...placeCells('lie', t.lie),
    hit: t.hit,
    penalties: t.penalties?.map(({ kind, throws }) => (throws === undefined ? kind : `${kind} ${throws}`)).join(' + '),
    holed: t.holed,
  };
}

function placeCells(what: 'rest' | 'lie', place: Place | undefined): Cells {
  if (place === undefined) return {};
  if ('lonLat' in place) return { [`${what}_lon`]: place.lonLat[0], [`${what}_lat`]: place.lonLat[1] };
  if ('east_m' in place) return { [`${what}_east_m`]: place.east_m, [`${what}_north_m`]: place.north_m };
  return {
    [`${what}_to_basket_m`]: place.toBasket_m,
    [`${what}_side_m`]: place.side_m,
    [`${what}_beyond`]: place.isBeyond,
  };
}

const textOf = (value: string | number | boolean | undefined) =>
  value === undefined ? '' : typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
const quoted = (text: string) => (/[",;\t\n\r]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
