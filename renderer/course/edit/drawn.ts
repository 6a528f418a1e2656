import type { Output } from '../../../backend/api/contract/api.ts';

/** What the map says as drawn so far. */
export type Drawn = Output<'describeDraft'>;
