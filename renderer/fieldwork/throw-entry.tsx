import { useRef, useState } from 'react';
import { Button, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import { FEWEST_SPECIAL_THROWS } from '../../core/player/fitted-player.ts';
import { isSpecialShape } from '../../core/strategy/flown-as.ts';
import type { Fieldwork, Session, Thrown } from '../state/fieldwork.ts';
import { usePlanner } from '../state/planner.tsx';
import { readLength, readSide } from '../words/read-quantity.ts';
import { HANDS, Pick, powersWith, SHAPES } from './pick.tsx';

/** What stays the same from throw to throw until it is changed; power as its option's value. */
export type ThrowManner = Readonly<{
  discId: string;
  hand: Thrown['hand'];
  shape: Thrown['shape'];
  power: string;
  /** How the distance is taped. */
  tape: 'along' | 'straight';
}>;
export type MannerState = Readonly<{
  manner: ThrowManner;
  change: (part: Partial<ThrowManner>) => void;
  discs: Fieldwork['discs'];
}>;

/** Begins with what the session's last throw was. */
export function useThrowManner(discs: Fieldwork['discs'], session: Session): MannerState {
  const last = session.throws.at(-1);
  const [manner, setManner] = useState<ThrowManner>({
    discId: last?.discId ?? (discs.find(({ role }) => role === 'throwing') ?? discs[0])?.id ?? '',
    hand: last?.hand ?? 'backhand',
    shape: last?.shape ?? 'flat',
    power: last === undefined ? 'full' : String(last.power),
    tape: 'along',
  });
  return { manner, change: part => setManner(now => ({ ...now, ...part })), discs };
}

type ThrowEntryProps = Readonly<{
  manner: MannerState;
  way: 'tape' | 'map';
  onWay: (way: 'tape' | 'map') => void;
  onThrow: (measured: Readonly<{ distance_m: number; side_m?: number }>) => Promise<boolean>;
}>;

const MANY = { roller: 'Rollers', overhead: 'Overhead throws' } as const;

/** Distance, Enter, side, Enter, next throw: the disc, hand, shape and power are kept. */
export function ThrowEntry({ manner: { manner, change, discs }, way, onWay, onThrow }: ThrowEntryProps) {
  const { settings, undo } = usePlanner();
  const [distance, setDistance] = useState('');
  const [side, setSide] = useState('');
  const [wrong, setWrong] = useState<Readonly<{ distance?: string; side?: string }>>({});
  const distanceField = useRef<HTMLInputElement>(null);
  const sideField = useRef<HTMLInputElement>(null);

  const readDistance = () => {
    const read = readLength(distance, settings, 'distance');
    if (read.ok && read.value > 0) return read.value;
    setWrong({
      distance: read.ok
        ? 'a throw goes more than 0'
        : distance.trim() === ''
          ? 'how far did it go?'
          : read.problems[0]!.message,
    });
    distanceField.current?.focus();
    return null;
  };
  const add = async () => {
    const length_m = readDistance();
    if (length_m === null) return;
    const read = readSide(side, settings);
    if (!read.ok) return setWrong({ side: read.problems[0]!.message });
    const side_m = read.value;
    if (manner.tape === 'straight' && side_m !== null && Math.abs(side_m) >= length_m)
      return setWrong({ side: 'is as long as the tape itself: check both' });
    const distance_m =
      manner.tape === 'straight' && side_m !== null
        ? Math.round(Math.sqrt(length_m ** 2 - side_m ** 2) * 1e4) / 1e4
        : length_m;
    setWrong({});
    if (!(await onThrow({ distance_m, ...(side_m === null ? {} : { side_m }) }))) return;
    setDistance('');
    setSide('');
    distanceField.current?.focus();
  };

  return (
    <Form
      validationBehavior="aria"
      className="throw-entry"
      aria-label="Next throw"
      onSubmit={event => {
        event.preventDefault();
        void add();
      }}
    >
      <div className="throw-manner">
        <label className="plain-field">
          <span>Disc</span>
          <select value={manner.discId} onChange={event => change({ discId: event.target.value })}>
            {discs.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <Pick label="Hand" value={manner.hand} options={HANDS} onPick={hand => change({ hand })} />
        <Pick label="Shape" value={manner.shape} options={SHAPES} onPick={shape => change({ shape })} />
        <Pick
          label="Power"
          value={manner.power}
          options={powersWith(manner.power)}
          onPick={power => change({ power })}
        />
        <Pick
          label="Measured"
          value={way}
          options={{ tape: 'by tape', map: 'on a map' }}
          onPick={picked => onWay(picked)}
        />
        {way === 'tape' && (
          <Pick
            label="Tape runs"
            value={manner.tape}
            options={{ along: 'along the line', straight: 'straight to the disc' }}
            onPick={tape => change({ tape })}
          />
        )}
      </div>
      {isSpecialShape(manner.shape) && (
        <p className="soft" role="note">
          {MANY[manner.shape]} are fitted on their own, from {FEWEST_SPECIAL_THROWS} of a disc and hand on that have
          their side: measure it too.
        </p>
      )}
      {way === 'tape' && (
        <div className="throw-measure">
          <TextField
            className="typed-field big-field"
            value={distance}
            onChange={setDistance}
            isInvalid={wrong.distance !== undefined}
            autoFocus
            onKeyDown={event => {
              // with nothing typed there is nothing else to take back than the last throw
              if (isUndo(event) && distance === '' && side === '') {
                event.preventDefault();
                return undo();
              }
              if (event.key !== 'Enter') return;
              event.preventDefault();
              if (readDistance() === null) return;
              setWrong({});
              sideField.current?.focus();
            }}
          >
            <Label>Distance, {settings.length}</Label>
            <Input ref={distanceField} inputMode="decimal" autoComplete="off" />
            <FieldError>{wrong.distance}</FieldError>
          </TextField>
          <TextField
            className="typed-field big-field"
            value={side}
            onChange={setSide}
            isInvalid={wrong.side !== undefined}
            onKeyDown={event => {
              if (event.key !== 'Escape') return;
              setWrong({});
              distanceField.current?.focus();
            }}
          >
            <Label>Side, {settings.length}: − left, right +</Label>
            <Input ref={sideField} autoComplete="off" />
            <FieldError>{wrong.side}</FieldError>
          </TextField>
          <Button type="submit" className="button">
            Add throw
          </Button>
          <p className="soft">
            Enter moves on. “3 l” is 3 left; an empty side means it was not measured. Ctrl+Z takes the last throw back.
          </p>
        </div>
      )}
    </Form>
  );
}

const isUndo = ({ ctrlKey, metaKey, shiftKey, key }: KeyPress) =>
  (ctrlKey || metaKey) && !shiftKey && key.toLowerCase() === 'z';
type KeyPress = Readonly<{ ctrlKey: boolean; metaKey: boolean; shiftKey: boolean; key: string }>;
