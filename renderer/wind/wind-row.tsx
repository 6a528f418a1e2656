import { Button } from 'react-aria-components';
import { clockText, parseClock_min } from '../../core/air/clock.ts';
import type { TimedWind } from '../../core/air/timed-winds.ts';
import type { Result } from '../../core/units/result.ts';
import { TypedField } from '../shell/typed-field.tsx';
import { usePlanner } from '../state/planner.tsx';
import { bareSpeed } from '../words/read-quantity.ts';
import { SPEED_WORDS } from '../words/speed-words.ts';
import { useUnits } from '../words/use-units.ts';
import { parseBearing } from './parse-bearing.ts';
import { readGust, readWind } from './read-wind.ts';

type WindRowProps = Readonly<{
  wind: TimedWind;
  /** The other rows: no two have one time. */
  others: readonly TimedWind[];
  onSet: (wind: TimedWind) => void;
  /** Null for the last one there is. */
  onRemove: (() => void) | null;
}>;

/** The wind at one time of the day. */
export function WindRow({ wind, others, onSet, onRemove }: WindRowProps) {
  const { settings } = usePlanner();
  const units = useUnits();
  const { at_min, speed_mps, from_deg, gust_mps } = wind;
  const at = clockText(at_min);
  const readTime = (text: string): Result<number> => {
    const read = parseClock_min(text, 'time');
    return read.ok && others.some(other => other.at_min === read.value)
      ? refused(`${clockText(read.value)} has a wind already: write another time`)
      : read;
  };
  const readStrongest = (text: string): Result<number | null> => {
    const read = readGust(text, settings);
    return read.ok && read.value !== null && read.value < speed_mps
      ? refused(`is below the wind of ${units.speed(speed_mps)}: write the strongest few seconds`)
      : read;
  };
  return (
    <tr>
      <td>
        <TypedField
          isLabelUnseen
          label={`Time, ${at}`}
          text={at}
          read={readTime}
          onValue={value => onSet({ ...wind, at_min: value })}
        />
      </td>
      <td>
        <TypedField
          isLabelUnseen
          label={`Wind at ${at}, ${SPEED_WORDS[settings.speed]}`}
          text={bareSpeed(speed_mps, settings)}
          read={text => readWind(text, settings)}
          onValue={value => onSet(withSpeed(wind, value))}
        />
      </td>
      <td>
        <TypedField
          isLabelUnseen
          label={`From at ${at}`}
          text={`${Math.round(from_deg)}°`}
          read={parseBearing}
          onValue={value => onSet({ ...wind, from_deg: value })}
        />
      </td>
      <td>
        <TypedField
          isLabelUnseen
          label={`Gusts at ${at}, ${SPEED_WORDS[settings.speed]}`}
          text={gust_mps === undefined ? '–' : bareSpeed(gust_mps, settings)}
          read={readStrongest}
          onValue={value => onSet(withGust(wind, value))}
        />
      </td>
      <td>
        {onRemove !== null && (
          <Button className="quiet-button" aria-label={`Remove ${at}`} onPress={onRemove}>
            ×
          </Button>
        )}
      </td>
    </tr>
  );
}

function withGust({ gust_mps: _, ...wind }: TimedWind, gust_mps: number | null): TimedWind {
  return gust_mps === null ? wind : { ...wind, gust_mps };
}

/** A gust that the mean wind has overtaken is dropped. */
function withSpeed(wind: TimedWind, speed_mps: number): TimedWind {
  const { gust_mps = null } = wind;
  return withGust({ ...wind, speed_mps }, gust_mps !== null && gust_mps > speed_mps ? gust_mps : null);
}

function refused(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'wind', message }] };
}
