import { useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import type { Fieldwork, Thrown } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { bareLength, readLength, readSide } from '../words/read-quantity.ts';
import { HANDS, Pick, powerOf, powersWith, SHAPES } from './pick.tsx';

type ThrowFormProps = Readonly<{
  number: number;
  discs: Fieldwork['discs'];
  thrown: Thrown;
  onSave: (thrown: Thrown) => Promise<unknown>;
  onClose: () => void;
}>;

/** Everything about one throw that was entered before. */
export function ThrowForm({ number, discs, thrown, onSave, onClose }: ThrowFormProps) {
  const { settings } = usePlanner();
  const first = { distance: bareLength(thrown.distance_m, settings), side: bareLength(thrown.side_m, settings) };
  const [texts, setTexts] = useState(first);
  const [discId, setDisc] = useState(thrown.discId);
  const [hand, setHand] = useState(thrown.hand);
  const [shape, setShape] = useState(thrown.shape);
  const [power, setPower] = useState(String(thrown.power));
  const [wrong, setWrong] = useState<Readonly<{ distance?: string; side?: string }>>({});

  const save = () => {
    // what nobody touched stays as it is stored: shown in feet it would be rounded
    const distance = readLength(texts.distance, settings, 'distance');
    const side = readSide(texts.side, settings);
    if (!distance.ok) return setWrong({ distance: distance.problems[0]!.message });
    if (!side.ok) return setWrong({ side: side.problems[0]!.message });
    const side_m = texts.side === first.side ? thrown.side_m : (side.value ?? undefined);
    void onSave({
      discId,
      hand,
      shape,
      power: powerOf(power),
      distance_m: texts.distance === first.distance ? thrown.distance_m : distance.value,
      ...(side_m === undefined ? {} : { side_m }),
    });
  };
  const field = (key: 'distance' | 'side', label: string) => (
    <TextField
      className="typed-field"
      value={texts[key]}
      onChange={text => setTexts({ ...texts, [key]: text })}
      isInvalid={wrong[key] !== undefined}
      autoFocus={key === 'distance'}
    >
      <Label>{label}</Label>
      <Input inputMode="decimal" />
      <FieldError>{wrong[key]}</FieldError>
    </TextField>
  );

  return (
    <Form
      validationBehavior="aria"
      className="disc-form"
      aria-label={`Throw ${number}`}
      onSubmit={event => {
        event.preventDefault();
        save();
      }}
    >
      <h2>Throw {number}</h2>
      <Pick
        label="Disc"
        value={discId}
        options={Object.fromEntries(discs.map(({ id, name }) => [id, name]))}
        onPick={setDisc}
      />
      <Pick label="Hand" value={hand} options={HANDS} onPick={setHand} />
      <Pick label="Shape" value={shape} options={SHAPES} onPick={setShape} />
      <Pick label="Power" value={power} options={powersWith(power)} onPick={setPower} />
      {field('distance', `Distance, ${settings.length}`)}
      {field('side', `Side, ${settings.length}, right +`)}
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
