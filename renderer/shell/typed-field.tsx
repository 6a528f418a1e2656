import { useEffect, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import type { Result } from '../../core/units/result.ts';

type TypedFieldProps<T> = Readonly<{
  label: string;
  /** What stands there while nobody types. */
  text: string;
  /** Reads what was typed; problems say how to write it. */
  read: (text: string) => Result<T>;
  onValue: (value: T) => void;
  className?: string;
  /** The label is read aloud only: a table's head says it to the eye. */
  isLabelUnseen?: boolean;
}>;

/** A text field that is taken over with Enter or when it is left, and says how to write what cannot be read. */
export function TypedField<T>({ label, text, read, onValue, className, isLabelUnseen = false }: TypedFieldProps<T>) {
  const [typed, setTyped] = useState(text);
  const [problem, setProblem] = useState<string | null>(null);
  const restore = () => {
    setTyped(text);
    setProblem(null);
  };
  useEffect(restore, [text]);
  const commit = () => {
    if (typed === text) return setProblem(null);
    const result = read(typed);
    if (!result.ok) return setProblem(result.problems.map(({ message }) => message).join('; '));
    // What comes of it stands there next, or what stood there before when nothing does.
    restore();
    onValue(result.value);
  };
  return (
    <TextField
      className={`typed-field ${className ?? ''}`}
      value={typed}
      onChange={setTyped}
      isInvalid={problem !== null}
      onBlur={commit}
      onKeyDown={event => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape') restore();
      }}
    >
      <Label className={isLabelUnseen ? 'unseen' : ''}>{label}</Label>
      <Input />
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}
