import { METERS_PER_FOOT } from '../units/length.ts';
import { MPS_PER } from '../units/speed.ts';

/** What a column of a throws table can hold. `straight`: measured straight to the disc; `left`: sideways with left positive. */
export type CsvField =
  | 'session'
  | 'date'
  | 'disc'
  | 'hand'
  | 'shape'
  | 'power'
  | 'distance'
  | 'straight'
  | 'side'
  | 'left'
  | 'wind'
  | 'windFrom'
  | 'windHeight'
  | 'bearing'
  | 'rise'
  | 'surface'
  | 'note';

export type LengthUnit = 'm' | 'ft' | 'yd' | 'cm' | 'in';
export type SpeedUnit = 'mps' | 'kmh' | 'mph' | 'kn';
export type CsvUnit = LengthUnit | SpeedUnit | 'deg';
type Kind = 'text' | 'length' | 'speed' | 'angle';

/** A column's meaning; `unit` is null where it holds no quantity, or where nobody has said the unit. */
export type CsvColumn = Readonly<{ field: CsvField; unit: CsvUnit | null }>;

/** One of each unit in SI. @source NIST SP 811 (2008), App. B.8, through core/units; all exact */
export const LENGTH_M: Readonly<Record<LengthUnit, number>> = {
  m: 1,
  ft: METERS_PER_FOOT,
  yd: 3 * METERS_PER_FOOT,
  cm: 0.01,
  in: METERS_PER_FOOT / 12,
};
export const SPEED_MPS: Readonly<Record<SpeedUnit, number>> = MPS_PER;

/** The units to choose from for each kind of column. */
const UNITS_OF: Readonly<Record<Kind, readonly CsvUnit[]>> = {
  text: [],
  length: ['m', 'ft', 'yd', 'cm', 'in'],
  speed: ['mps', 'kmh', 'mph', 'kn'],
  angle: ['deg'],
};

type FieldFacts = Readonly<{ kind: Kind; words: string; names: readonly string[] }>;

/** In the order an exported table has them. `names`: what a header may call it, in lower-case words. */
export const CSV_FIELDS: Readonly<Record<CsvField, FieldFacts>> = {
  session: { kind: 'text', words: 'session', names: ['session', 'session number', 'set'] },
  date: { kind: 'text', words: 'date', names: ['date', 'day'] },
  disc: { kind: 'text', words: 'disc', names: ['disc', 'disc id', 'disc name', 'disk'] },
  hand: { kind: 'text', words: 'hand', names: ['hand', 'throw hand', 'style'] },
  shape: { kind: 'text', words: 'shape', names: ['shape', 'line', 'angle of release'] },
  power: { kind: 'text', words: 'power', names: ['power', 'effort'] },
  distance: {
    kind: 'length',
    words: 'distance along the line',
    names: ['distance', 'dist', 'length', 'along', 'distance along', 'distance at rest'],
  },
  straight: {
    kind: 'length',
    words: 'distance straight to the disc',
    names: ['straight', 'straight distance', 'direct', 'tape'],
  },
  side: {
    kind: 'length',
    words: 'side, right positive',
    names: ['side', 'right', 'sideways', 'offset', 'lateral', 'off line', 'finish'],
  },
  left: { kind: 'length', words: 'side, left positive', names: ['left', 'side left'] },
  wind: { kind: 'speed', words: 'wind speed', names: ['wind', 'wind speed'] },
  windFrom: { kind: 'angle', words: 'wind from', names: ['wind from', 'wind direction', 'wind dir'] },
  windHeight: { kind: 'length', words: 'height of the wind', names: ['wind height'] },
  bearing: {
    kind: 'angle',
    words: 'bearing of the line',
    names: ['bearing', 'line bearing', 'throw bearing', 'direction'],
  },
  rise: { kind: 'length', words: 'rise over the throw', names: ['rise', 'slope rise', 'climb'] },
  surface: { kind: 'text', words: 'surface', names: ['surface', 'ground'] },
  note: { kind: 'text', words: 'note', names: ['note', 'notes', 'remark', 'comment'] },
};
export const CSV_FIELD_NAMES = Object.keys(CSV_FIELDS) as readonly CsvField[];

export const unitsOf = (field: CsvField): readonly CsvUnit[] => UNITS_OF[CSV_FIELDS[field].kind];

const UNIT_NAMES: ReadonlyMap<string, CsvUnit> = new Map<string, CsvUnit>([
  ...(['m', 'metre', 'metres', 'meter', 'meters'] as const).map(name => [name, 'm'] as const),
  ...(['ft', 'foot', 'feet'] as const).map(name => [name, 'ft'] as const),
  ...(['yd', 'yds', 'yard', 'yards'] as const).map(name => [name, 'yd'] as const),
  ...(['cm', 'centimetres', 'centimeters'] as const).map(name => [name, 'cm'] as const),
  ...(['in', 'inch', 'inches'] as const).map(name => [name, 'in'] as const),
  ...(['mps', 'm/s'] as const).map(name => [name, 'mps'] as const),
  ...(['kmh', 'km/h', 'kph'] as const).map(name => [name, 'kmh'] as const),
  ['mph', 'mph'],
  ...(['kn', 'kt', 'kts', 'knots'] as const).map(name => [name, 'kn'] as const),
  ...(['deg', 'degrees', '°'] as const).map(name => [name, 'deg'] as const),
]);

/**
 * What a header calls its column: `distance_ft`, `Distance (ft)`, `windFrom_deg`, `side`.
 * @returns null when it is not known; `unit` null when it names none, or one that does not suit
 */
export function columnOfHeader(header: string): CsvColumn | null {
  const words = header
    .normalize('NFKC')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}/°]+/gu, ' ')
    .trim()
    .split(' ');
  const whole = fieldNamed(words.join(' '));
  if (whole !== null) return { field: whole, unit: onlyUnit(whole) };
  const unit = UNIT_NAMES.get(words.at(-1)!);
  const field = unit === undefined ? null : fieldNamed(words.slice(0, -1).join(' '));
  if (unit === undefined || field === null) return null;
  return { field, unit: unitsOf(field).includes(unit) ? unit : onlyUnit(field) };
}

/** The header an exported table gives such a column, which `columnOfHeader` reads again. */
export const headerOfColumn = ({ field, unit }: CsvColumn): string => (unit === null ? field : `${field}_${unit}`);

function fieldNamed(name: string): CsvField | null {
  return CSV_FIELD_NAMES.find(field => CSV_FIELDS[field].names.includes(name)) ?? null;
}

/** Angles have one unit only: it need not be named. */
function onlyUnit(field: CsvField): CsvUnit | null {
  const units = unitsOf(field);
  return units.length === 1 ? units[0]! : null;
}
