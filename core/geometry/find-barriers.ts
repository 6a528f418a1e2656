import type { HoleMap } from './hole-map.ts';
import type { HoleReport } from './hole-report.ts';
import { stretchesInside } from './line-crossings.ts';

const WORDS = {
  wood: 'wood',
  scrub: 'scrub',
  treeRow: 'tree row',
  hedge: 'hedge',
  wall: 'wall',
  fence: 'fence',
  building: 'building',
} as const;

/** What the line of play runs through from the ground up: hedges, walls, bushes, the stems of woods. */
export function findBarriers(map: HoleMap): HoleReport['barriers'] {
  return map.covers
    .filter(cover => cover.base_m <= 0 || cover.density > 0)
    .flatMap(({ form, polygons, height_m, base_m, source }) => {
      // Under a wood's crowns stand stems; the crowns themselves are listed with the ceilings.
      const isStems = base_m > 0;
      return stretchesInside(map.line, polygons).map(stretch => ({
        ...stretch,
        height_m,
        source: `${WORDS[form]}${isStems ? ' (stems)' : ''}: ${source}`,
      }));
    })
    .sort((a, b) => a.from_m - b.from_m || a.to_m - b.to_m);
}
