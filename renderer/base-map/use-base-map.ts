import { useQuery } from '@tanstack/react-query';
import type { Output } from '../../backend/api/contract/api.ts';
import type { BaseMap } from '../../backend/api/contract/base-map.ts';
import { valueIn } from '../state/library.ts';
import { usePlanner } from '../state/planner.tsx';

export type ShownBaseMap = Output<'describeBaseMap'> &
  Readonly<{ /** Where the pictures are, for Leaflet. */ address: string }>;

/** The base map to draw; null where none is chosen, nothing may be fetched, or its file is gone. */
export function useBaseMap(): ShownBaseMap | null {
  const { settings, backend } = usePlanner();
  const { baseMap } = settings;
  const isDrawn = baseMap !== null && (baseMap.kind === 'file' || baseMap.isAllowed);
  const facts = useQuery({
    queryKey: ['baseMap', baseMap],
    queryFn: () => valueIn(backend.call.describeBaseMap({ baseMap: baseMap! })),
    enabled: isDrawn,
  });
  if (!isDrawn || facts.data === undefined) return null;
  return { ...facts.data, address: `tiles/${keyOf(baseMap)}/{z}/{x}/{y}` };
}

/** Another map has other addresses, so that no picture of the one before is shown. FNV-1a, 32 bits. */
function keyOf(baseMap: BaseMap): string {
  let hash = 0x811c9dc5;
  for (const character of JSON.stringify(baseMap)) {
    hash ^= character.codePointAt(0)!;
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  return hash.toString(16);
}
