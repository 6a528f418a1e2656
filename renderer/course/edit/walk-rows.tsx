import { Button } from 'react-aria-components';
import { keyed } from '../../frame/keyed.ts';
import type { Row } from './walk-numbers.ts';

/** One number or choice of a row, as typed. */
export type RowField = Readonly<{
  key: string;
  label: string;
  choices?: Readonly<Record<string, string>>;
}>;

type WalkRowsProps = Readonly<{
  title: string;
  /** "Add a bend". */
  add: string;
  /** What one of them is called, for screen readers. */
  one: string;
  fields: readonly RowField[];
  rows: readonly Row[];
  onRows: (rows: readonly Row[]) => void;
}>;

/** Things met on the way, one line each. */
export function WalkRows({ title, add, one, fields, rows, onRows }: WalkRowsProps) {
  const empty = Object.fromEntries(fields.map(({ key, choices }) => [key, choices ? Object.keys(choices)[0]! : '']));
  return (
    <fieldset className="walk-rows">
      <legend>{title}</legend>
      {keyed(rows).map(({ key, item: row }, i) => {
        return (
          <div key={key} className="walk-row">
            {fields.map(field => (
              <RowCell
                key={field.key}
                field={field}
                value={row[field.key] ?? ''}
                onValue={value => onRows(rows.with(i, { ...row, [field.key]: value }))}
              />
            ))}
            <Button
              className="small-button"
              aria-label={`Take ${one} ${i + 1} out`}
              onPress={() => onRows(rows.toSpliced(i, 1))}
            >
              ×
            </Button>
          </div>
        );
      })}
      <Button className="small-button" onPress={() => onRows([...rows, empty])}>
        {add}
      </Button>
    </fieldset>
  );
}

type RowCellProps = Readonly<{ field: RowField; value: string; onValue: (value: string) => void }>;

function RowCell({ field: { label, choices }, value, onValue }: RowCellProps) {
  if (choices === undefined)
    return (
      <label className="plain-field">
        <span>{label}</span>
        <input type="text" inputMode="decimal" value={value} onChange={event => onValue(event.target.value)} />
      </label>
    );
  return (
    <label className="plain-field">
      <span>{label}</span>
      <select value={value} onChange={event => onValue(event.target.value)}>
        {Object.entries(choices).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
