import { Label, Radio, RadioGroup } from 'react-aria-components';
import type { DayInput } from '../../core/air/day-input.ts';
import type { RoundWinds } from '../../core/air/round-winds.ts';
import { usePlanner } from '../state/planner.tsx';
import type { HoleWinds } from '../state/use-hole-winds.ts';
import { windOf } from './day-words.ts';
import { TimedWinds } from './timed-winds.tsx';
import { WindSetter } from './wind-setter.tsx';

type RoundWindProps = Readonly<{
  day: DayInput;
  refs: readonly string[];
  /** The hole in view, with its bearing from tee to basket. */
  holeRef: string | null;
  holeBearing_deg: number | null;
  winds: HoleWinds | null;
  onDrag: (day: DayInput) => void;
  onSet: (day: DayInput, before: DayInput) => void;
}>;

const FIRST_TEE_TIME_min = 9 * 60;
/** Minutes from one tee to the next; common practice for a group of four, no source. */
const USUAL_HOLE_min = 10;

/** The wind of the round: one all round, or winds by the time of the day. */
export function RoundWind({ day, refs, holeRef, holeBearing_deg, winds, onDrag, onSet }: RoundWindProps) {
  const { settings, change } = usePlanner();
  const choose = (how: string) => {
    if (how === 'one') return change({ isByTeeTime: false }, 'plan in one wind');
    change({ isByTeeTime: true, winds: settings.winds ?? startedFrom(day) }, 'plan by tee time');
  };
  return (
    <>
      <RadioGroup
        className="radio-group wind-kind"
        orientation="horizontal"
        value={settings.isByTeeTime ? 'list' : 'one'}
        onChange={choose}
      >
        <Label className="unseen">Wind of the round</Label>
        <Radio value="one" className="radio">
          One wind
        </Radio>
        <Radio value="list" className="radio">
          By tee time
        </Radio>
      </RadioGroup>
      {settings.isByTeeTime && settings.winds !== null ? (
        <TimedWinds
          winds={settings.winds}
          refs={refs}
          own={holeRef === null ? null : (winds?.get(holeRef) ?? null)}
          holeBearing_deg={holeBearing_deg}
        />
      ) : (
        <WindSetter day={day} holeBearing_deg={holeBearing_deg} onDrag={onDrag} onSet={onSet} />
      )}
    </>
  );
}

/** The list begins with the wind there is. */
function startedFrom(day: DayInput): RoundWinds {
  const { speed_mps, from_deg, gust_mps } = windOf(day);
  const first = { at_min: FIRST_TEE_TIME_min, speed_mps, from_deg, ...(gust_mps !== null && { gust_mps }) };
  return { list: [first], teeTime_min: FIRST_TEE_TIME_min, hole_min: USUAL_HOLE_min };
}
