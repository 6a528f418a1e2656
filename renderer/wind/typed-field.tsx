import { type ReactNode, useEffect, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import type { Result } from '../../core/units/result.ts';

type TypedFieldProps = Readonly<{
  label: string;
  /** What stands there while nobody types. */
  text: string;
  /** Reads what was typed; problems say how to write it. */
  read: (text: string) => Result<number | null>;
  onValue: (value: number | null) => void;
  hint?: ReactNode;
  className?: string;
}>;

/** A text field that takes a quantity in any unit, and says how to write it when it cannot be read. */
export function TypedField({ label, text, read, onValue, className }: TypedFieldProps) {
  const [typed, setTyped] = useState(text);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setTyped(text);
    setProblem(null);
  }, [text]);
  const commit = () => {
    if (typed === text) return;
    const result = read(typed);
    if (!result.ok) return setProblem(result.problems.map(p => p.message).join('; '));
    setProblem(null);
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
