import { useEffect, useRef, useSyncExternalStore } from 'react';
import { useCourse, usePlayer } from './library.ts';
import type { Feed, PlanFeed } from './plan-feed.ts';
import { usePlanner } from './planner.tsx';
import { problemsOf } from './problems-error.ts';
import { wantedPlan } from './wanted-plan.ts';

export const useFeed = (feed: PlanFeed): Feed => useSyncExternalStore(feed.listen, feed.read);

/**
 * Keeps the round planned for the settings as they stand, and again when the course or the player changes.
 * @param isWanted - false while many small changes are made, such as throws entered one by one: the plan waits for the end
 */
export function useRoundPlan(isWanted = true): void {
  const { settings, feed, backend, tell } = usePlanner();
  const course = useCourse(settings.courseId);
  const player = usePlayer(settings.playerId);
  const refs = course.data?.holes.map(hole => hole.ref);
  const wanted = wantedPlan(settings, refs);
  const key = wanted === null || course.data === undefined || player.data === undefined ? null : JSON.stringify(wanted);
  const { ref } = settings;
  const planned = useRef<readonly unknown[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: key stands for wanted; the hole in view only orders the work; the data are watched for changes to the course or bag
  useEffect(() => {
    if (key === null || wanted === null || !isWanted) return;
    const asked = [key, course.data, player.data, feed, backend];
    // back from where it was not wanted, with nothing changed meanwhile
    if (asked.every((part, i) => part === planned.current[i])) return;
    let isCurrent = true;
    const { courseId, playerId } = wanted;
    void (async () => {
      const shown = feed.read();
      if (shown.state === 'none' || shown.courseId !== courseId) {
        const latest = await backend.call.latestPlan({ courseId, playerId });
        if (!isCurrent) return;
        feed.clear(courseId);
        const plan = latest.ok ? latest.value.plan : null;
        if (plan !== null && isPlanOf(plan.request, wanted)) {
          planned.current = asked;
          return feed.show(plan);
        }
      }
      planned.current = asked;
      feed.plan(wanted, ref);
    })();
    return () => {
      isCurrent = false;
    };
  }, [key, course.data, player.data, feed, backend, isWanted]);
  const error = course.error ?? player.error;
  useEffect(() => {
    if (error !== null) tell({ what: 'The course or the bag could not be read', problems: problemsOf(error) });
  }, [error, tell]);
}

/** Whether a plan made before answers what is wanted now; key order does not count. */
function isPlanOf(request: object, wanted: object): boolean {
  const asked = { ...request } as Record<string, unknown>;
  delete asked.seed;
  delete asked.holes;
  return canonical(asked) === canonical(wanted);
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
