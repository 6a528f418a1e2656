import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { Output } from '../../backend/api/contract/api.ts';
import type { ShotChoice } from '../../backend/api/contract/values.ts';
import type { ShotReport } from '../../core/strategy/plan-report.ts';
import { choiceOf } from '../shot/shot-choice.ts';
import type { Wanted } from '../state/plan-feed.ts';
import { usePlanner } from '../state/planner.tsx';
import { ProblemsError, problemsOf } from '../state/problems-error.ts';
import { wantedPlan } from '../state/wanted-plan.ts';

export type Evaluated = Output<'evaluateShot'>;
type Asked = Omit<Wanted, 'attitude' | 'target' | 'seed'> &
  Readonly<{ ref: string; shot: ShotChoice; choice: ShotChoice }>;

/**
 * What a shot of the player's own choosing comes to on this hole. While the shot keeps changing, as under a drag, one
 * question is asked after the other, each with the newest shot.
 * @param refs - the holes as they are played
 */
export function useTriedShot(
  ref: string | null,
  shot: ShotChoice | null,
  choice: ShotReport | null,
  refs: readonly string[],
): Readonly<{ value: Evaluated | null; isPending: boolean }> {
  const { backend, settings, tell } = usePlanner();
  const plan = wantedPlan(settings, refs);
  const wanted: Asked | null =
    ref !== null && shot !== null && choice !== null && plan !== null
      ? { ...withoutAim(plan), ref, shot, choice: choiceOf(choice) }
      : null;
  const [asked, setAsked] = useState(wanted);
  const query = useQuery({
    queryKey: ['whatIf', asked],
    queryFn: async () => {
      const answer = await backend.call.evaluateShot(asked!);
      if (answer.ok) return { for: asked!, ...answer.value };
      throw new ProblemsError(answer.problems);
    },
    enabled: asked !== null,
    placeholderData: keepPreviousData,
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
  });
  const wantedKey = JSON.stringify(wanted);
  // biome-ignore lint/correctness/useExhaustiveDependencies: wantedKey stands for wanted
  useEffect(() => {
    if (!query.isFetching || wanted === null) setAsked(now => (JSON.stringify(now) === wantedKey ? now : wanted));
  }, [wantedKey, query.isFetching]);
  const { error } = query;
  useEffect(() => {
    if (error !== null) tell({ what: 'That throw could not be worked out', problems: problemsOf(error) });
  }, [error, tell]);
  const isOfThisHole =
    wanted !== null && query.data?.for.ref === ref && query.data.for.shot.discId === wanted.shot.discId;
  return {
    value: isOfThisHole ? query.data! : null,
    isPending: wanted !== null && (query.isFetching || !isOfThisHole),
  };
}

/** What a throw is judged by: fewest expected throws, whatever the round is played for. */
function withoutAim({
  attitude: _,
  target: __,
  seed: ___,
  ...plan
}: Wanted): Omit<Wanted, 'attitude' | 'target' | 'seed'> {
  return plan;
}
