import { useQueryClient } from '@tanstack/react-query';
import { useCallback } from 'react';
import type { PickedFile } from '../../backend/api/contract/course-file.ts';
import { offerTable, type TableFile } from '../fieldwork/waiting-table.ts';
import { offerCourseFile } from '../import/waiting-files.ts';
import { isRoundFile, isRoundTable } from '../review/is-round-file.ts';
import { usePlanner } from '../state/planner.tsx';
import { kindOf, type ReadFiles } from './files.ts';
import { goTo } from './use-place.ts';

/** Takes files in, whatever they are. A map of a course is shown first and taken in when the player agrees; everything can be undone. */
export function useImport(): (files: readonly PickedFile[]) => Promise<void> {
  const { backend, changeLibrary, change, say, settings } = usePlanner();
  const { courseId, playerId } = settings;
  const queries = useQueryClient();
  return useCallback(
    async files => {
      for (const file of files) {
        const failed = `"${file.fileName}" could not be taken in`;
        if ('text' in file && isRoundFile(file.text) && courseId !== null && playerId !== null) {
          const added = await changeLibrary(failed, backend.call.importRound({ ...file, courseId, playerId }));
          if (added === null) continue;
          say('Round added');
          goTo('review');
          continue;
        }
        if (!('text' in file) || kindOf(file) === 'course') {
          offerCourseFile(file);
          continue;
        }
        if (kindOf(file) === 'player') {
          const added = await changeLibrary(failed, backend.call.importPlayer(file));
          if (added === null) continue;
          await queries.invalidateQueries({ queryKey: ['players'], exact: true });
          change({ playerId: added.playerId });
          say('Player added');
          goTo('bag');
          continue;
        }
        const added = await changeLibrary(failed, backend.call.importLibrary({ text: file.text, how: 'merge' }));
        if (added !== null) say(`Added ${added.courses} courses, ${added.players} players`);
      }
    },
    [backend, changeLibrary, change, say, queries, courseId, playerId],
  );
}

/** The same for files the page read itself, some of which may be too large. */
export function useTakePicked(): (read: ReadFiles) => Promise<void> {
  const { tell } = usePlanner();
  const take = useImport();
  const takeTable = useTakeTable();
  return useCallback(
    async ({ files, tables, problems }) => {
      if (problems.length > 0) tell({ what: 'Some files could not be read', problems });
      await take(files);
      for (const table of tables) await takeTable(table);
    },
    [tell, take, takeTable],
  );
}

/** A round joins the rounds of the course in view; throws are shown first, as a table chosen under Fieldwork is. */
function useTakeTable(): (table: TableFile) => Promise<void> {
  const { backend, changeLibrary, say, tell, settings } = usePlanner();
  const { courseId, playerId } = settings;
  return useCallback(
    async table => {
      const failed = `"${table.name}" could not be taken in`;
      if (playerId === null)
        return tell({ what: failed, problems: [{ path: 'player', message: 'is not there yet: add a player first' }] });
      if (!isRoundTable(table.text)) {
        offerTable(table);
        return goTo('fieldwork');
      }
      if (courseId === null)
        return tell({
          what: failed,
          problems: [{ path: 'course', message: 'is not there yet: add its course first' }],
        });
      const input = { courseId, playerId, fileName: table.name, text: table.text };
      if ((await changeLibrary(failed, backend.call.importRound(input))) === null) return;
      say('Round added');
      goTo('review');
    },
    [backend, changeLibrary, say, tell, courseId, playerId],
  );
}
