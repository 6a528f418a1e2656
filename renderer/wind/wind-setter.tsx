import type { DayInput } from '../../core/air/day-input.ts';
import { TypedField } from '../shell/typed-field.tsx';
import { usePlanner } from '../state/planner.tsx';
import { useUnits } from '../words/use-units.ts';
import { compassPoint, feltWind } from '../words/wind-words.ts';
import { windOf, withWind } from './day-words.ts';
import { parseBearing } from './parse-bearing.ts';
import { readGust, readWind } from './read-wind.ts';
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

/** The wind of the day: a dial to drag, and the same as numbers to type in any unit. */
export function WindSetter({ label = 'Wind', day, holeBearing_deg, onDrag, onSet }: WindSetterProps) {
  const units = useUnits();
  const { settings } = usePlanner();
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
            read={text => readWind(text, settings)}
            onValue={speed_mps => onSet(withWind(day, { speed_mps }), day)}
          />
          <TypedField
            label="From"
            text={`${Math.round(wind.from_deg)}°`}
            read={parseBearing}
            onValue={from_deg => onSet(withWind(day, { from_deg }), day)}
          />
          <TypedField
            label="Gusts"
            text={wind.gust_mps === null ? 'not given' : units.speed(wind.gust_mps)}
            read={text => readGust(text, settings)}
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
