import type { PracticeReport } from '../state/practice.ts';
import { percent } from '../words/percent.ts';
import { useUnits } from '../words/use-units.ts';

/** Every course looked at: what suits, from which tee, and what is too long. */
export function PracticeCourses({
  courses,
  say,
}: Readonly<{ courses: PracticeReport['courses']; say: (text: string) => string }>) {
  const units = useUnits();
  return (
    <section aria-label="Courses looked at">
      <h3>Courses looked at, the best first</h3>
      {courses.map(({ key, course, text, holes }) => (
        <details key={key} className="practice-course">
          <summary>
            {course} <span className="soft">{say(text)}</span>
          </summary>
          <ul className="practice-list">
            {holes.map(hole => (
              <li key={hole.ref} data-out={hole.verdict === 'too long' || undefined}>
                <strong>{hole.ref}</strong> {hole.verdict === 'too long' ? 'leave out' : 'play'}: {say(hole.text)}
                {hole.tees.length > 1 && (
                  <span className="soft">
                    {' '}
                    (
                    {hole.tees
                      .map(tee => `${tee.tee} ${units.length(tee.playLength_m, 0)}, ${percent(tee.reach20Chance)}`)
                      .join('; ')}
                    )
                  </span>
                )}
              </li>
            ))}
          </ul>
        </details>
      ))}
    </section>
  );
}
