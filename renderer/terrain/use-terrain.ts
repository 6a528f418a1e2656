import { useQuery } from '@tanstack/react-query';
import { useCallback, useRef, useState } from 'react';
import type { Problem } from '../../core/units/result.ts';
import { valueIn } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';
import type { ChosenFile } from './file-choice.tsx';

export function useTerrain(courseId: string) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['courses', courseId, 'terrain'],
    queryFn: () => valueIn(call.getTerrain({ courseId })),
  });
}

/** What is being done, in words; null while nothing is. */
type Work = Readonly<{ words: string; stop: (() => void) | null }> | null;

/** Brings elevation models in and takes them away; both can be undone. */
export function useTerrainWork(courseId: string) {
  const { backend, changeLibrary, tell, say } = usePlanner();
  const [work, setWork] = useState<Work>(null);
  const stopped = useRef(false);

  /** @returns the file's place for the backend; null when it was stopped or could not be brought over */
  const placeOf = useCallback(
    async (chosen: ChosenFile): Promise<string | null> => {
      if ('path' in chosen) return chosen.path;
      const stop = new AbortController();
      stopped.current = false;
      setWork({
        words: `Handing over ${chosen.name}`,
        stop: () => {
          stopped.current = true;
          stop.abort();
        },
      });
      const answer = await backend.upload!(chosen.file, stop.signal);
      if (stopped.current) return null;
      if (answer.ok) return answer.value.path;
      const problems: readonly Problem[] = answer.problems.map(({ message }) => ({ path: chosen.name, message }));
      tell({ what: 'The file could not be handed over', problems });
      return null;
    },
    [backend, tell],
  );

  const add = useCallback(
    async (terrain: ChosenFile, surface: ChosenFile | null) => {
      try {
        const ground = await placeOf(terrain);
        const tops = surface === null || ground === null ? undefined : await placeOf(surface);
        if (ground === null || tops === null) return false;
        setWork({ words: 'Cutting out the ground of the course', stop: null });
        const added = await changeLibrary(
          'The elevation model could not be taken in',
          backend.call.addTerrain({ courseId, terrain: ground, ...(tops !== undefined && { surface: tops }) }),
        );
        if (added === null) return false;
        const { covered, missing } = added.ground;
        say(`Terrain added: it gives the ground of ${covered.length} of ${covered.length + missing.length} holes`);
        return true;
      } finally {
        setWork(null);
      }
    },
    [backend, changeLibrary, courseId, placeOf, say],
  );

  const remove = useCallback(async () => {
    const removed = await changeLibrary('The terrain could not be removed', backend.call.removeTerrain({ courseId }));
    if (removed !== null) say('Terrain removed');
  }, [backend, changeLibrary, courseId, say]);

  return { work, add, remove };
}
