import { Button } from 'react-aria-components';
import type { Problem } from '../../../core/units/result.ts';
import { keyed } from '../../frame/keyed.ts';

const MOST_SHOWN = 8;

type ProblemListProps = Readonly<{
  /** Null: not looked at yet. */
  problems: readonly Problem[] | null;
  /** Shows the thing a problem names. */
  onShow: (index: number) => void;
}>;

/** What keeps the map from being a course, as it is drawn. */
export function ProblemList({ problems, onShow }: ProblemListProps) {
  if (problems === null) return <p className="draft-standing soft">Looking it over…</p>;
  if (problems.length === 0) return <p className="draft-standing good-word">Whole: it can be saved.</p>;
  return (
    <section className="draft-problems" aria-label="To mend before saving">
      <h3>To mend before saving: {problems.length}</h3>
      <ul>
        {keyed(problems.slice(0, MOST_SHOWN)).map(({ key, item: { path, message } }) => {
          const index = thingIndex(path);
          return (
            <li key={key}>
              {message}{' '}
              {index !== null && (
                <Button className="small-button" onPress={() => onShow(index)}>
                  Show
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      {problems.length > MOST_SHOWN && <p className="soft">and {problems.length - MOST_SHOWN} more</p>}
    </section>
  );
}

/** The feature a path points into. */
export function thingIndex(path: string): number | null {
  const found = /^features\[(\d+)\]/.exec(path);
  return found === null ? null : Number(found[1]);
}
