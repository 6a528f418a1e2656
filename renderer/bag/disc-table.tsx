import { Button } from 'react-aria-components';
import type { DiscEntry } from '../../backend/api/contract/players.ts';
import type { ThrowsReport } from '../../core/player/throws-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { useUnits } from '../words/use-units.ts';
import { BASIS_WORDS } from './basis-words.ts';

type Disc = DiscEntry & Readonly<{ class: string }>;
type Row = ThrowsReport['throws'][number];
type DiscTableProps = Readonly<{
  discs: readonly Disc[];
  throws: readonly Row[] | undefined;
  /** What stands where nothing is known (yet). */
  waiting: string;
  edited: string | null;
  onEdit: (discId: string) => void;
  onRemove: (discId: string) => void;
}>;

/** What is printed on the discs, and what they do on an average day. */
export function DiscTable({ discs, throws, waiting, edited, onEdit, onRemove }: DiscTableProps) {
  const units = useUnits();
  const fitted = new Map(throws?.map(row => [`${row.discId} ${row.hand}`, row]));
  const range = (row: Row | undefined) =>
    row === undefined ? waiting : `${units.length(row.averageDay_m, 0)}, ${units.side(row.finish_m)}`;
  return (
    <ScrollTable label="Discs">
      <table className="disc-table">
        <caption>Discs: what is printed on them, and what they do when you throw them on an average day</caption>
        <thead>
          <tr>
            <th scope="col">Disc</th>
            <th scope="col">Speed</th>
            <th scope="col">Glide</th>
            <th scope="col">Turn</th>
            <th scope="col">Fade</th>
            <th scope="col">Backhand</th>
            <th scope="col">Forehand</th>
            <th scope="col">Known how</th>
            <th scope="col">
              <span className="unseen">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {discs.map(disc => {
            const [back, fore] = [fitted.get(`${disc.id} backhand`), fitted.get(`${disc.id} forehand`)];
            return (
              <tr key={disc.id} data-edited={edited === disc.id || undefined}>
                <th scope="row">
                  {disc.name}
                  <span className="soft">
                    {' '}
                    {disc.class}
                    {disc.role === 'putting' ? ', for putting' : ''}
                  </span>
                  {back?.readiness.verdict === 'too fast for now' && (
                    <span className="care-word"> too fast for now</span>
                  )}
                </th>
                <td>{signed(disc.speed)}</td>
                <td>{signed(disc.glide)}</td>
                <td>{signed(disc.turn)}</td>
                <td>{signed(disc.fade)}</td>
                <td>{range(back)}</td>
                <td>{range(fore)}</td>
                <td>{knownHow(back?.basis, fore?.basis)}</td>
                <td>
                  <div className="row-buttons">
                    <Button className="small-button" aria-label={`Edit ${disc.name}`} onPress={() => onEdit(disc.id)}>
                      Edit
                    </Button>
                    <Button
                      className="small-button danger"
                      aria-label={`Delete ${disc.name}`}
                      onPress={() => onRemove(disc.id)}
                    >
                      Delete
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

const signed = (value: number): string => String(value).replace('-', '−');

/** How both hands' figures are known; each hand on its own when they differ. */
function knownHow(back?: Basis, fore?: Basis): string {
  const words = (basis?: Basis) => (basis === undefined ? '' : BASIS_WORDS[basis]);
  if (back === undefined || fore === undefined || back === fore) return words(back ?? fore);
  return `backhand ${words(back)}; forehand ${words(fore)}`;
}

type Basis = keyof typeof BASIS_WORDS;
