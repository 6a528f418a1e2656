import { countWords } from '../../core/course/count-words.ts';
import type { Report } from './use-course-file.ts';

/** What the file is and holds, what was left out of it, and what is assumed. */
export function FileFacts({ report }: Readonly<{ report: Report }>) {
  const { kindWords, encoding, read, counts, leftOut, assumptions, notMapped } = report;
  const listed = (lines: Report['read']) => lines.map(counted).join(', ');
  return (
    <section aria-label="What the file holds">
      <p>
        {kindWords}
        {encoding === null || encoding === 'utf-8' ? '' : `, written in ${encoding}`}: {listed(read)}.
      </p>
      {counts.length > 0 && <p className="soft">It makes a course with {counts.map(countWords).join(', ')}.</p>}
      {notMapped.length > 0 && counts.length > 0 && (
        <p className="soft">Not mapped, so not known: {notMapped.join(', ')}.</p>
      )}
      {leftOut.length > 0 && (
        <details className="assumptions">
          <summary>Left out: {leftOut.map(counted).join(', ')}</summary>
          <ul>
            {leftOut.map(({ what, count, why }) => (
              <li key={what + why}>
                {counted({ what, count })}: {why}
              </li>
            ))}
          </ul>
        </details>
      )}
      {assumptions.length > 0 && (
        <details className="assumptions">
          <summary>
            {assumptions.length} {assumptions.length === 1 ? 'thing is' : 'things are'} read so or assumed
          </summary>
          <ul>
            {assumptions.map(({ path, message }) => (
              <li key={path + message}>
                <code>{path}</code> {message}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** "1 waypoint"; words that are no plain plural stay as they are. */
const counted = ({ what, count }: Readonly<{ what: string; count: number }>) =>
  `${count} ${count === 1 && /^(?:\w+ )?\w+s$/.test(what) ? what.slice(0, -1) : what}`;
