import type { ReactNode } from 'react';
import type { Group, Sum } from '../../core/review/review-report.ts';
import { ScrollTable } from '../shell/scroll-table.tsx';
import { choiceWords, signed } from './cost-words.ts';

/** The heads and cells every table of sums ends with. */
export const SumHeads = (): ReactNode => (
  <>
    <th scope="col" className="number">
      Won
    </th>
    <th scope="col" className="number">
      Choice
    </th>
    <th scope="col" className="number">
      Execution
    </th>
  </>
);

export function SumCells({ sum }: Readonly<{ sum: Sum }>) {
  const isSplit = sum.split > 0;
  return (
    <>
      <td
        className="number"
        data-good={sum.gain.throws > 0.03 || undefined}
        data-bad={sum.gain.throws < -0.03 || undefined}
      >
        {signed(sum.gain.throws)}
      </td>
      <td className="number">{isSplit ? choiceWords(sum.choiceCost.throws) : '?'}</td>
      <td className="number">{isSplit ? signed(sum.executionCost.throws) : '?'}</td>
    </>
  );
}

/** Sums over throws that have something in common. */
export function SumsTable({ caption, groups }: Readonly<{ caption: string; groups: readonly Group[] }>) {
  return (
    <ScrollTable label={caption}>
      <table className="disc-table sums-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">{caption}</span>
            </th>
            <th scope="col" className="number">
              Throws
            </th>
            <SumHeads />
          </tr>
        </thead>
        <tbody>
          {groups.map(({ key, name, sum }) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              <td className="number">{sum.throws}</td>
              <SumCells sum={sum} />
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}
