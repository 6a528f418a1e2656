import { useId } from 'react';
import { useCourses } from '../state/library.ts';
import type { Answers, Reading } from './use-course-file.ts';

type ImportQuestionsProps = Readonly<{
  reading: Reading;
  answers: Answers;
  answer: (change: Partial<Answers>) => void;
}>;

/** New or an update, which course of several, what it is called, and whether its heights are to be believed. */
export function ImportQuestions({ reading, answers, answer }: ImportQuestionsProps) {
  const { report, sameAs } = reading;
  const { choices, updateOf } = answers;
  const courses = useCourses();
  const hint = useId();
  const change = (part: Answers['choices']) => answer({ choices: { ...choices, ...part }, take: null });
  return (
    <div className="import-questions">
      <label className="plain-field">
        <span>Take it in as</span>
        <select
          value={updateOf ?? ''}
          aria-describedby={sameAs === null ? undefined : hint}
          onChange={event => answer({ updateOf: event.target.value === '' ? null : event.target.value, take: null })}
        >
          <option value="">a new course</option>
          {courses.data?.map(({ courseId, name }) => (
            <option key={courseId} value={courseId}>
              an update of {name}
            </option>
          ))}
        </select>
      </label>
      {report.courses.length > 0 && (
        <label className="plain-field">
          <span>Course in the file</span>
          <select
            value={report.chosenCourse ?? ''}
            onChange={event => change({ course: event.target.value === '' ? undefined : event.target.value })}
          >
            <option value="">choose one of {report.courses.length}</option>
            {report.courses.map(({ id, name, holes }) => (
              <option key={id} value={id}>
                {name === '' ? id : name} ({holes} holes)
              </option>
            ))}
          </select>
        </label>
      )}
      {updateOf === null && report.course !== null && (
        <label className="plain-field">
          <span>Name of the course</span>
          <input
            type="text"
            maxLength={120}
            value={choices.name ?? report.course}
            onChange={event => change({ name: event.target.value.trim() === '' ? undefined : event.target.value })}
          />
        </label>
      )}
      {report.hasHeights && (
        <label className="check-field">
          <input
            type="checkbox"
            checked={choices.takeHeights === true}
            onChange={event => change({ takeHeights: event.target.checked })}
          />
          Take its heights above sea level (receivers are often 10 m out)
        </label>
      )}
      {sameAs !== null && updateOf === null && (
        <p className="soft" id={hint}>
          You have {sameAs.name} already: added as new, it will be there twice.
        </p>
      )}
    </div>
  );
}
