import type { ThrowRow, ThrowsReport } from '../../core/player/throws-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { counted } from '../words/counted.ts';
import { useUnits } from '../words/use-units.ts';
import { BASIS_WORDS } from './basis-words.ts';
import { SpecialList } from './special-list.tsx';

const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)

/** How far and where every disc goes from each hand, and how sure that is. */
export function RangePanel({ report }: Readonly<{ report: ThrowsReport }>) {
  const units = useUnits();
  const give = (sd_m: number) => ` ±\u00a0${units.length(NORMAL_90 * sd_m, 0).replace(' ', '\u00a0')}`;
  const handsOf = (row: ThrowRow) => report.throws.filter(t => t.discId === row.discId).length;
  return (
    <>
      <p>
        Calm air, level grass, thrown flat at full power. Plans use the <strong>average day</strong>; the best is one
        throw in twenty. ± holds the truth nine times in ten.
      </p>
      <ScrollTable label="Range of every disc">
        <table className="disc-table range-table">
          <caption className="unseen">Range of every disc from each hand, with its uncertainty</caption>
          <thead>
            <tr>
              <th scope="col">Disc</th>
              <th scope="col">Hand</th>
              <th scope="col">Average day</th>
              <th scope="col">Best</th>
              <th scope="col">Ends</th>
              <th scope="col">One throw strays</th>
              <th scope="col">Known how</th>
            </tr>
          </thead>
          <tbody>
            {report.throws.map((row, i) => {
              const isFirst = report.throws[i - 1]?.discId !== row.discId;
              return (
                <tr key={`${row.discId} ${row.hand}`} data-guess={row.basis === 'predicted' || undefined}>
                  {isFirst && (
                    <th scope="rowgroup" rowSpan={handsOf(row)}>
                      {row.disc}
                      {row.role === 'putting' && <span className="soft"> kept for putts: no plan throws it</span>}
                    </th>
                  )}
                  <td>{row.hand}</td>
                  <td>
                    <strong>{units.length(row.averageDay_m, 0)}</strong>
                    {give(row.uncertainty.averageDay_m)}
                  </td>
                  <td>
                    {units.length(row.best_m, 0)}
                    {give(row.uncertainty.best_m)}
                  </td>
                  <td>
                    {units.side(row.finish_m)}
                    {give(row.uncertainty.finish_m)}
                  </td>
                  <td>
                    {units.length(row.scatter.distance_m, 0)} long, {units.length(row.scatter.side_m, 0)} sideways
                  </td>
                  <td>
                    {BASIS_WORDS[row.basis]}
                    {row.n > 0 && <span className="soft">, {counted(Math.round(row.n), 'throw')}</span>}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollTable>
      <SpecialList rows={report.throws} />
      <RangeNotes report={report} />
    </>
  );
}

/** The same remark on several discs is said once. */
function RangeNotes({ report }: Readonly<{ report: ThrowsReport }>) {
  const names = new Map<string, string[]>();
  for (const { disc, hand, notes, readiness } of report.throws)
    for (const note of notes)
      if (note !== readiness.text) names.set(note, [...(names.get(note) ?? []), `${disc} ${hand}`]);
  if (names.size === 0) return null;
  return (
    <details className="range-notes">
      <summary>Notes on these figures ({names.size})</summary>
      <ul>
        {[...names].map(([note, of]) => (
          <li key={note}>
            {of.join(', ')}: {note}.
          </li>
        ))}
      </ul>
    </details>
  );
}
