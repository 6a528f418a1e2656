import { useCallback, useEffect, useState } from 'react';
import type { Input, Output } from '../../backend/api/contract/api.ts';
import type { PickedFile } from '../../backend/api/contract/course-file.ts';
import type { Problem } from '../../core/units/result.ts';
import { usePlanner } from '../state/planner.tsx';

export type Reading = Output<'readCourseFile'>;
export type Report = Reading['report'];
export type Update = NonNullable<Reading['update']>;
type Choices = NonNullable<Input<'readCourseFile'>['choices']>;
export type RoleChoice = NonNullable<Choices['roles']>[number];

/** What the player says of a file so far. */
export type Answers = Readonly<{
  choices: Choices;
  /** The course to update; null: a new one. */
  updateOf: string | null;
  /** Differences to take; null: as proposed. */
  take: readonly string[] | null;
}>;

export type CourseFileReading = Readonly<{
  answers: Answers;
  answer: (change: Partial<Answers>) => void;
  /** The newest answer; null while the first is awaited. */
  reading: Reading | null;
  /** Why not even a report could be made. */
  problems: readonly Problem[];
  isReading: boolean;
}>;

/** Typing must not ask for every letter. */
const PAUSE_ms = 180;
const NO_ANSWERS: Answers = { choices: {}, updateOf: null, take: null };

/** Reads a course file again whenever an answer changes; an older reading never takes a newer one's place. */
export function useCourseFileReading(file: PickedFile): CourseFileReading {
  const { backend } = usePlanner();
  const [answers, setAnswers] = useState(NO_ANSWERS);
  const [reading, setReading] = useState<Reading | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isReading, setIsReading] = useState(true);
  useEffect(() => {
    let isCurrent = true;
    setIsReading(true);
    const timer = setTimeout(
      async () => {
        const { choices, updateOf, take } = answers;
        const answer = await backend.call.readCourseFile({
          ...file,
          choices,
          ...(updateOf === null ? {} : { updateOf }),
          ...(take === null ? {} : { take: [...take] }),
        });
        if (!isCurrent) return;
        setIsReading(false);
        setProblems(answer.ok ? [] : answer.problems);
        if (!answer.ok) return;
        setReading(answer.value);
        // A map that came before is an update unless the player says otherwise.
        const { sameAs } = answer.value;
        if (answers === NO_ANSWERS && sameAs !== null) setAnswers({ ...NO_ANSWERS, updateOf: sameAs.courseId });
      },
      answers === NO_ANSWERS ? 0 : PAUSE_ms,
    );
    return () => {
      isCurrent = false;
      clearTimeout(timer);
    };
  }, [backend, file, answers]);
  const answer = useCallback((change: Partial<Answers>) => setAnswers(now => ({ ...now, ...change })), []);
  return { answers, answer, reading, problems, isReading };
}
