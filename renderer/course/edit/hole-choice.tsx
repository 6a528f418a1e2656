import { TypedField } from '../../shell/typed-field.tsx';
import { nextRef } from './hole-parts.ts';

type HoleChoiceProps = Readonly<{
  refs: readonly string[];
  shown: string | null;
  onShow: (ref: string) => void;
  onRenumber: (from: string, to: string) => void;
}>;

/** Which hole is worked on: what is drawn belongs to it. */
export function HoleChoice({ refs, shown, onShow, onRenumber }: HoleChoiceProps) {
  const fresh = nextRef(refs);
  const isThere = shown !== null && refs.includes(shown);
  return (
    <div className="hole-choice">
      <label className="inline-field">
        <span>Hole</span>
        <select value={shown ?? ''} onChange={event => onShow(event.target.value)}>
          {shown === null && <option value="">none</option>}
          {refs.map(ref => (
            <option key={ref} value={ref}>
              {ref}
            </option>
          ))}
          {!isThere && shown !== null && shown !== fresh && <option value={shown}>{shown}</option>}
          <option value={fresh}>{fresh} (new)</option>
        </select>
      </label>
      {isThere && (
        <TypedField
          className="renumber-field"
          label="Call it"
          text={shown}
          read={text =>
            text.trim() === ''
              ? { ok: false, problems: [{ path: 'ref', message: 'write a number or a word' }] }
              : { ok: true, value: text.trim() }
          }
          onValue={to => onRenumber(shown, to)}
        />
      )}
    </div>
  );
}
