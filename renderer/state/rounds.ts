import { useQuery } from '@tanstack/react-query';
import type { Output } from '../../backend/api/contract/api.ts';
import { valueIn } from './library.ts';
import { usePlanner } from './planner.tsx';

export type KeptRound = Output<'getRound'>;
export type Review = Output<'getReview'>;
export type RoundThrow = KeptRound['round']['holes'][number]['throws'][number];

/** How often a running review is asked how far it is. */
const LOOK_AGAIN_ms = 300;

/**
 * Keys begin with `rounds`: a change of a round, or a review that was made, refetches them. Whether a review still holds also
 * depends on the bag and the course, so those are asked for again whenever they are shown.
 */
export function useRounds(playerId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['rounds', 'of', playerId],
    queryFn: () => valueIn(call.listRounds({ playerId: playerId! })),
    staleTime: 0,
    enabled: playerId !== null,
  });
}

export function useRound(roundId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['rounds', roundId],
    queryFn: () => valueIn(call.getRound({ roundId: roundId! })),
    enabled: roundId !== null,
    retry: false,
  });
}

export function useReview(roundId: string) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['rounds', roundId, 'review'],
    queryFn: () => valueIn(call.getReview({ roundId })),
    staleTime: 0,
    refetchInterval: query => (query.state.data?.state === 'running' ? LOOK_AGAIN_ms : false),
    retry: false,
  });
}

export function useOffer(roundId: string) {
  const { call } = usePlanner().backend;
  return useQuery({
    // Under `players`: what stands in the fieldwork already is not offered again.
    queryKey: ['players', 'offer', roundId],
    queryFn: () => valueIn(call.offerRound({ roundId })),
    staleTime: 0,
    retry: false,
  });
}

export function useSeason(playerId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['rounds', 'season', playerId],
    queryFn: () => valueIn(call.getSeason({ playerId: playerId! })),
    staleTime: 0,
    enabled: playerId !== null,
  });
}

/** A round's course as it was played, whatever layout is chosen now. */
export function useRoundCourse(courseId: string | null, layout: string | undefined) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['courses', courseId, 'played', layout ?? null],
    queryFn: () => valueIn(call.getCourse({ courseId: courseId!, ...(layout !== undefined && { layout }) })),
    enabled: courseId !== null,
  });
}

export function useRoundHole(courseId: string, ref: string | null, layout: string | undefined) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['courses', courseId, 'hole', ref, layout ?? null],
    queryFn: () => valueIn(call.getHole({ courseId, ref: ref!, ...(layout !== undefined && { layout }) })),
    enabled: ref !== null,
  });
}
