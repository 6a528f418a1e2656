import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { Input, Output } from '../../backend/api/contract/api.ts';
import { valueIn } from './library.ts';
import { usePlanner } from './planner.tsx';

export type PracticeSearch = Output<'getPractice'>;
export type PracticeReport = NonNullable<PracticeSearch['report']>;
export type PracticeRound = PracticeReport['rounds'][number];

/** The search asked for last, kept while the app is open; `wanted` is what it was asked for. */
type Asked = Readonly<{ practiceId: string; wanted: string }>;
const ASKED = ['practice', 'asked'] as const;
const LOOK_AGAIN_MS = 300;
const KEPT = { enabled: false, gcTime: Number.POSITIVE_INFINITY } as const;

export type AskPractice = Readonly<{
  /** Null before the first search. */
  practiceId: string | null;
  state: PracticeSearch | null;
  /** False when the limit, the courses, the player or the day changed since. */
  isCurrent: boolean;
  ask: () => void;
  cancel: () => void;
}>;

/** @param request - what the form as it stands asks for; null while it cannot be asked */
export function usePractice(request: Omit<Input<'startPractice'>, 'practiceId'> | null): AskPractice {
  const { backend, tell } = usePlanner();
  const queries = useQueryClient();
  const wanted = JSON.stringify(request);
  const asked = useQuery<Asked | null>({ queryKey: ASKED, queryFn: () => null, initialData: null, ...KEPT }).data;
  const state = useQuery({
    queryKey: ['practice', asked?.practiceId],
    queryFn: () => valueIn(backend.call.getPractice({ practiceId: asked!.practiceId })),
    enabled: asked != null,
    refetchInterval: query =>
      query.state.data === undefined || query.state.data.state === 'running' ? LOOK_AGAIN_MS : false,
    gcTime: Number.POSITIVE_INFINITY,
  });
  const ask = async () => {
    if (request === null) return;
    const practiceId = crypto.randomUUID();
    const answer = await backend.call.startPractice({ practiceId, ...request });
    if (answer.ok) queries.setQueryData<Asked>(ASKED, { practiceId, wanted });
    else tell({ what: 'The practice round could not be looked for', problems: answer.problems });
  };
  return {
    practiceId: asked?.practiceId ?? null,
    state: asked == null ? null : (state.data ?? null),
    isCurrent: asked?.wanted === wanted,
    ask: () => void ask(),
    cancel: () => {
      if (asked != null) void backend.call.cancelPractice({ practiceId: asked.practiceId });
    },
  };
}
