import { ScrollTable } from '../shell/scroll-table.tsx';
import type { Fieldwork } from '../state/fieldwork.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';
import { STANDING_WORDS } from './scatter-marks.tsx';
import type { Scatter } from './scatter-panel.tsx';
import { sessionName, sideWords } from './session-words.ts';

type ScatterTableProps = Readonly<{
  view: Scatter['views'][number];
  unused: Scatter['unused'];
  work: Fieldwork;
}>;

/** The points of the picture as words: which throw, where, and what it counts; those set aside come first. */
export function ScatterTable({ view, unused, work }: ScatterTableProps) {
  const units = useUnits();
  const nameOf = (session: number, place: number) => {
    const found = work.sessions[session];
    return `${found === undefined ? `Session ${session + 1}` : sessionName(found, session)}, throw ${place + 1}`;
  };
  const points = [...view.points].sort((a, b) => a.weight - b.weight);
  const odd = points.filter(({ standing }) => standing !== 'counts').length;
  return (
    <details className="scatter-throws" open={odd > 0 && points.length <= 12}>
      <summary>
        {points.length} throws in this picture,{' '}
        {odd === 0 ? 'all of them counted in full' : `${odd} ${odd === 1 ? 'counts' : 'count'} less or next to nothing`}
        {unused.length > 0 && `; ${unused.length} more ${unused.length === 1 ? 'says' : 'say'} nothing of the arm`}
      </summary>
      <ScrollTable label="Throws of this picture">
        <table className="disc-table">
          <caption>Those that count least first</caption>
          <thead>
            <tr>
              <th scope="col">Throw</th>
              <th scope="col">Distance</th>
              <th scope="col">Side</th>
              <th scope="col">Counts</th>
            </tr>
          </thead>
          <tbody>
            {points.map(({ session, place, along_m, side_m, weight, standing }) => (
              <tr key={`${session} ${place}`}>
                <th scope="row">{nameOf(session, place)}</th>
                <td>{units.length(along_m, 1)}</td>
                <td>{sideWords(side_m, units)}</td>
                <td>
                  {standing === 'set aside' && <span aria-hidden="true">✕ </span>}
                  {STANDING_WORDS[standing]}
                  {standing === 'counts less' && `, ${percent(weight)}`}
                </td>
              </tr>
            ))}
            {unused.map(({ session, place, along_m, side_m, why }) => (
              <tr key={`${session} ${place} unused`}>
                <th scope="row">{nameOf(session, place)}</th>
                <td>{units.length(along_m, 1)}</td>
                <td>{sideWords(side_m, units)}</td>
                <td>not used: {why}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
    </details>
  );
}
