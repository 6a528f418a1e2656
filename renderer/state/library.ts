import { useQuery } from '@tanstack/react-query';
import type { Result } from '../../core/units/result.ts';
import { usePlanner } from './planner.tsx';
import { playedLayout } from './played-layout.ts';
import { ProblemsError } from './problems-error.ts';

/** What the backend answered, or its problems as an error for the query to hold. */
export async function valueIn<T>(answer: Promise<Result<T>>): Promise<T> {
  const result = await answer;
  if (result.ok) return result.value;
  throw new ProblemsError(result.problems);
}

/** Keys begin with the area that `libraryChanged` names, so that a change refetches what it touched. */
export function useCourses() {
  const { call } = usePlanner().backend;
  return useQuery({ queryKey: ['courses'], queryFn: () => valueIn(call.listCourses({})) });
}

/** The course as it is played: its holes in order of the chosen layout. */
export function useCourse(courseId: string | null) {
  const { backend, settings } = usePlanner();
  const layout = playedLayout(settings, courseId);
  return useQuery({
    queryKey: ['courses', courseId, 'played', layout ?? null],
    queryFn: () => valueIn(backend.call.getCourse({ courseId: courseId!, ...(layout !== undefined && { layout }) })),
    enabled: courseId !== null,
  });
}

/** The course as it is mapped, whatever layout is played. */
export function useMappedCourse(courseId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['courses', courseId],
    queryFn: () => valueIn(call.getCourse({ courseId: courseId! })),
    enabled: courseId !== null,
  });
}

export function useCourseMap(courseId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['courses', courseId, 'map'],
    queryFn: () => valueIn(call.getCourseMap({ courseId: courseId! })),
    enabled: courseId !== null,
  });
}

export function useHole(courseId: string | null, ref: string | null) {
  const { backend, settings } = usePlanner();
  const layout = playedLayout(settings, courseId);
  return useQuery({
    queryKey: ['courses', courseId, 'hole', ref, layout ?? null],
    queryFn: () =>
      valueIn(backend.call.getHole({ courseId: courseId!, ref: ref!, ...(layout !== undefined && { layout }) })),
    enabled: courseId !== null && ref !== null,
  });
}

export function usePlayers() {
  const { call } = usePlanner().backend;
  return useQuery({ queryKey: ['players'], queryFn: () => valueIn(call.listPlayers({})) });
}

export function usePlayer(playerId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['players', playerId],
    queryFn: () => valueIn(call.getPlayer({ playerId: playerId! })),
    enabled: playerId !== null,
  });
}

export function useThrows(playerId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['players', playerId, 'throws'],
    queryFn: () => valueIn(call.getThrows({ playerId: playerId! })),
    enabled: playerId !== null,
  });
}

/** Those of the layout that is played: another one has other tees and baskets. */
export function usePins(courseId: string | null, playerId: string | null) {
  const { backend, settings } = usePlanner();
  const layout = playedLayout(settings, courseId);
  return useQuery({
    queryKey: ['pins', courseId, playerId, layout ?? null],
    queryFn: () =>
      valueIn(
        backend.call.listPins({
          courseId: courseId!,
          playerId: playerId!,
          ...(layout !== undefined && { layout }),
        }),
      ),
    enabled: courseId !== null && playerId !== null,
  });
}

/** Those of the layout that is played. */
export function useNotes(courseId: string | null) {
  const { backend, settings } = usePlanner();
  const layout = playedLayout(settings, courseId);
  return useQuery({
    queryKey: ['pins', 'notes', courseId, layout ?? null],
    queryFn: () => valueIn(backend.call.listNotes({ courseId: courseId!, ...(layout !== undefined && { layout }) })),
    enabled: courseId !== null,
  });
}
