import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { Output } from '../../backend/api/contract/api.ts';
import { useCourse, useThrows, valueIn } from './library.ts';
import { usePlanner } from './planner.tsx';
import { wantedPlan } from './wanted-plan.ts';

type Measuring = Output<'getMeasuring'>;
export type MeasureNext = NonNullable<Measuring['answer']>;

/** The question asked last, kept while the app is open; `wanted` is what it was asked for. */
type Asked = Readonly<{ measuringId: string; wanted: string }>;
const ASKED = ['measuring', 'asked'] as const;
const LOOK_AGAIN_MS = 400;

export type AskMeasuring = Readonly<{
  /** Null before the first question. */
  state: Measuring | null;
  /** False when course, wind, limits or what is known of the player's throws changed since. */
  isCurrent: boolean;
  /** False without a course and a player. */
  canAsk: boolean;
  ask: () => void;
  cancel: () => void;
}>;

/** Which disc to measure next for the chosen course, day and limits. */
export function useMeasuring(): AskMeasuring {
  const { settings, backend, tell } = usePlanner();
  const queries = useQueryClient();
  const course = useCourse(settings.courseId);
  const plan = wantedPlan(
    settings,
    course.data?.holes.map(hole => hole.ref),
  );
  const known = useThrows(settings.playerId).data?.throws.map(t => [t.discId, t.hand, t.n, t.averageDay_m, t.finish_m]);
  const wanted = JSON.stringify([plan && { ...plan, attitude: undefined, target: undefined }, known]);
  const asked = useQuery<Asked | null>({
    queryKey: ASKED,
    queryFn: () => null,
    enabled: false,
    initialData: null,
    gcTime: Number.POSITIVE_INFINITY,
  }).data;
  const state = useQuery({
    queryKey: ['measuring', asked?.measuringId],
    queryFn: () => valueIn(backend.call.getMeasuring({ measuringId: asked!.measuringId })),
    enabled: asked != null,
    refetchInterval: query =>
      query.state.data === undefined || query.state.data.state === 'running' ? LOOK_AGAIN_MS : false,
    gcTime: Number.POSITIVE_INFINITY,
  });
  const ask = async () => {
    if (plan === null) return;
    const { courseId, playerId, day, winds, startRef, limits, layout } = plan;
    const measuringId = crypto.randomUUID();
    const answer = await backend.call.startMeasuring({
      measuringId,
      courseId,
      playerId,
      day,
      ...(winds !== undefined && { winds }),
      ...(startRef !== undefined && { startRef }),
      ...(limits !== undefined && { limits }),
      ...(layout !== undefined && { layout }),
    });
    if (answer.ok) queries.setQueryData<Asked>(ASKED, { measuringId, wanted });
    else tell({ what: 'What to measure next could not be asked', problems: answer.problems });
  };
  return {
    state: asked == null ? null : (state.data ?? null),
    isCurrent: asked?.wanted === wanted,
    canAsk: plan !== null,
    ask: () => void ask(),
    cancel: () => {
      if (asked == null) return;
      void backend.call.cancelMeasuring({ measuringId: asked.measuringId });
    },
  };
}
