import {
  CSV_FIELD_NAMES,
  CSV_FIELDS,
  type CsvField,
  type CsvUnit,
  columnOfHeader,
  headerOfColumn,
  unitsOf,
} from '../../core/player/csv-columns.ts';
import { keyed } from '../frame/keyed.ts';
import type { CsvPreview } from './csv-import.tsx';

const NOTHING = '';
const UNIT_WORDS: Readonly<Record<CsvUnit, string>> = {
  m: 'metres',
  ft: 'feet',
  yd: 'yards',
  cm: 'centimetres',
  in: 'inches',
  mps: 'm/s',
  kmh: 'km/h',
  mph: 'mph',
  kn: 'knots',
  deg: 'degrees',
};

/** "distance along the line, feet" for `distance_ft`. */
export function meaningWords(meaning: string): string {
  const column = columnOfHeader(meaning);
  if (column === null) return meaning;
  const { words } = CSV_FIELDS[column.field];
  return column.unit === null || column.unit === 'deg' ? words : `${words}, ${UNIT_WORDS[column.unit]}`;
}

type CsvColumnsProps = Readonly<{ preview: CsvPreview; onColumns: (columns: (string | null)[]) => void }>;

/** What each column holds and in which unit; anything may be left out. */
export function CsvColumns({ preview, onColumns }: CsvColumnsProps) {
  const meanings = preview.columns.map(({ meaning }) => (meaning === null ? null : columnOfHeader(meaning)));
  const say = (column: number, header: string | null) =>
    onColumns(preview.columns.map(({ meaning }, i) => (i === column ? header : meaning)));
  return (
    <fieldset className="csv-columns">
      <legend>What the columns hold</legend>
      <ul>
        {keyed(preview.columns).map(({ key, item }, i) => {
          const meaning = meanings[i] ?? null;
          const units = meaning === null ? [] : unitsOf(meaning.field);
          return (
            <li key={key}>
              <span className="csv-name">{item.name === '' ? `column ${i + 1}` : item.name}</span>
              <select
                aria-label={`Column ${i + 1}, ${item.name}, holds`}
                value={meaning?.field ?? NOTHING}
                onChange={event => {
                  const field = event.target.value as CsvField | typeof NOTHING;
                  if (field === NOTHING) return say(i, null);
                  const known = unitsOf(field);
                  const kept = meaning !== null && known.includes(meaning.unit as CsvUnit) ? meaning.unit : null;
                  say(i, headerOfColumn({ field, unit: kept ?? (known.length === 1 ? known[0]! : null) }));
                }}
              >
                <option value={NOTHING}>nothing of use</option>
                {CSV_FIELD_NAMES.map(field => (
                  <option key={field} value={field}>
                    {CSV_FIELDS[field].words}
                  </option>
                ))}
              </select>
              {meaning !== null && units.length > 1 && (
                <select
                  aria-label={`Column ${i + 1}, ${item.name}, unit`}
                  value={meaning.unit ?? NOTHING}
                  onChange={event => {
                    const unit = event.target.value;
                    say(i, headerOfColumn({ field: meaning.field, unit: unit === NOTHING ? null : (unit as CsvUnit) }));
                  }}
                >
                  {meaning.unit === null && <option value={NOTHING}>unit?</option>}
                  {units.map(unit => (
                    <option key={unit} value={unit}>
                      {UNIT_WORDS[unit]}
                    </option>
                  ))}
                </select>
              )}
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}
