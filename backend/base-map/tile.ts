import type { PictureType } from './picture-type.ts';

/** One picture of a base map. */
export type Tile = Readonly<{ bytes: Uint8Array; type: PictureType }>;
