import { Button } from 'react-aria-components';
import type { LieToLie } from '../../core/review/hole-lies.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import type { RoundThrow } from '../state/rounds.ts';
import { useUnits } from '../words/use-units.ts';

type EnteredThrowsProps = Readonly<{
  holeRef: string;
  throws: readonly RoundThrow[];
  lies: readonly LieToLie[];
  toBasket: (lie: LieToLie) => number | null;
  nameOf: (discId: string | undefined) => string;
  /** Index of the throw that is being changed. */
  changed: number | null;
  onChange: (index: number) => void;
  onRemove: (index: number) => void;
}>;

/** What was entered of a hole, throw by throw. */
export function EnteredThrows(props: EnteredThrowsProps) {
  const { holeRef, throws, lies, toBasket, nameOf, changed, onChange, onRemove } = props;
  const units = useUnits();
  if (throws.length === 0) return null;
  return (
    <ScrollTable label={`Throws of hole ${holeRef}`}>
      <table className="disc-table">
        <caption className="unseen">Throws of hole {holeRef}</caption>
        <thead>
          <tr>
            <th scope="col">Throw</th>
            <th scope="col">Disc and line</th>
            <th scope="col">To the basket</th>
            <th scope="col">Penalty</th>
            <th scope="col">
              <span className="unseen">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {throws.map((t, i) => {
            const left_m = toBasket(lies[i]!);
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: throws have no names of their own but their number
              <tr key={i} data-changed={changed === i || undefined}>
                <th scope="row">{i + 1}</th>
                <td>
                  {[nameOf(t.discId), t.hand === 'forehand' ? 'forehand' : null, t.shape].filter(Boolean).join(', ')}
                </td>
                <td>
                  {t.holed ? 'in the basket' : left_m === null ? 'not written' : units.length(left_m)}
                  {lies[i]!.assumed.length > 0 && <span className="soft"> {lies[i]!.assumed.join('; ')}</span>}
                </td>
                <td>{(t.penalties ?? []).map(({ kind }) => kind).join(', ') || '–'}</td>
                <td>
                  <div className="row-buttons">
                    <Button className="small-button" aria-label={`Change throw ${i + 1}`} onPress={() => onChange(i)}>
                      Change
                    </Button>
                    <Button className="small-button" aria-label={`Take throw ${i + 1} out`} onPress={() => onRemove(i)}>
                      Take out
                    </Button>
                  </div>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollTable>
  );
}
