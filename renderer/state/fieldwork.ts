import { useQuery } from '@tanstack/react-query';
import type { Output } from '../../backend/api/contract/api.ts';
import { valueIn } from './library.ts';
import { usePlanner } from './planner.tsx';

export type Fieldwork = Output<'getFieldwork'>;
export type Session = Fieldwork['sessions'][number];
export type Thrown = Session['throws'][number];
export type Hand = Thrown['hand'];

/** Keys begin with `players`: a change of the player refetches them. */
export function useFieldwork(playerId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['players', playerId, 'fieldwork'],
    queryFn: () => valueIn(call.getFieldwork({ playerId: playerId! })),
    enabled: playerId !== null,
  });
}

/** What was last shown of a disc stays while its fit is made anew. */
export function useDiscScatter(playerId: string, discId: string, hand: Hand) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['players', playerId, 'scatter', discId, hand],
    queryFn: () => valueIn(call.getDiscScatter({ playerId, discId, hand })),
  });
}

export function usePutting(playerId: string | null) {
  const { call } = usePlanner().backend;
  return useQuery({
    queryKey: ['players', playerId, 'putting'],
    queryFn: () => valueIn(call.getPutting({ playerId: playerId! })),
    enabled: playerId !== null,
  });
}
