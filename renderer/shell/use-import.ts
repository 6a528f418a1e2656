import { useQueryClient } from '@tanstack/react-query';
import { useCallback } from 'react';
import { usePlanner } from '../state/planner.tsx';
import { kindOf, type TextFile } from './files.ts';
import { goTo } from './use-place.ts';

/** Takes files in, whatever they are; courses and players are shown at once, and everything can be undone. */
export function useImport(): (files: readonly TextFile[]) => Promise<void> {
  const { backend, changeLibrary, change, say } = usePlanner();
  const queries = useQueryClient();
  return useCallback(
    async files => {
      for (const file of files) {
        const failed = `"${file.fileName}" could not be taken in`;
        switch (kindOf(file)) {
          case 'course': {
            const added = await changeLibrary(failed, backend.call.importCourse(file));
            if (added === null) continue;
            const course = await backend.call.getCourse({ courseId: added.courseId });
            // The list must hold it first, or it would count as gone.
            await queries.invalidateQueries({ queryKey: ['courses'], exact: true });
            change({ courseId: added.courseId, ref: course.ok ? (course.value.holes[0]?.ref ?? null) : null });
            say(course.ok ? `Course ${course.value.name} added: ${course.value.holes.length} holes` : 'Course added');
            goTo('course');
            break;
          }
          case 'player': {
            const added = await changeLibrary(failed, backend.call.importPlayer(file));
            if (added === null) continue;
            await queries.invalidateQueries({ queryKey: ['players'], exact: true });
            change({ playerId: added.playerId });
            say('Player added');
            goTo('bag');
            break;
          }
          case 'library': {
            const added = await changeLibrary(failed, backend.call.importLibrary({ text: file.text, how: 'merge' }));
            if (added !== null) say(`Added ${added.courses} courses, ${added.players} players`);
            break;
          }
        }
      }
    },
    [backend, changeLibrary, change, say, queries],
  );
}
