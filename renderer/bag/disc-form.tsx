import { useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import type { DiscEntry } from '../../backend/api/contract/players.ts';

type DiscFormProps = Readonly<{
  title: string;
  disc: DiscEntry;
  onSave: (disc: DiscEntry) => Promise<unknown>;
  onClose: () => void;
}>;

const NUMBERS = [
  { key: 'speed', label: 'Speed', must: true },
  { key: 'glide', label: 'Glide', must: true },
  { key: 'turn', label: 'Turn', must: true },
  { key: 'fade', label: 'Fade', must: true },
  { key: 'mass_g', label: 'Mass, g', must: false },
  { key: 'diameter_mm', label: 'Diameter, mm', must: false },
  { key: 'rimWidth_mm', label: 'Rim, mm', must: false },
  { key: 'wear', label: 'Wear, 0 new to 1', must: false },
] as const;

const NAME = 'Name';

/** The numbers of one disc; the backend says which are out of bounds. */
export function DiscForm({ title, disc, onSave, onClose }: DiscFormProps) {
  const [name, setName] = useState(disc.name);
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(
    Object.fromEntries(NUMBERS.map(({ key }) => [key, disc[key] === undefined ? '' : String(disc[key])])),
  );
  const [isPutting, setPutting] = useState(disc.role === 'putting');
  const [wrong, setWrong] = useState<readonly string[]>([]);

  const save = () => {
    const bad: string[] = NUMBERS.filter(({ key, must }) => {
      const text = texts[key]!.trim();
      return text === '' ? must : !Number.isFinite(Number(text));
    }).map(({ label }) => label);
    if (name.trim() === '') bad.unshift(NAME);
    setWrong(bad);
    if (bad.length > 0) return;
    const numbers = Object.fromEntries(
      NUMBERS.filter(({ key }) => texts[key]!.trim() !== '').map(({ key }) => [key, Number(texts[key])]),
    ) as Pick<DiscEntry, 'speed' | 'glide' | 'turn' | 'fade'>;
    void onSave({ id: disc.id, name: name.trim(), ...numbers, role: isPutting ? 'putting' : 'throwing' });
  };

  return (
    <Form
      validationBehavior="aria"
      className="disc-form"
      aria-label={title}
      onSubmit={event => {
        event.preventDefault();
        save();
      }}
    >
      <h2>{title}</h2>
      <TextField
        value={name}
        onChange={setName}
        isRequired
        isInvalid={wrong.includes(NAME)}
        autoFocus
        className="typed-field disc-name"
      >
        <Label>{NAME}</Label>
        <Input />
        <FieldError>write a name</FieldError>
      </TextField>
      {NUMBERS.map(({ key, label, must }) => (
        <TextField
          key={key}
          className="typed-field"
          value={texts[key]!}
          onChange={text => setTexts({ ...texts, [key]: text })}
          isRequired={must}
          isInvalid={wrong.includes(label)}
        >
          <Label>{label}</Label>
          <Input inputMode="decimal" />
          <FieldError>write a number</FieldError>
        </TextField>
      ))}
      <label className="check-field">
        <input type="checkbox" checked={isPutting} onChange={event => setPutting(event.target.checked)} />
        My putting putter: never thrown off a tee
      </label>
      <p className="field-problem" role="status">
        {wrong.length > 0 && `Not saved. Look again at: ${wrong.join(', ')}`}
      </p>
      <div className="form-buttons">
        <Button type="submit" className="button">
          Save
        </Button>
        <Button className="quiet-button" onPress={onClose}>
          Cancel
        </Button>
      </div>
    </Form>
  );
}
