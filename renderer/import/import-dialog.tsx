import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useId, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { PickedFile } from '../../backend/api/contract/course-file.ts';
import { goTo } from '../shell/use-place.ts';
import { usePlanner } from '../state/planner.tsx';
import { Differences } from './differences.tsx';
import { FileFacts } from './file-facts.tsx';
import { ImportMap } from './import-map.tsx';
import { ImportQuestions } from './import-questions.tsx';
import { PlaceTable } from './place-table.tsx';
import { type CourseFileReading, type Update, useCourseFileReading } from './use-course-file.ts';
import { doneWithCourseFile, useCourseFile } from './waiting-files.ts';

const MOST_SHOWN = 12;

/** Shows the next course file picked, if any, and takes it in when the player agrees. */
export function ImportDialog() {
  const file = useCourseFile();
  // A key of its own for each file, so that nothing said of one is kept for the next.
  const number = useRef({ file, count: 0 });
  if (number.current.file !== file) number.current = { file, count: number.current.count + 1 };
  return file === null ? null : <OneFile key={number.current.count} file={file} />;
}

function OneFile({ file }: Readonly<{ file: PickedFile }>) {
  const { tell } = usePlanner();
  const work = useCourseFileReading(file);
  const { reading, problems } = work;
  const refused = reading !== null && reading.report.kind === null ? reading.report.problems : problems;
  const isRefused = refused.length > 0 && (reading === null || reading.report.kind === null);
  useEffect(() => {
    if (!isRefused) return;
    tell({ what: `"${file.fileName}" could not be taken in`, problems: refused });
    doneWithCourseFile();
  }, [isRefused, refused, file, tell]);
  return isRefused ? null : <FileDialog file={file} work={work} />;
}

function FileDialog({ file, work }: Readonly<{ file: PickedFile; work: CourseFileReading }>) {
  const { backend } = usePlanner();
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  const { answers, answer, reading, problems, isReading } = work;
  const accepted = useAccepted();
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  const update = reading?.update ?? null;
  const report = reading?.report ?? null;
  const wrong = [...problems, ...(report?.problems ?? []), ...(update?.problems ?? [])];
  const taken = update === null ? [] : (answers.take ?? update.differences.filter(d => d.isTaken).map(d => d.key));
  const isReady = !isReading && report?.ok === true && wrong.length === 0 && (update === null || taken.length > 0);
  const accept = async () => {
    if (report === null) return;
    // What the table shows is what is agreed to.
    const roles = answers.choices.roles ?? report.items.map(({ index, chosen }) => ({ index, ...chosen }));
    const input = { ...file, choices: { ...answers.choices, roles } };
    if (update !== null) {
      const { courseId, basis } = update;
      await accepted(
        `"${update.name}" could not be updated`,
        backend.call.updateCourse({ ...input, courseId, basis, take: [...taken] }),
        'updated',
      );
    } else await accepted(`"${file.fileName}" could not be taken in`, backend.call.importCourse(input), 'added');
    doneWithCourseFile();
  };
  return (
    <dialog ref={dialog} className="import-dialog" aria-labelledby={title} onClose={doneWithCourseFile}>
      <div className="import-head">
        <h2 id={title}>Import {file.fileName}</h2>
        <Button className="small-button" onPress={doneWithCourseFile}>
          Leave it
        </Button>
      </div>
      {report === null ? (
        <p className="import-waiting" role="status">
          Reading the file…
        </p>
      ) : (
        <div className="import-body" aria-busy={isReading}>
          <div className="import-words">
            <FileFacts report={report} />
            <ImportQuestions reading={reading!} answers={answers} answer={answer} />
            {wrong.length > 0 && (
              <section className="import-problems" role="alert">
                <h3>Not a course yet</h3>
                <ul>
                  {wrong.slice(0, MOST_SHOWN).map(problem => (
                    <li key={`${problem.path} ${problem.message}`}>
                      <code>{problem.path}</code> {problem.message}
                    </li>
                  ))}
                </ul>
                {wrong.length > MOST_SHOWN && <p>and {wrong.length - MOST_SHOWN} more; mend these first.</p>}
              </section>
            )}
            {update !== null && <Differences update={update} taken={taken} answer={answer} />}
            {report.items.length > 0 && <PlaceTable report={report} answers={answers} answer={answer} />}
          </div>
          <ImportMap reading={reading!} />
        </div>
      )}
      {report !== null && (
        <div className="import-foot">
          <p role="status">
            {isReading
              ? 'Reading again…'
              : footWords(report.ok && wrong.length === 0, reading!.holes.length, update, taken.length)}
          </p>
          <Button className="button" isDisabled={!isReady} onPress={() => void accept()}>
            {update === null ? 'Add this course' : `Update ${update.name}`}
          </Button>
        </div>
      )}
    </dialog>
  );
}

function footWords(isGood: boolean, holes: number, update: Update | null, taken: number): string {
  if (!isGood) return 'Nothing is taken in until what is wrong is mended.';
  if (update === null) return `${holes} ${holes === 1 ? 'hole' : 'holes'}. Nothing is taken in until you add it.`;
  if (update.differences.length === 0) return `Your ${update.name} is the same as this map: nothing to update.`;
  return `${taken} of ${update.differences.length} differences would be taken. Nothing changes until you update.`;
}

/** Takes an accepted course in and shows it. */
function useAccepted() {
  const { backend, changeLibrary, change, say } = usePlanner();
  const queries = useQueryClient();
  return async (failed: string, call: ReturnType<typeof backend.call.importCourse>, done: 'added' | 'updated') => {
    const taken = await changeLibrary(failed, call);
    if (taken === null) return;
    const course = await backend.call.getCourse({ courseId: taken.courseId });
    // The list must hold it first, or it would count as gone.
    await queries.invalidateQueries({ queryKey: ['courses'], exact: true });
    change({ courseId: taken.courseId, ref: course.ok ? (course.value.holes[0]?.ref ?? null) : null });
    say(course.ok ? `Course ${course.value.name} ${done}: ${course.value.holes.length} holes` : `Course ${done}`);
    goTo('course');
  };
}
