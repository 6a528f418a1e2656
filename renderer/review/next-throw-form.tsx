import { type RefObject, useId } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { Problem } from '../../core/units/result.ts';
import { Pick as PickOne } from '../fieldwork/pick.tsx';
import { useUnits } from '../words/use-units.ts';
import type { ThrowDraft } from './throw-draft.ts';

const HANDS = { '': 'backhand', forehand: 'forehand' } as const;
const SHAPES = {
  '': 'not written',
  flat: 'flat',
  hyzer: 'hyzer',
  anhyzer: 'anhyzer',
  putt: 'putt',
  roller: 'roller',
  overhead: 'overhead',
} as const;
const POWERS = {
  '': 'not written',
  '1': 'full',
  '0.9': '90 %',
  '0.8': '80 %',
  '0.7': '70 %',
  '0.6': '60 %',
  '0.5': '50 %',
};
const PENALTIES = {
  '': 'none',
  'out-of-bounds': 'out-of-bounds',
  hazard: 'hazard',
  mando: 'missed mando',
  lost: 'lost disc',
  unplayable: 'unplayable lie',
} as const;

type NextThrowFormProps = Readonly<{
  title: string;
  draft: ThrowDraft;
  discs: readonly Readonly<{ id: string; name: string }>[];
  problems: readonly Problem[];
  /** How far the tapped places are from the basket, in words. */
  tapped: string | null;
  lieTapped: string | null;
  firstField: RefObject<HTMLSelectElement | null>;
  /** Fills in the shot the plan asks for; null when there is none for this throw. */
  onPlanned: (() => void) | null;
  onChange: (draft: ThrowDraft) => void;
  onAdd: () => void;
  onHoled: () => void;
  /** Leaves a throw that is being changed as it was. */
  onLeave: (() => void) | null;
}>;

/** One throw, fast: disc, how far from the basket, next. The rest of it is optional. */
export function NextThrowForm(props: NextThrowFormProps) {
  const { title, draft, discs, problems, tapped, lieTapped, firstField, onPlanned, onChange, onAdd, onHoled, onLeave } =
    props;
  const units = useUnits();
  const unit = units.lengthUnit_m === 1 ? 'm' : 'ft';
  const discField = useId();
  const set = (change: Partial<ThrowDraft>) => onChange({ ...draft, ...change });
  const setLine = (change: Partial<ThrowDraft>) => set({ ...change, planned: null });
  const power =
    POWERS[draft.power as keyof typeof POWERS] === undefined
      ? { ...POWERS, [draft.power]: `${Math.round(Number(draft.power) * 100)} %` }
      : POWERS;
  return (
    <form
      className="throw-form"
      aria-label={title}
      onSubmit={event => {
        event.preventDefault();
        onAdd();
      }}
      onKeyDown={event => {
        if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
          event.preventDefault();
          onHoled();
        }
        if (event.key === 'Escape') onLeave?.();
      }}
    >
      <h3>{title}</h3>
      <div className="throw-fields">
        <label className="plain-field" htmlFor={discField}>
          <span>Disc</span>
          <select
            id={discField}
            ref={firstField}
            value={draft.discId}
            onChange={event => setLine({ discId: event.target.value })}
          >
            <option value="">not written</option>
            {discs.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {tapped === null ? (
          <>
            <TextField
              className="typed-field"
              value={draft.toBasket}
              onChange={toBasket => set({ toBasket })}
              autoComplete="off"
            >
              <Label>To the basket, {unit}</Label>
              <Input inputMode="decimal" />
            </TextField>
            <TextField className="typed-field" value={draft.side} onChange={side => set({ side })} autoComplete="off">
              <Label>Aside, {unit} (3 left)</Label>
              <Input />
            </TextField>
            <label className="check-field">
              <input
                type="checkbox"
                checked={draft.isBeyond}
                onChange={event => set({ isBeyond: event.target.checked })}
              />
              past it
            </label>
          </>
        ) : (
          <p className="tapped-place">
            {tapped}
            <Button className="small-button" onPress={() => set({ tapped: null })}>
              Type instead
            </Button>
          </p>
        )}
        <div className="throw-buttons">
          <Button type="submit" className="button">
            {onLeave === null ? 'Add throw' : 'Keep change'}
          </Button>
          <Button className="button holed-button" onPress={onHoled}>
            Holed
          </Button>
        </div>
      </div>
      <div className="throw-fields throw-more">
        <PickOne
          label="Hand"
          value={draft.hand === 'forehand' ? 'forehand' : ''}
          options={HANDS}
          onPick={hand => setLine({ hand })}
        />
        <PickOne label="Line" value={draft.shape} options={SHAPES} onPick={shape => setLine({ shape })} />
        <PickOne label="Power meant" value={draft.power} options={power} onPick={next => setLine({ power: next })} />
        <TextField className="typed-field" value={draft.aim} onChange={aim => setLine({ aim })} autoComplete="off">
          <Label>Aim, ° (5 left)</Label>
          <Input />
        </TextField>
        <PickOne label="Penalty" value={draft.penalty} options={PENALTIES} onPick={penalty => set({ penalty })} />
        <label className="check-field">
          <input type="checkbox" checked={draft.hit} onChange={event => set({ hit: event.target.checked })} />
          hit something
        </label>
        {draft.penalty !== '' &&
          (lieTapped === null ? (
            <TextField
              className="typed-field"
              value={draft.lieToBasket}
              onChange={lieToBasket => set({ lieToBasket })}
              autoComplete="off"
            >
              <Label>Play went on, {unit} to the basket</Label>
              <Input inputMode="decimal" placeholder="by the rules" />
            </TextField>
          ) : (
            <p className="tapped-place">
              {lieTapped}
              <Button className="small-button" onPress={() => set({ lieTapped: null })}>
                Type instead
              </Button>
            </p>
          ))}
        {onPlanned !== null && (
          <Button className="small-button" onPress={onPlanned}>
            Thrown as planned
          </Button>
        )}
        {draft.planned !== null && <p className="soft">Line and aim as planned.</p>}
        {onLeave !== null && (
          <Button className="small-button" onPress={onLeave}>
            Leave as it was
          </Button>
        )}
      </div>
      {problems.length > 0 && (
        <ul className="field-problem" role="alert">
          {problems.map(({ path, message }) => (
            <li key={path + message}>
              {path}: {message}
            </li>
          ))}
        </ul>
      )}
    </form>
  );
}
