import { atStation } from '../../core/geometry/along-line.ts';
import type { HoleMap } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import { groundHeight } from '../../core/geometry/terrain.ts';

const EVERY_M = 5;
/** Ground beside the line of play lies lower still, also where no heights are mapped. */
const MARGIN_M = 5;

/** How far below a lie the ground of these holes can be: the greatest fall between two places on one line of play, and a margin. */
export function groundDrop_m(maps: readonly HoleMap[]): number {
  return MARGIN_M + Math.max(0, ...maps.map(rangeAlongLine_m));
}

function rangeAlongLine_m({ line, terrain }: HoleMap): number {
  if (!terrain.known) return 0;
  const length_m = lineLength_m(line);
  const steps = Math.ceil(length_m / EVERY_M);
  const heights_m = Array.from({ length: steps + 1 }, (_, i) => {
    const { point } = atStation(line, (length_m * i) / steps);
    return groundHeight(terrain, point[0], point[1]);
  });
  return Math.max(...heights_m) - Math.min(...heights_m);
}
