import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import { usePlanner } from '../state/planner.tsx';
import { readLength } from '../words/read-quantity.ts';
import { Pick } from './pick.tsx';
import { today } from './today.ts';

const NUMBERS = ['speed', 'glide', 'turn', 'fade'] as const;
type Key = 'name' | 'disc' | (typeof NUMBERS)[number] | 'distance';
const LABELS: Readonly<Record<Key, string>> = {
  name: 'Your name',
  disc: 'A disc you throw often',
  speed: 'Speed',
  glide: 'Glide',
  turn: 'Turn',
  fade: 'Fade',
  distance: 'How far one throw of it went',
};

/** A player from nothing: who, one disc with its numbers, and one measured throw; everything else follows from fieldwork. */
export function NewPlayer({ onDone }: Readonly<{ onDone: (() => void) | null }>) {
  const { backend, settings, change, changeLibrary, say } = usePlanner();
  const queries = useQueryClient();
  const [texts, setTexts] = useState<Readonly<Record<Key, string>>>({
    name: '',
    disc: '',
    speed: '',
    glide: '',
    turn: '',
    fade: '',
    distance: '',
  });
  const [handedness, setHandedness] = useState<'right' | 'left'>('right');
  const [hand, setHand] = useState<'backhand' | 'forehand'>('backhand');
  const [wrong, setWrong] = useState<Partial<Record<Key, string>>>({});

  const start = async () => {
    const found: Partial<Record<Key, string>> = {};
    for (const key of ['name', 'disc'] as const) if (texts[key].trim() === '') found[key] = 'is empty: write a name';
    const numbers = Object.fromEntries(NUMBERS.map(key => [key, numberOf(texts[key])]));
    for (const key of NUMBERS) if (numbers[key] === null) found[key] = 'a number, as on the disc';
    const distance = readLength(texts.distance, settings, 'distance');
    if (!distance.ok) found.distance = 'how far did it come to rest?';
    setWrong(found);
    if (Object.keys(found).length > 0 || !distance.ok) return;
    const player = {
      name: texts.name.trim(),
      handedness,
      discs: [{ id: 'first', name: texts.disc.trim(), ...numbers }],
      sessions: [{ date: today(), throws: [{ discId: 'first', hand, distance_m: distance.value }] }],
    };
    const added = await changeLibrary(
      'The player could not be started',
      backend.call.importPlayer({ fileName: 'new player', text: JSON.stringify(player) }),
    );
    if (added === null) return;
    // the list must hold the player first, or they would count as gone
    await queries.invalidateQueries({ queryKey: ['players'], exact: true });
    change({ playerId: added.playerId });
    say(`${player.name} added: measure some more throws`);
    onDone?.();
  };
  const field = (key: Key, more: Readonly<{ unit?: string; className?: string; autoFocus?: boolean }> = {}) => (
    <TextField
      className={`typed-field ${more.className ?? ''}`}
      value={texts[key]}
      onChange={text => setTexts({ ...texts, [key]: text })}
      isInvalid={wrong[key] !== undefined}
      autoFocus={more.autoFocus ?? false}
    >
      <Label>
        {LABELS[key]}
        {more.unit !== undefined && `, ${more.unit}`}
      </Label>
      <Input autoComplete="off" />
      <FieldError>{wrong[key]}</FieldError>
    </TextField>
  );

  return (
    <Form
      validationBehavior="aria"
      className="disc-form new-player"
      aria-label="A new player"
      onSubmit={event => {
        event.preventDefault();
        void start();
      }}
    >
      <h2>A new player</h2>
      {field('name', { autoFocus: onDone !== null })}
      <Pick
        label="Handedness"
        value={handedness}
        options={{ right: 'right-handed', left: 'left-handed' }}
        onPick={setHandedness}
      />
      {field('disc', { className: 'new-disc' })}
      {NUMBERS.map(key => (
        <span key={key}>{field(key)}</span>
      ))}
      {field('distance', { unit: settings.length })}
      <Pick label="Thrown" value={hand} options={{ backhand: 'backhand', forehand: 'forehand' }} onPick={setHand} />
      <p className="soft form-hint">
        The four numbers stand on the disc. One throw is enough to begin with; ten of one midrange make it worth
        something. The other discs are added under Bag.
      </p>
      <div className="form-buttons">
        <Button type="submit" className="button">
          Start
        </Button>
        {onDone !== null && (
          <Button className="quiet-button" onPress={onDone}>
            Cancel
          </Button>
        )}
      </div>
    </Form>
  );
}

function numberOf(text: string): number | null {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return /^[+-]?\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}
