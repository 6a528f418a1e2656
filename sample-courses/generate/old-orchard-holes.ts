import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import type { HolePlan } from './hole-plan.ts';

/** Over a stretch of the line of play: branches that leave `clearance_m` free. */
type Branches = Readonly<{ from_m: number; to_m: number; clearance_m: number | string; top_m?: number }>;
/** Two posts across the line of play, `width_m` apart and `shift_m` to the left of it. */
type Posts = Readonly<{ at_m: number; width_m: number; shift_m?: number; low_m?: number; high_m?: number }>;

export type OrchardHole = HolePlan &
  Readonly<{
    /** Distance of the woods from the line of play, left and right; absent: the hole plays among apple trees instead. */
    corridor_m?: readonly [left: number, right: number];
    /** No wood on this side. */
    openSide?: 'left' | 'right';
    /** Stretch where both sides close in to half this width. */
    pinch?: Readonly<{ at_m: number; width_m: number }>;
    canopy?: readonly Branches[];
    /** A single branch across the line. */
    branch?: Branches;
    gaps?: readonly Posts[];
    mando?: Readonly<{ side: 'left' | 'right'; at_m: number; left_m: number }>;
    /** Trees in the fairway, by station and offset to the left. */
    trees?: readonly LocalPoint[];
    /** A second, shorter tee this far down the line. */
    redTee_m?: number;
    /** Tee and basket carry no number: they are found by where the line ends. */
    unnumbered?: boolean;
    /** The line was drawn from the basket to the tee. */
    backwards?: boolean;
  }>;

/** A loop through old woods and what is left of an orchard (holes 5 and 10). Tees and baskets to the metre. */
export const orchardHoles: readonly OrchardHole[] = [
  {
    ref: '1',
    name: 'Gatehouse',
    par: 3,
    line: [
      [54, 35],
      [132, 18],
    ],
    corridor_m: [6, 5.5],
    openSide: 'left',
    trees: [[38, 2.6]],
  },
  {
    ref: '2',
    name: 'Charcoal',
    par: 3,
    line: [
      [125, 40],
      [113, 92],
      [129, 132],
    ],
    corridor_m: [4.5, 4.5],
    canopy: [{ from_m: 30, to_m: 44, clearance_m: 3.4, top_m: 9 }],
    mando: { side: 'left', at_m: 55, left_m: -3 },
  },
  {
    ref: '3',
    name: 'Duck',
    par: 3,
    line: [
      [137, 157],
      [200, 159],
    ],
    corridor_m: [4, 4.5],
    canopy: [{ from_m: 20, to_m: 34, clearance_m: 2.6, top_m: 8 }],
  },
  {
    ref: '4',
    name: 'Old Wall',
    par: 3,
    line: [
      [193, 137],
      [194, 68],
      [217, 28],
    ],
    corridor_m: [5, 5],
    gaps: [{ at_m: 47, width_m: 5 }],
    mando: { side: 'right', at_m: 70, left_m: 3.5 },
    redTee_m: 24,
  },
  {
    ref: '5',
    name: 'Russet Row',
    par: 3,
    line: [
      [233, 20],
      [275, 29],
      [318, 20],
    ],
  },
  {
    ref: '6',
    name: 'The Long Bend',
    par: 3,
    line: [
      [337, 39],
      [367, 111],
      [343, 170],
    ],
    corridor_m: [5.5, 6],
    canopy: [{ from_m: 62, to_m: 84, clearance_m: 3.9 }],
    trees: [[104, 3]],
  },
  {
    ref: '7',
    name: 'Letterbox',
    par: 3,
    line: [
      [356, 179],
      [404, 151],
    ],
    corridor_m: [3.2, 3.4],
    gaps: [{ at_m: 19, width_m: 4, low_m: 0.6, high_m: 3.2 }],
    unnumbered: true,
  },
  {
    ref: '8',
    name: 'Badger',
    par: 3,
    line: [
      [404, 172],
      [382, 230],
      [395, 270],
    ],
    corridor_m: [5, 5],
    mando: { side: 'left', at_m: 62, left_m: -3.2 },
    trees: [
      [28, -2.5],
      [84, 2.8],
    ],
  },
  {
    ref: '9',
    name: 'Hedge End',
    par: 3,
    line: [
      [376, 277],
      [337, 256],
      [311, 219],
    ],
    corridor_m: [5.5, 5],
    branch: { from_m: 33, to_m: 33, clearance_m: 3, top_m: 6.5 },
  },
  {
    ref: '10',
    name: 'Pippin Row',
    par: 3,
    line: [
      [308, 193],
      [238, 212],
    ],
  },
  {
    ref: '11',
    name: 'Cider Press',
    par: 3,
    line: [
      [213, 220],
      [159, 219],
      [115, 187],
    ],
    corridor_m: [4.5, 5.5],
    branch: { from_m: 40, to_m: 40, clearance_m: '12 ft' },
    unnumbered: true,
  },
  {
    ref: '12',
    name: 'Elbow',
    par: 3,
    line: [
      [99, 194],
      [110, 245],
      [143, 256],
    ],
    corridor_m: [5, 5],
    pinch: { at_m: 26, width_m: 4.2 },
  },
  {
    ref: '13',
    name: 'Deer Leap',
    par: 3,
    line: [
      [131, 274],
      [187, 284],
      [232, 271],
      [271, 280],
    ],
    corridor_m: [6, 5.5],
    redTee_m: 30,
    trees: [
      [78, 3],
      [120, -3],
    ],
  },
  {
    ref: '14',
    name: 'Duck Again',
    par: 3,
    line: [
      [294, 271],
      [298, 337],
    ],
    corridor_m: [4.5, 4.5],
    canopy: [
      { from_m: 16, to_m: 26, clearance_m: 2.2, top_m: 5 },
      { from_m: 40, to_m: 48, clearance_m: 3, top_m: 9 },
    ],
    backwards: true,
  },
  {
    ref: '15',
    name: 'Left Turn',
    par: 3,
    line: [
      [278, 333],
      [227, 345],
      [192, 319],
    ],
    corridor_m: [5, 5.5],
    trees: [[66, -2.6]],
  },
  {
    ref: '16',
    name: 'Press House',
    par: 3,
    line: [
      [183, 337],
      [145, 321],
      [104, 327],
    ],
    corridor_m: [5.5, 5],
  },
  {
    ref: '17',
    name: 'Nave',
    par: 3,
    line: [
      [95, 310],
      [55, 198],
    ],
    corridor_m: [4.5, 4.5],
    gaps: [
      { at_m: 27, width_m: 3.6, shift_m: 0.4 },
      { at_m: 72, width_m: 4.4, shift_m: -0.5, low_m: 1, high_m: 4.5 },
    ],
    canopy: [{ from_m: 44, to_m: 60, clearance_m: 3.2, top_m: 10 }],
  },
  {
    ref: '18',
    name: 'Last Orders',
    par: 3,
    line: [
      [68, 179],
      [39, 125],
      [36, 85],
    ],
    corridor_m: [6, 5.5],
    trees: [[50, -3]],
  },
];
