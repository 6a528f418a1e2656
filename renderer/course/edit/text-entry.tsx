import { useEffect, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import type { Result } from '../../../core/units/result.ts';

type TextEntryProps<T> = Readonly<{
  label: string;
  /** What stands there while nobody types. */
  text: string;
  /** Reads what was typed; problems say how to write it. */
  read: (text: string) => Result<T>;
  onValue: (value: T) => void;
  className?: string;
}>;

/** A text field that is taken over with Enter or when it is left, and says how to write what cannot be read. */
export function TextEntry<T>({ label, text, read, onValue, className }: TextEntryProps<T>) {
  const [typed, setTyped] = useState(text);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setTyped(text);
    setProblem(null);
  }, [text]);
  const commit = () => {
    if (typed === text) return;
    const result = read(typed);
    if (!result.ok) return setProblem(result.problems.map(({ message }) => message).join('; '));
    setProblem(null);
    // What comes of it stands there next, or what stood there before when nothing does.
    setTyped(text);
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
        if (event.key === 'Escape') setTyped(text);
      }}
    >
      <Label>{label}</Label>
      <Input />
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}
