import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { clockText, parseClock_min } from '../../core/air/clock.ts';
import { byTime, type HoleWind, MOST_HOLE_MIN, type RoundWinds } from '../../core/air/round-winds.ts';
import type { TimedWind } from '../../core/air/timed-winds.ts';
import type { Result } from '../../core/units/result.ts';
import { TypedField } from '../shell/typed-field.tsx';
import { usePlanner } from '../state/planner.tsx';
import { startOf } from '../state/wanted-plan.ts';
import { SPEED_WORDS } from '../words/speed-words.ts';
import { useUnits } from '../words/use-units.ts';
import { compassPoint, feltWind } from '../words/wind-words.ts';
import { PasteForecast } from './paste-forecast.tsx';
import { WindRow } from './wind-row.tsx';

type TimedWindsProps = Readonly<{
  winds: RoundWinds;
  refs: readonly string[];
  /** The wind of the hole in view. */
  own: HoleWind | null;
  holeBearing_deg: number | null;
}>;

const LAST_MIN = 24 * 60 - 1;
const MOST_WINDS = 48;

/** Winds by the time of the day, and when which hole is thrown off: every hole is planned in the wind of its own time. */
export function TimedWinds({ winds, refs, own, holeBearing_deg }: TimedWindsProps) {
  const { settings, change } = usePlanner();
  const units = useUnits();
  const { list, teeTime_min, hole_min } = winds;
  const table = useRef<HTMLTableElement>(null);
  const set = (next: Partial<RoundWinds>, what: string) => change({ winds: { ...winds, ...next } }, what);
  const setRow = (i: number, row: TimedWind) =>
    set({ list: list.map((wind, k) => (k === i ? row : wind)) }, 'change the winds');
  const focusRow = (i: number) =>
    requestAnimationFrame(() =>
      table.current?.querySelectorAll<HTMLElement>('tbody tr')[i]?.querySelector('input')?.focus(),
    );
  const add = () => {
    const sorted = byTime(list);
    const last = sorted.at(-1)!;
    set({ list: [...sorted, { ...last, at_min: timeAfter(sorted) }] }, 'add a time');
    focusRow(sorted.length);
  };
  const remove = (i: number) => {
    set({ list: list.filter((_, k) => k !== i) }, 'remove a time');
    focusRow(Math.max(0, i - 1));
  };
  return (
    <section className="timed-winds" aria-label="Winds by tee time">
      <div className="tee-times">
        <TypedField
          label="Tee time"
          text={clockText(teeTime_min)}
          read={text => parseClock_min(text, 'tee time')}
          onValue={value => set({ teeTime_min: value }, 'change the tee time')}
        />
        <label className="plain-field">
          <span>Start at</span>
          <select
            value={startOf(settings, refs) ?? ''}
            onChange={event => {
              const { courseId, startRefs } = settings;
              if (courseId !== null)
                change({ startRefs: { ...startRefs, [courseId]: event.target.value } }, 'change the starting hole');
            }}
          >
            {refs.map(ref => (
              <option key={ref} value={ref}>
                {ref}
              </option>
            ))}
          </select>
        </label>
        <TypedField
          label="Min. a hole"
          text={String(hole_min)}
          read={readMinutes}
          onValue={value => set({ hole_min: value }, 'change the minutes a hole')}
        />
      </div>
      <table ref={table} className="wind-list">
        <caption className="unseen">Winds by the time of the day</caption>
        <thead>
          <tr>
            <th scope="col">Time</th>
            <th scope="col">
              Wind <span className="unit-word">{SPEED_WORDS[settings.speed]}</span>
            </th>
            <th scope="col">From</th>
            <th scope="col">
              Gusts <span className="unit-word">{SPEED_WORDS[settings.speed]}</span>
            </th>
            <td />
          </tr>
        </thead>
        <tbody>
          {list.map((wind, i) => (
            <WindRow
              // biome-ignore lint/suspicious/noArrayIndexKey: a row stays where it is while its time is typed
              key={i}
              wind={wind}
              others={list.filter((_, k) => k !== i)}
              onSet={row => setRow(i, row)}
              onRemove={list.length > 1 ? () => remove(i) : null}
            />
          ))}
        </tbody>
      </table>
      <Button className="small-button" onPress={add} isDisabled={list.length >= MOST_WINDS}>
        Add a time
      </Button>
      <PasteForecast onTake={rows => set({ list: [...rows] }, 'take the forecast')} />
      {list.length === 1 && (
        <p className="soft">
          One time is one wind all day. Add a later time: in between, one wind eases into the other.
        </p>
      )}
      {own !== null && (
        <p className="wind-felt" aria-live="polite">
          Hole {own.ref} at {own.at}:{' '}
          {own.wind.speed_mps === 0
            ? 'calm'
            : `${units.speed(own.wind.speed_mps)} from the ${compassPoint(own.wind.from_deg)}${holeBearing_deg === null ? '' : `, ${feltWind(own.wind.speed_mps, own.wind.from_deg, holeBearing_deg)}`}`}
        </p>
      )}
    </section>
  );
}

/** An hour after the last time, or the first free minute. */
function timeAfter(sorted: readonly TimedWind[]): number {
  const wanted = Math.min(LAST_MIN, sorted.at(-1)!.at_min + 60);
  for (let at_min = wanted; at_min >= 0; at_min--) if (sorted.every(wind => wind.at_min !== at_min)) return at_min;
  return wanted;
}

function readMinutes(text: string): Result<number> {
  const value = Number(text.trim().replace(/\s*min\.?$/i, ''));
  return text.trim() !== '' && value >= 1 && value <= MOST_HOLE_MIN
    ? { ok: true, value }
    : {
        ok: false,
        problems: [{ path: 'minutes', message: `write minutes from one tee to the next, 1 to ${MOST_HOLE_MIN}` }],
      };
}
