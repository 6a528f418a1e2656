import type { HolePlan } from './hole-plan.ts';
import type { WoodEdge } from './woods-beside.ts';

type Edge = Readonly<{ side: WoodEdge['side']; edge_m: number; from_m: number; to_m: number; depth_m: number }>;

export type RidgeHole = HolePlan &
  Readonly<{
    woods?: readonly Edge[];
    /** Ground of the fairway (OpenStreetMap `surface`) over a stretch of the line, half as wide as `half_m` says. */
    fairway?: Readonly<{ surface: string; from_m: number; to_m: number; half_m: number }>;
  }>;

const edge = (side: WoodEdge['side'], edge_m: number, from_m: number, to_m: number, depth_m = 24): Edge => ({
  side,
  edge_m,
  from_m,
  to_m,
  depth_m,
});

/** Down from the ridge, along the reservoir, up the east flank and back through the middle. Tees and baskets to the metre. */
export const ridgeHoles: readonly RidgeHole[] = [
  {
    ref: '1',
    name: 'Ridge Gate',
    par: 3,
    line: [
      [324, 466],
      [232, 379],
    ],
    woods: [edge('left', 12, 20, 110)],
    fairway: { surface: 'grass', from_m: 10, to_m: 134, half_m: 11 },
  },
  {
    ref: '2',
    name: 'Pasture Edge',
    par: 3,
    line: [
      [214, 390],
      [125, 376],
      [66, 387],
    ],
    woods: [edge('left', 13, 20, 140)],
  },
  {
    ref: '3',
    name: 'West Flank',
    par: 4,
    line: [
      [47, 374],
      [52, 268],
      [109, 179],
    ],
    woods: [edge('left', 13, 15, 200, 20), edge('right', 15, 15, 195)],
    fairway: { surface: 'long_grass', from_m: 60, to_m: 190, half_m: 13 },
  },
  {
    ref: '4',
    name: 'First Water',
    par: 3,
    line: [
      [122, 162],
      [80, 61],
    ],
  },
  {
    ref: '5',
    name: 'Cove',
    par: 3,
    line: [
      [101, 53],
      [172, 18],
      [224, 10],
    ],
    fairway: { surface: 'gravel', from_m: 30, to_m: 110, half_m: 7 },
  },
  {
    ref: '6',
    name: 'Jetty',
    par: 3,
    line: [
      [227, 32],
      [322, 26],
    ],
  },
  {
    ref: '7',
    name: 'Reed Bay',
    par: 3,
    line: [
      [338, 37],
      [422, 53],
      [489, 32],
    ],
  },
  {
    ref: '8',
    name: 'Inlet',
    par: 3,
    line: [
      [508, 27],
      [625, 67],
    ],
  },
  {
    ref: '9',
    name: 'East Climb',
    par: 4,
    line: [
      [628, 82],
      [615, 198],
      [670, 301],
    ],
    woods: [edge('left', 14, 25, 215)],
    fairway: { surface: 'grass', from_m: 20, to_m: 240, half_m: 12 },
  },
  {
    ref: '10',
    name: 'Shoulder',
    par: 3,
    line: [
      [657, 311],
      [616, 406],
    ],
    woods: [edge('right', 11, 10, 95), edge('left', 12, 15, 90, 18)],
  },
  {
    ref: '11',
    name: 'Skyline',
    par: 3,
    line: [
      [596, 415],
      [509, 437],
      [450, 425],
    ],
  },
  {
    ref: '12',
    name: 'The Descent',
    par: 5,
    line: [
      [436, 432],
      [374, 350],
      [358, 254],
      [302, 190],
    ],
    woods: [
      edge('left', 14, 20, 130),
      edge('right', 13, 30, 120),
      edge('right', 13, 160, 250),
      edge('left', 16, 165, 235),
    ],
    fairway: { surface: 'grass', from_m: 15, to_m: 295, half_m: 12 },
  },
  {
    ref: '13',
    name: 'Over the Hollow',
    par: 3,
    line: [
      [319, 172],
      [433, 219],
    ],
    woods: [edge('left', 13, 40, 115)],
  },
  {
    ref: '14',
    name: 'Island',
    par: 3,
    line: [
      [452, 223],
      [502, 138],
    ],
    fairway: { surface: 'grass', from_m: -4, to_m: 66, half_m: 10 },
  },
  {
    ref: '15',
    name: 'Terrace',
    par: 3,
    line: [
      [484, 106],
      [389, 117],
      [325, 93],
    ],
    fairway: { surface: 'compacted', from_m: 20, to_m: 150, half_m: 9 },
  },
  {
    ref: '16',
    name: 'Over the Wall',
    par: 3,
    line: [
      [315, 103],
      [210, 75],
    ],
    woods: [edge('right', 14, 20, 95, 16)],
  },
  {
    ref: '17',
    name: 'Under the Wire',
    par: 3,
    line: [
      [201, 99],
      [209, 181],
      [236, 229],
    ],
    woods: [edge('left', 10, 15, 125), edge('right', 11, 20, 120)],
  },
  {
    ref: '18',
    name: 'Back to the Ridge',
    par: 3,
    line: [
      [260, 224],
      [303, 370],
    ],
    woods: [edge('left', 13, 30, 145), edge('right', 14, 35, 140, 18)],
  },
];
