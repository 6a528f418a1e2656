import { Button } from 'react-aria-components';
import { usePlanner } from '../state/planner.tsx';

const MOST_SHOWN = 12;

/** What went wrong, where, and how to mend it; stays until it is put away. */
export function ProblemPanel() {
  const { trouble, tell } = usePlanner();
  if (trouble === null) return null;
  const more = trouble.problems.length - MOST_SHOWN;
  return (
    <section className="problem-panel" role="alert">
      <div className="problem-head">
        <h2>{trouble.what}</h2>
        <Button className="small-button" onPress={() => tell(null)}>
          Put away
        </Button>
      </div>
      <ul>
        {trouble.problems.slice(0, MOST_SHOWN).map(problem => (
          <li key={`${problem.path} ${problem.message}`}>
            <code>{problem.path}</code> {problem.message}
          </li>
        ))}
      </ul>
      {more > 0 && <p>and {more} more; mend these first.</p>}
    </section>
  );
}
