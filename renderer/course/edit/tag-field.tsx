import type { KindField } from '../../../core/course/edit/kinds.ts';
import { parseOsmLength } from '../../../core/course/osm-length.ts';
import { formatLength } from '../../../core/units/length.ts';
import type { Result } from '../../../core/units/result.ts';
import type { UnitsChoice } from '../../../core/units/units-choice.ts';
import { TypedField } from '../../shell/typed-field.tsx';
import { usePlanner } from '../../state/planner.tsx';
import { readLength } from '../../words/read-quantity.ts';

type TagFieldProps = Readonly<{
  field: KindField;
  /** As the file has it. */
  value: string | undefined;
  /** As it goes into the file: metres as a number; null takes the tag away. */
  onValue: (value: string | number | null) => void;
}>;

/** One tag of a thing, in the way its kind takes it. */
export function TagField({ field, value, onValue }: TagFieldProps) {
  const { settings } = usePlanner();
  const { label, takes, choices = [], must } = field;
  if (takes === 'choice')
    return (
      <label className="plain-field">
        <span>{label}</span>
        <select value={value ?? ''} onChange={event => onValue(event.target.value === '' ? null : event.target.value)}>
          {(!must || value === undefined) && <option value="">not said</option>}
          {value !== undefined && !choices.includes(value) && <option value={value}>{value}</option>}
          {choices.map(choice => (
            <option key={choice} value={choice}>
              {choice.replaceAll('_', ' ').replaceAll(';', ', ')}
            </option>
          ))}
        </select>
      </label>
    );
  return (
    <TypedField
      label={label}
      text={takes === 'length' ? lengthText(value, settings) : (value ?? '')}
      read={text => (text.trim() === '' ? { ok: true, value: null } : readTag(text.trim(), takes, settings))}
      onValue={onValue}
    />
  );
}

/** In the player's unit; what cannot be read stands as it is. */
function lengthText(value: string | undefined, settings: Pick<UnitsChoice, 'length'>): string {
  if (value === undefined) return '';
  const read = parseOsmLength(value);
  return read.ok ? formatLength(read.length_m, settings, 2).replace(/\.?0+ /, ' ') : value;
}

function readTag(
  text: string,
  takes: KindField['takes'],
  settings: Pick<UnitsChoice, 'length'>,
): Result<string | number | null> {
  if (takes === 'length') return readLength(text, settings);
  if (takes === 'wholeNumber')
    return /^\d+$/.test(text)
      ? { ok: true, value: Number(text) }
      : { ok: false, problems: [{ path: 'number', message: 'write a whole number' }] };
  return { ok: true, value: text };
}
