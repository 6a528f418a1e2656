import { useUnits } from '../words/use-units.ts';
import { differenceWords, holeWords } from './difference-words.ts';
import type { Answers, Update } from './use-course-file.ts';

type Difference = Update['differences'][number];
type DifferencesProps = Readonly<{
  update: Update;
  taken: readonly string[];
  answer: (change: Partial<Answers>) => void;
}>;

/** What an update would change, hole by hole and thing by thing; what the player drew since stays unless it is ticked. */
export function Differences({ update, taken, answer }: DifferencesProps) {
  const units = useUnits();
  const { differences, holes, same, hasDraft, pinsAndNotes } = update;
  const byFile = differences.filter(({ by, does, isTaken }) => by === 'file' && (does !== 'remove' || isTaken));
  const unknown = differences.filter(({ by, does, isTaken }) => by === 'file' && does === 'remove' && !isTaken);
  const yours = differences.filter(({ by }) => by !== 'file');
  const toggle = (key: string, isOn: boolean) =>
    answer({ take: isOn ? [...taken, key] : taken.filter(other => other !== key) });
  const list = (lines: readonly Difference[]) => (
    <ul className="difference-list">
      {lines.map(difference => (
        <li key={difference.key}>
          <label className="check-field">
            <input
              type="checkbox"
              checked={taken.includes(difference.key)}
              onChange={event => toggle(difference.key, event.target.checked)}
            />
            <span>{differenceWords(difference, units)}</span>
          </label>
        </li>
      ))}
    </ul>
  );
  return (
    <section aria-label="Differences" className="differences">
      <h3>What this does to {update.name}</h3>
      <ul>
        {holes.map(hole => (
          <li key={hole.ref}>{holeWords(hole, units)}</li>
        ))}
        {holes.length === 0 && <li>No hole changes.</li>}
        {pinsAndNotes.length > 0 && (
          <li className="care-word">
            Pins and notes of {pinsAndNotes.map(ref => `hole ${ref}`).join(', ')} stay with a hole that goes.
          </li>
        )}
        {hasDraft && (
          <li className="care-word">
            You have drawn changes to this course that are not saved: saving them later would undo this update.
          </li>
        )}
      </ul>
      {byFile.length > 0 && (
        <>
          <h3>Changed in the map ({byFile.length})</h3>
          {list(byFile)}
        </>
      )}
      {unknown.length > 0 && (
        <>
          <h3>Not in this map, which may not know such things ({unknown.length}): kept unless you tick it</h3>
          {list(unknown)}
        </>
      )}
      {yours.length > 0 && (
        <>
          <h3>Changed by you since ({yours.length}): kept unless you tick it</h3>
          {list(yours)}
        </>
      )}
      <p className="soft">{same} things are the same in both.</p>
    </section>
  );
}
