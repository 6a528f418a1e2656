import type { DayInput } from '../../core/air/day-input.ts';
import type { Result } from '../../core/units/result.ts';
import { parseSpeed_mps } from '../../core/units/speed.ts';
import { useUnits } from '../words/use-units.ts';
import { compassPoint, feltWind } from '../words/wind-words.ts';
import { windOf, withWind } from './day-words.ts';
import { parseBearing } from './parse-bearing.ts';
import { TypedField } from './typed-field.tsx';
import { WindDial } from './wind-dial.tsx';

type WindSetterProps = Readonly<{
  label?: string;
  day: DayInput;
  holeBearing_deg: number | null;
  /** While it changes. */
  onDrag: (day: DayInput) => void;
  /** It stays so; `before` is the day it was set from. */
  onSet: (day: DayInput, before: DayInput) => void;
}>;

const STRONGEST_mps = 40;
const STRONGEST_GUST_mps = 70;

const withMost = (most: number, path: string, result: Result<number>): Result<number> =>
  result.ok && (result.value < 0 || result.value > most)
    ? { ok: false, problems: [{ path, message: `must lie between 0 and ${most} m/s` }] }
    : result;

/** The wind of the day: a dial to drag, and the same as numbers to type in any unit. */
export function WindSetter({ label = 'Wind', day, holeBearing_deg, onDrag, onSet }: WindSetterProps) {
  const units = useUnits();
  const wind = windOf(day);
  const felt = holeBearing_deg === null ? null : feltWind(wind.speed_mps, wind.from_deg, holeBearing_deg);
  return (
    <section className="wind-setter" aria-label={label}>
      <div className="wind-top">
        <WindDial
          wind={wind}
          gust_mps={wind.gust_mps}
          holeBearing_deg={holeBearing_deg}
          speedText={units.speed(wind.speed_mps)}
          ringText={ring_mps => units.speed(ring_mps, 0).split(' ')[0]!}
          onChange={next => onDrag(withWind(day, next))}
          onSettle={before => onSet(day, withWind(day, { ...before, gust_mps: wind.gust_mps }))}
        />
        <div className="wind-fields">
          <TypedField
            label="Wind"
            text={units.speed(wind.speed_mps)}
            read={text => withMost(STRONGEST_mps, 'wind', parseSpeed_mps(text, 'wind'))}
            onValue={speed_mps => onSet(withWind(day, { speed_mps: speed_mps ?? 0 }), day)}
          />
          <TypedField
            label="From"
            text={`${Math.round(wind.from_deg)}°`}
            read={parseBearing}
            onValue={from_deg => onSet(withWind(day, { from_deg: from_deg ?? 0 }), day)}
          />
          <TypedField
            label="Gusts"
            text={wind.gust_mps === null ? 'not given' : units.speed(wind.gust_mps)}
            read={text =>
              /^\s*(not given|none|-)?\s*$/i.test(text)
                ? { ok: true, value: null }
                : withMost(STRONGEST_GUST_mps, 'gusts', parseSpeed_mps(text, 'gusts'))
            }
            onValue={gust_mps => onSet(withWind(day, { gust_mps }), day)}
          />
        </div>
      </div>
      <p className="wind-felt" aria-live="polite">
        {wind.speed_mps === 0
          ? 'Calm'
          : `${units.speed(wind.speed_mps)} from the ${compassPoint(wind.from_deg)}${felt === null ? '' : `: ${felt} on this hole`}`}
      </p>
    </section>
  );
}
