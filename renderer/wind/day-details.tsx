import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { DayInput } from '../../core/air/day-input.ts';
import { parseLength_m } from '../../core/units/length.ts';
import type { Result } from '../../core/units/result.ts';
import { parseTemperature_C } from '../../core/units/temperature.ts';
import { TypedField } from '../shell/typed-field.tsx';
import { useUnits } from '../words/use-units.ts';

type DayDetailsProps = Readonly<{ day: DayInput; onSet: (day: DayInput, before: DayInput) => void }>;

const HEIGHTS_m = { forecast: 10, head: 1.5 };

/** An empty field means "not given"; anything else must read as the quantity. */
const orNothing =
  (read: (text: string) => Result<number>) =>
  (text: string): Result<number | null> =>
    /^\s*(not given)?\s*$/i.test(text) ? { ok: true, value: null } : read(text);

/** Where the wind was measured, temperature, height above the sea, and a METAR line; all optional. */
export function DayDetails({ day, onSet }: DayDetailsProps) {
  const units = useUnits();
  const [metar, setMetar] = useState(day.metar ?? '');
  const set = <K extends keyof DayInput>(key: K, value: DayInput[K] | null) => {
    const { [key]: _, ...rest } = day;
    onSet(value === null ? rest : { ...rest, [key]: value }, day);
  };
  return (
    <details className="day-details">
      <summary>
        More about the day
        <span className="soft">
          {' '}
          {[
            day.temperature_C === undefined ? null : units.temperature(day.temperature_C),
            day.altitude_m === undefined ? null : `${units.length(day.altitude_m, 0)} up`,
            day.metar === undefined ? null : 'METAR',
          ]
            .filter(Boolean)
            .join(', ')}
        </span>
      </summary>
      <div className="day-fields">
        <label className="plain-field">
          <span>Wind measured</span>
          <select
            value={(day.wind?.height_m ?? HEIGHTS_m.forecast) < 5 ? 'head' : 'forecast'}
            onChange={event =>
              onSet(
                { ...day, wind: { ...day.wind, height_m: HEIGHTS_m[event.target.value as keyof typeof HEIGHTS_m] } },
                day,
              )
            }
          >
            <option value="forecast">by a forecast, 10 m up</option>
            <option value="head">by hand, head height</option>
          </select>
        </label>
        <TypedField
          label="Temperature"
          text={day.temperature_C === undefined ? 'not given' : units.temperature(day.temperature_C)}
          read={orNothing(parseTemperature_C)}
          onValue={value => set('temperature_C', value)}
        />
        <TypedField
          label="Height above the sea"
          text={day.altitude_m === undefined ? 'not given' : units.length(day.altitude_m, 0)}
          read={orNothing(text => parseLength_m(text, 'height'))}
          onValue={value => set('altitude_m', value)}
        />
        <label className="plain-field wide">
          <span>METAR line from an airfield nearby</span>
          <input
            type="text"
            value={metar}
            placeholder="METAR …"
            onChange={event => setMetar(event.target.value)}
            onKeyDown={event => event.key === 'Enter' && set('metar', metar.trim() || null)}
          />
        </label>
        <Button
          className="small-button"
          onPress={() => {
            // A report fills the wind in, so a wind set before steps back.
            const { wind: _, metar: __, ...rest } = day;
            onSet(metar.trim() === '' ? rest : { ...rest, metar: metar.trim() }, day);
          }}
        >
          Use METAR
        </Button>
      </div>
    </details>
  );
}
