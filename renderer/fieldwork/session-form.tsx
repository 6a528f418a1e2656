import { useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import type { SessionConditions } from '../../backend/api/contract/fieldwork.ts';
import type { Result } from '../../core/units/result.ts';
import type { Session } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { parseBearing } from '../wind/parse-bearing.ts';
import { bareLength, bareSpeed, readLength, readSpeed } from '../words/read-quantity.ts';

type Key = 'date' | 'wind' | 'from' | 'height' | 'bearing' | 'rise' | 'note';
type SessionFormProps = Readonly<{
  title: string;
  session: Session;
  saveWords: string;
  onSave: (conditions: SessionConditions) => Promise<unknown>;
  onClose: () => void;
}>;

const SPEED_NAME = { mps: 'm/s', kmh: 'km/h', mph: 'mph', kn: 'knots' } as const;

/** Day, wind, line, slope and ground of one session; units as the player reads them, others when written. */
export function SessionForm({ title, session, saveWords, onSave, onClose }: SessionFormProps) {
  const { settings } = usePlanner();
  const { wind } = session;
  const first: Record<Key, string> = {
    date: session.date ?? '',
    wind: bareSpeed(wind?.speed_mps, settings),
    from: wind === undefined ? '' : String(wind.from_deg),
    height: wind === undefined ? '' : bareLength(wind.height_m, settings),
    bearing: session.bearing_deg === undefined ? '' : String(session.bearing_deg),
    rise: bareLength(session.rise_m, settings),
    note: session.note ?? '',
  };
  const [texts, setTexts] = useState(first);
  const [surface, setSurface] = useState(session.surface ?? 'turf');
  const [wrong, setWrong] = useState<Partial<Record<Key, string>>>({});

  const save = () => {
    const found: Partial<Record<Key, string>> = {};
    /** What a field says; the stored value when nobody touched it, so that showing it in feet does not round it. */
    function taken<T>(key: Key, stored: T | undefined, read: (text: string) => Result<T>): T | undefined {
      if (texts[key] === first[key]) return stored;
      if (texts[key].trim() === '') return undefined;
      const result = read(texts[key]);
      if (result.ok) return result.value;
      found[key] = result.problems.map(({ message }) => message).join('; ');
      return undefined;
    }
    const speed_mps = taken('wind', wind?.speed_mps, text => readSpeed(text, settings));
    const from_deg = taken('from', wind?.from_deg, parseBearing);
    const height_m = taken('height', wind?.height_m, text => readLength(text, settings, 'height'));
    const bearing_deg = taken('bearing', session.bearing_deg, parseBearing);
    const rise_m = taken('rise', session.rise_m, text => readLength(text, settings, 'rise'));
    const isWindy = speed_mps !== undefined && speed_mps > 0;
    if (isWindy && from_deg === undefined && found.from === undefined)
      found.from = 'where does it blow from? Degrees from north, like 250, or WSW';
    if (isWindy && bearing_deg === undefined && found.bearing === undefined)
      found.bearing = 'which way do you throw? Degrees from north, like 90, or E';
    setWrong(found);
    if (Object.keys(found).length > 0) return;
    const [date, note] = [texts.date.trim(), texts.note.trim()];
    void onSave({
      ...(date === '' ? {} : { date }),
      ...(speed_mps === undefined ? {} : { wind: { speed_mps, from_deg: from_deg ?? 0, height_m: height_m ?? 10 } }),
      ...(bearing_deg === undefined ? {} : { bearing_deg }),
      ...(rise_m === undefined ? {} : { rise_m }),
      ...(surface === 'turf' && session.surface === undefined ? {} : { surface }),
      ...(note === '' ? {} : { note }),
    });
  };

  const field = (key: Key, label: string, more: Readonly<{ hint?: string; autoFocus?: boolean }> = {}) => (
    <TextField
      className="typed-field"
      value={texts[key]}
      onChange={text => setTexts({ ...texts, [key]: text })}
      isInvalid={wrong[key] !== undefined}
      autoFocus={more.autoFocus ?? false}
    >
      <Label>{label}</Label>
      <Input placeholder={more.hint ?? ''} />
      <FieldError>{wrong[key]}</FieldError>
    </TextField>
  );

  return (
    <Form
      validationBehavior="aria"
      className="disc-form session-form"
      aria-label={title}
      onSubmit={event => {
        event.preventDefault();
        save();
      }}
    >
      <h2>{title}</h2>
      {field('date', 'Date', { hint: '2026-05-30', autoFocus: true })}
      {field('bearing', 'Thrown towards', { hint: '90 or E' })}
      {field('wind', `Wind, ${SPEED_NAME[settings.speed]}`, { hint: 'calm' })}
      {field('from', 'Wind from', { hint: '250 or WSW' })}
      {field('height', `Wind at height, ${settings.length}`, { hint: bareLength(10, settings) })}
      {field('rise', `Rise over the throw, ${settings.length}`, { hint: '0, downhill −' })}
      <label className="plain-field">
        <span>Ground</span>
        <select value={surface} onChange={event => setSurface(event.target.value as typeof surface)}>
          <option value="turf">mown grass</option>
          <option value="longGrass">long grass</option>
          <option value="hardpan">hard ground</option>
        </select>
      </label>
      {field('note', 'Note')}
      <p className="soft form-hint">
        Wind is where it blows from. Measured at head height, write that height; forecasts are for{' '}
        {settings.length === 'ft' ? '33 ft' : '10 m'}.
      </p>
      <p className="care-note form-hint">
        Nobody downrange or walking in? Warmed up? No thunder? Local rules and whoever runs the field come first; the
        tab Care says more.
      </p>
      <div className="form-buttons">
        <Button type="submit" className="button">
          {saveWords}
        </Button>
        <Button className="quiet-button" onPress={onClose}>
          Cancel
        </Button>
      </div>
    </Form>
  );
}
