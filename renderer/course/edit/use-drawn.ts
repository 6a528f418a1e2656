import type { FeatureCollection } from 'geojson';
import { useEffect, useState } from 'react';
import { usePlanner } from '../../state/planner.tsx';
import type { Drawn } from './drawn.ts';

/** Waits for the hand to pause, so that a drag asks a few times a second. */
const PAUSE_ms = 120;

/** What the map says as drawn so far, a moment later; the last answer stays meanwhile. */
export function useDrawn(courseId: string, file: FeatureCollection, ref: string): Drawn | null {
  const { backend } = usePlanner();
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  useEffect(() => {
    let isCurrent = true;
    const timer = setTimeout(async () => {
      const text = JSON.stringify(file);
      const answer = await backend.call.describeDraft({ text, courseId, ...(ref !== '' && { ref }) });
      if (!isCurrent) return;
      const empty = { assumptions: [], holes: [], layouts: [], hole: null };
      setDrawn(answer.ok ? answer.value : { ...empty, problems: answer.problems.map(problem => ({ ...problem })) });
    }, PAUSE_ms);
    return () => {
      isCurrent = false;
      clearTimeout(timer);
    };
  }, [backend, courseId, file, ref]);
  return drawn;
}
