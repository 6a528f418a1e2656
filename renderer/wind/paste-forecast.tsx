import { useRef, useState } from 'react';
import { Button, Label, TextArea, TextField } from 'react-aria-components';
import type { TimedWind } from '../../core/air/timed-winds.ts';
import type { Problem } from '../../core/units/result.ts';
import { usePlanner } from '../state/planner.tsx';
import { SPEED_WORDS } from '../words/speed-words.ts';
import { parseForecast } from './parse-forecast.ts';

/** Winds taken from a forecast's table, all at once. */
export function PasteForecast({ onTake }: Readonly<{ onTake: (winds: readonly TimedWind[]) => void }>) {
  const { settings, say } = usePlanner();
  const details = useRef<HTMLDetailsElement>(null);
  const [text, setText] = useState('');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const take = () => {
    const read = parseForecast(text, settings);
    if (!read.ok) return setProblems(read.problems);
    onTake(read.value);
    setText('');
    setProblems([]);
    details.current!.open = false;
    details.current!.querySelector('summary')?.focus();
    say(`${read.value.length} winds taken from the forecast`);
  };
  return (
    <details ref={details} className="paste-forecast">
      <summary>Paste a forecast</summary>
      <p className="soft">
        A line for each time: time, wind, from, gusts. Plain numbers are {SPEED_WORDS[settings.speed]}. It takes the
        place of the list.
      </p>
      <TextField value={text} onChange={setText} isInvalid={problems.length > 0}>
        <Label className="unseen">Forecast</Label>
        <TextArea rows={4} placeholder={'09:00  3  W  6\n12:00  5  SW  9'} />
      </TextField>
      {problems.length > 0 && (
        <ul className="field-problem" role="alert">
          {problems.map(({ path, message }) => (
            <li key={path + message}>
              <strong>{path}:</strong> {message}
            </li>
          ))}
        </ul>
      )}
      <Button className="small-button" onPress={take}>
        Use these winds
      </Button>
    </details>
  );
}
