import type { LocalPoint } from '../../core/geometry/hole-map.ts';

/** Level of the water. */
export const RESERVOIR_M = 402;

/** The slope from the shore to the ridge, gentle at both ends and steep in the middle, with spurs and hollows. */
export function ridgeHeight_m([x, y]: LocalPoint): number {
  const climb = 23.2 / (1 + Math.exp(-(y - 245 - 25 * Math.sin(x / 170)) / 62));
  const spurs = 1.8 * Math.sin(x / 74 + 0.6) * Math.min(1, Math.max(0, (y - 30) / 120));
  return RESERVOIR_M + 1.2 + climb + spurs + 0.8 * Math.sin((x + 2 * y) / 41);
}

/** Shore line from west to east. */
const shore: readonly LocalPoint[] = [
  [-60, 26],
  [-10, 34],
  [30, 44],
  [62, 41],
  [84, 37],
  [102, 30],
  [122, 16],
  [150, 10],
  [176, -1],
  [206, -6],
  [232, -3],
  [252, 7],
  [280, 13],
  [306, 15],
  [330, 16],
  [352, 24],
  [382, 33],
  [420, 36],
  [450, 28],
  [478, 17],
  [500, 9],
  [524, 15],
  [552, 25],
  [584, 38],
  [614, 47],
  [640, 52],
  [668, 66],
  [700, 84],
  [740, 92],
];

export const reservoir: readonly LocalPoint[] = [...shore, [744, -70], [520, -105], [250, -110], [20, -88], [-62, -40]];
