import { useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import type { Problem } from '../../../core/units/result.ts';
import { usePlanner } from '../../state/planner.tsx';
import { parseBearing } from '../../wind/parse-bearing.ts';
import { readLength } from '../../words/read-quantity.ts';

type MoveFormProps = Readonly<{
  label: string;
  verb: string;
  onGo: (bearing_deg: number, distance_m: number) => void;
}>;

/** A direction and a distance, typed. */
export function MoveForm({ label, verb, onGo }: MoveFormProps) {
  const { settings } = usePlanner();
  const [bearing, setBearing] = useState('');
  const [distance, setDistance] = useState('');
  const [wrong, setWrong] = useState<readonly Problem[]>([]);
  const go = () => {
    const [direction, length] = [parseBearing(bearing), readLength(distance, settings, 'distance')];
    const problems = [
      ...(direction.ok ? [] : direction.problems.map(({ message }) => ({ path: 'bearing', message }))),
      ...(length.ok ? [] : length.problems),
    ];
    setWrong(problems);
    if (direction.ok && length.ok) onGo(direction.value, length.value);
  };
  const wrongOf = (path: string) => wrong.find(problem => problem.path === path)?.message;
  return (
    <Form
      validationBehavior="aria"
      className="move-form"
      aria-label={label}
      onSubmit={event => {
        event.preventDefault();
        go();
      }}
    >
      <TextField
        className="typed-field"
        value={bearing}
        onChange={setBearing}
        isInvalid={wrongOf('bearing') !== undefined}
      >
        <Label>{label} towards</Label>
        <Input placeholder="87 or ENE" />
        <FieldError>{wrongOf('bearing')}</FieldError>
      </TextField>
      <TextField
        className="typed-field"
        value={distance}
        onChange={setDistance}
        isInvalid={wrongOf('distance') !== undefined}
      >
        <Label>by</Label>
        <Input placeholder={settings.length === 'ft' ? '40 ft' : '12 m'} />
        <FieldError>{wrongOf('distance')}</FieldError>
      </TextField>
      <Button type="submit" className="small-button">
        {verb}
      </Button>
    </Form>
  );
}
