import { inUnits } from '../../core/sheet/words/lengths.ts';
import { usePlanner } from '../state/planner.tsx';

type CautionsProps = Readonly<{
  cautions: readonly string[];
  assumptions: readonly string[];
  notMapped: readonly string[];
}>;

/** What could hurt somebody, what the map only assumes, and what it says nothing about. */
export function Cautions({ cautions, assumptions, notMapped }: CautionsProps) {
  const { settings } = usePlanner();
  return (
    <div className="cautions">
      {cautions.length > 0 && (
        <>
          <h3>Take care</h3>
          <ul className="care-list">
            {cautions.map(text => (
              <li key={text}>{inUnits(text, settings)}</li>
            ))}
          </ul>
        </>
      )}
      {(assumptions.length > 0 || notMapped.length > 0) && (
        <details>
          <summary>What the map leaves open</summary>
          <ul>
            {notMapped.length > 0 && <li>Not mapped, so not known: {notMapped.join(', ')}</li>}
            {assumptions.map(text => (
              <li key={text}>{inUnits(text, settings)}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
