import { useEffect, useState } from 'react';
import { BagView } from '../bag/bag-view.tsx';
import { CompareView } from '../compare/compare-view.tsx';
import { CourseView } from '../course/course-view.tsx';
import { FieldworkView } from '../fieldwork/fieldwork-view.tsx';
import { ImportDialog } from '../import/import-dialog.tsx';
import { Hatches } from '../map/hatches.tsx';
import { PracticeView } from '../practice/practice-view.tsx';
import { ReviewView } from '../review/review-view.tsx';
import { RoundView } from '../round/round-view.tsx';
import { SheetView } from '../sheet/sheet-view.tsx';
import { useCourses, usePlayers } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import { playedLayout, withPlayed } from '../state/played-layout.ts';
import { useRoundPlan } from '../state/use-feed.ts';
import { DropFiles } from './drop-files.tsx';
import { FirstSteps } from './first-steps.tsx';
import { ProblemPanel } from './problem-panel.tsx';
import { Said } from './said.tsx';
import { TopBar } from './top-bar.tsx';
import { useCommands } from './use-commands.ts';
import { usePlace } from './use-place.ts';
import { useTheme } from './use-theme.ts';

/** The whole window. */
export function App({ startNotes }: Readonly<{ startNotes: readonly string[] }>) {
  const place = usePlace();
  useTheme();
  useCommands();
  useRoundPlan(place !== 'fieldwork');
  useSomethingChosen();
  const { settings } = usePlanner();
  const isReady = settings.courseId !== null && settings.playerId !== null;
  return (
    <>
      <Hatches />
      <TopBar place={place} />
      <StartNotes notes={startNotes} />
      <ProblemPanel />
      {place === 'bag' ? (
        <BagView />
      ) : place === 'fieldwork' ? (
        <FieldworkView />
      ) : place === 'course' ? (
        <CourseView />
      ) : !isReady ? (
        <FirstSteps />
      ) : place === 'compare' ? (
        <CompareView />
      ) : place === 'sheet' ? (
        <SheetView />
      ) : place === 'practice' ? (
        <PracticeView />
      ) : place === 'review' ? (
        <ReviewView />
      ) : (
        <RoundView />
      )}
      <DropFiles />
      <ImportDialog />
      <Said />
    </>
  );
}

/** What the start had to say: a library set aside, a backup made. */
function StartNotes({ notes }: Readonly<{ notes: readonly string[] }>) {
  const [isOpen, setOpen] = useState(true);
  if (notes.length === 0 || !isOpen) return null;
  return (
    <section className="start-notes" aria-label="About your library">
      {notes.map(note => (
        <p key={note}>{note}</p>
      ))}
      <button type="button" className="small-button" onClick={() => setOpen(false)}>
        Put away
      </button>
    </section>
  );
}

/** Chooses a course, a player and a hole where none is chosen or the chosen one is gone. */
function useSomethingChosen(): void {
  const { settings, change, backend } = usePlanner();
  const courses = useCourses();
  const players = usePlayers();
  useEffect(() => {
    if (courses.data === undefined || players.data === undefined || courses.isFetching || players.isFetching) return;
    const course = courses.data.find(c => c.courseId === settings.courseId) ?? courses.data[0];
    const player = players.data.find(p => p.playerId === settings.playerId) ?? players.data[0];
    const courseId = course?.courseId ?? null;
    const layout = playedLayout({ layouts: settings.layouts }, courseId);
    // A layout that was renamed or deleted, here or by taking a change back, is no longer played.
    if (courseId !== null && layout !== undefined && !course?.layouts.includes(layout))
      return change({ layouts: withPlayed(settings.layouts, courseId, null) });
    const playerId = player?.playerId ?? null;
    if (
      courseId === settings.courseId &&
      playerId === settings.playerId &&
      (settings.ref !== null || courseId === null)
    )
      return;
    void (async () => {
      const read = courseId === null ? null : await backend.call.getCourse({ courseId });
      const refs = read?.ok ? read.value.holes.map(hole => hole.ref) : [];
      const isSameCourse = courseId === settings.courseId && settings.ref !== null && refs.includes(settings.ref);
      change({ courseId, playerId, ref: isSameCourse ? settings.ref : (refs[0] ?? null) });
    })();
  }, [
    courses.data,
    players.data,
    courses.isFetching,
    players.isFetching,
    settings.courseId,
    settings.playerId,
    settings.ref,
    settings.layouts,
    change,
    backend,
  ]);
}
