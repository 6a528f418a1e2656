import { useRef, useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import type { PuttEntry } from '../../backend/api/contract/putting.ts';
import { usePlanner } from '../state/planner.tsx';
import { bareLength, readLength } from '../words/read-quantity.ts';
import { today } from './today.ts';

type PuttFormProps = Readonly<{
  title: string;
  saveWords: string;
  row: PuttEntry | null;
  onSave: (putts: PuttEntry) => Promise<boolean>;
  onClose?: () => void;
}>;
type Key = 'distance' | 'attempts' | 'makes' | 'date';

/** Distance, tries, makes; Enter moves on, and tries are kept from row to row. */
export function PuttForm({ title, saveWords, row, onSave, onClose }: PuttFormProps) {
  const { settings } = usePlanner();
  const first: Record<Key, string> = {
    distance: bareLength(row?.distance_m, settings),
    attempts: row === null ? '' : String(row.attempts),
    makes: row === null ? '' : String(row.makes),
    date: row === null ? today() : (row.date ?? ''),
  };
  const [texts, setTexts] = useState(first);
  const [wrong, setWrong] = useState<Partial<Record<Key, string>>>({});
  const fields = {
    distance: useRef<HTMLInputElement>(null),
    attempts: useRef<HTMLInputElement>(null),
    makes: useRef<HTMLInputElement>(null),
  };

  const save = async () => {
    const found: Partial<Record<Key, string>> = {};
    const distance = readLength(texts.distance, settings, 'distance');
    if (!distance.ok) found.distance = texts.distance.trim() === '' ? 'from how far?' : distance.problems[0]!.message;
    const [attempts, makes] = [wholeOf(texts.attempts), wholeOf(texts.makes)];
    if (attempts === null || attempts < 1) found.attempts = 'how many tries? A whole number';
    if (makes === null) found.makes = 'how many went in? A whole number';
    else if (attempts !== null && makes > attempts) found.makes = `more than the ${attempts} tries`;
    setWrong(found);
    const bad = (['distance', 'attempts', 'makes'] as const).find(key => found[key] !== undefined);
    if (bad !== undefined) return fields[bad].current?.focus();
    if (!distance.ok || attempts === null || makes === null) return;
    const date = texts.date.trim();
    const done = await onSave({
      distance_m: row !== null && texts.distance === first.distance ? row.distance_m : distance.value,
      attempts,
      makes,
      ...(date === '' ? {} : { date }),
    });
    if (!done || row !== null) return;
    setTexts({ ...texts, distance: '', makes: '' });
    fields.distance.current?.focus();
  };
  const field = (key: 'distance' | 'attempts' | 'makes', label: string, next?: 'attempts' | 'makes') => (
    <TextField
      className="typed-field"
      value={texts[key]}
      onChange={text => setTexts({ ...texts, [key]: text })}
      isInvalid={wrong[key] !== undefined}
      autoFocus={key === 'distance'}
      onKeyDown={event => {
        if (event.key !== 'Enter' || next === undefined || texts[key].trim() === '') return;
        event.preventDefault();
        // tries are kept: on the second row the next thing to write is the makes
        const after = next === 'attempts' && texts.attempts.trim() !== '' && row === null ? 'makes' : next;
        fields[after].current?.focus();
      }}
    >
      <Label>{label}</Label>
      <Input ref={fields[key]} inputMode="decimal" autoComplete="off" />
      <FieldError>{wrong[key]}</FieldError>
    </TextField>
  );

  return (
    <Form
      validationBehavior="aria"
      className="putt-form"
      aria-label={title}
      onSubmit={event => {
        event.preventDefault();
        void save();
      }}
    >
      <h2>{title}</h2>
      {field('distance', `From, ${settings.length}`, 'attempts')}
      {field('attempts', 'Tried', 'makes')}
      {field('makes', 'Made')}
      <TextField className="typed-field" value={texts.date} onChange={date => setTexts({ ...texts, date })}>
        <Label>Date</Label>
        <Input placeholder="2026-05-30" />
      </TextField>
      <div className="form-buttons">
        <Button type="submit" className="button">
          {saveWords}
        </Button>
        {onClose !== undefined && (
          <Button className="quiet-button" onPress={onClose}>
            Cancel
          </Button>
        )}
      </div>
    </Form>
  );
}

function wholeOf(text: string): number | null {
  return /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : null;
}
