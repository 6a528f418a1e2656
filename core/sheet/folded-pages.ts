import { chunks } from './pocket-cover.ts';

/**
 * Eight panels as they lie on one side of a sheet, four over four, for a booklet folded from it: the upper row stands on its
 * head. Fold the sheet along its length and twice across, cut the middle two panels apart along the long fold, push the ends
 * together. Panel numbers of the booklet, from the upper left.
 */
const PLACES = [7, 6, 5, 4, 8, 1, 2, 3] as const;

/** Panels in booklets of eight, one sheet each; missing ones at the end stay white. */
export function foldedPages(panels: readonly string[]): string[] {
  return chunks(panels, PLACES.length).map(booklet =>
    PLACES.map((panel, place) => {
      const isTurned = place < PLACES.length / 2;
      return `<div class="panel${isTurned ? ' turned' : ''}">${booklet[panel - 1] ?? ''}</div>`;
    }).join(''),
  );
}
