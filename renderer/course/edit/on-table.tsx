import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState, useSyncExternalStore } from 'react';
import { Button } from 'react-aria-components';
import { valueIn } from '../../state/library.ts';
import { usePlanner } from '../../state/planner.tsx';
import { type DraftMap, deskOf } from './draft-desk.ts';
import { NewCourse } from './new-course.tsx';

/** The map that is being drawn in this window; null: none. */
export function useOnTable(): DraftMap | null {
  const desk = deskOf(usePlanner().backend);
  const { editing, maps } = useSyncExternalStore(desk.listen, desk.read);
  return editing === null ? null : (maps.get(editing) ?? null);
}

function useDrafts() {
  const { call } = usePlanner().backend;
  // Always asked anew: keeping a draft tells nobody.
  return useQuery({ queryKey: ['courses', 'drafts'], queryFn: () => valueIn(call.listDrafts({})), staleTime: 0 });
}

function useOpenMap(): (courseId: string) => Promise<void> {
  const { backend, tell } = usePlanner();
  return async courseId => {
    const opened = await deskOf(backend).open(courseId);
    if (!opened.ok) tell({ what: 'The map could not be opened', problems: opened.problems });
  };
}

/** Begins a course of one's own, and goes on with those begun. */
export function DrawYourOwn() {
  const { backend } = usePlanner();
  const [isAsking, setAsking] = useState(false);
  const queries = useQueryClient();
  const open = useOpenMap();
  const drafts = useDrafts().data ?? [];
  return (
    <>
      {isAsking ? (
        <NewCourse
          onBegin={(name, file) => {
            deskOf(backend).begin(name, file);
            void queries.invalidateQueries({ queryKey: ['courses', 'drafts'] });
          }}
          onClose={() => setAsking(false)}
        />
      ) : (
        <Button className="small-button" onPress={() => setAsking(true)}>
          Draw a new course
        </Button>
      )}
      {drafts.length > 0 && (
        <section aria-label="Drafts" className="draft-list">
          <h2>Drafts</h2>
          <ul>
            {drafts.map(({ courseId, name, isCourse }) => (
              <li key={courseId}>
                <Button className="library-item" onPress={() => void open(courseId)}>
                  <strong>{name}</strong>
                  <span>{isCourse ? 'changes not saved' : 'not a course yet'}</span>
                </Button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

export function EditMapButton({ courseId }: Readonly<{ courseId: string }>) {
  const open = useOpenMap();
  return (
    <Button className="small-button" onPress={() => void open(courseId)}>
      Edit the map
    </Button>
  );
}
