import { nearestStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { besideLine, stations, strip } from './beside-line.ts';
import { courseText, type Site } from './course-text.ts';
import { clearOfHoles_m, type HolePlan, holeItems } from './hole-plan.ts';
import { area, blob, line, type MapItem, point, rectangle, withHeight } from './map-item.ts';
import { seededRandom } from './seeded-random.ts';
import { scatter, tree, unmeasuredTree } from './trees.ts';

/** Round the edge of a village green and back through its middle. Hole 6 has no par tag: it is left to be derived. */
const holes: readonly HolePlan[] = [
  {
    ref: '1',
    name: 'Gate',
    par: 3,
    line: [
      [20, 20],
      [95, 27],
    ],
  },
  {
    ref: '2',
    name: 'Poplars',
    par: 3,
    line: [
      [112, 20],
      [190, 38],
    ],
  },
  {
    ref: '3',
    name: 'Long Meadow',
    par: 3,
    line: [
      [206, 50],
      [214, 124],
    ],
  },
  {
    ref: '4',
    name: 'Bramble',
    par: 3,
    line: [
      [201, 140],
      [137, 171],
    ],
  },
  {
    ref: '5',
    name: 'Walkers',
    par: 3,
    line: [
      [120, 180],
      [49, 196],
    ],
  },
  {
    ref: '6',
    name: 'Three Ashes',
    line: [
      [33, 184],
      [22, 120],
    ],
  },
  {
    ref: '7',
    name: 'Duck Pond',
    par: 3,
    line: [
      [30, 101],
      [107, 116],
    ],
  },
  {
    ref: '8',
    name: 'The Lean',
    par: 3,
    line: [
      [123, 110],
      [176, 72],
    ],
  },
  {
    ref: '9',
    name: 'Home',
    par: 3,
    line: [
      [160, 58],
      [74, 60],
    ],
  },
];

const site: Site = {
  originLon_deg: 11.2471,
  originLat_deg: 46.9158,
  turn_deg: 19,
  height_m: ([x, y]) => 611 + 0.7 * Math.sin(x / 70) + 0.5 * Math.cos(y / 55),
};

const pond = blob([97, 141], [17, 10], 14, i => 0.08 * Math.sin(2.3 * i));
const playground: LocalPoint[] = rectangle([36, 66], [51, 80]);
const scrub: LocalPoint[] = [
  [171, 161],
  [160, 166],
  [148, 172],
  [139, 178],
  [142, 188],
  [156, 187],
  [169, 176],
];
const hedge: LocalPoint[] = [
  [38, 41],
  [70, 43],
  [104, 44],
  [128, 47],
];
const footpath: LocalPoint[] = [
  [-14, 74],
  [8, 80],
  [60, 88],
  [104, 90],
  [140, 97],
  [162, 113],
  [172, 140],
  [178, 162],
  [186, 215],
];
const fence: LocalPoint[] = [
  [4, 2],
  [60, 4],
  [130, 1],
  [225, 20],
  [238, 60],
];
const poplars = stations(8, 70, 15).map(s => besideLine(holes[1]!.line, s, -9));

const clear_m = 6.5;
const random = seededRandom(20260901);

/** The short, open course for putter rounds: GeoJSON text. */
export function shortNine(): string {
  return courseText([...course(), ...surroundings(), ...trees()], site);
}

function course(): MapItem[] {
  return [
    point([8, 8], { leisure: 'disc_golf_course', name: 'Millrace Green', sport: 'disc_golf', holes: 9 }),
    ...holes.flatMap(holeItems).map(withHeight),
    area(
      strip(
        holes[0]!.line,
        stations(4, 82, 13),
        () => -7,
        s => 7 + 2 * Math.sin(s / 20),
      ),
      { disc_golf: 'fairway', ref: '1', surface: 'grass' },
    ),
  ];
}

function surroundings(): MapItem[] {
  return [
    area(pond, { natural: 'water', water: 'pond', name: 'Duck Pond' }),
    area(scrub, { natural: 'scrub', height: 1.8 }),
    line(hedge, { barrier: 'hedge', height: 1.6 }),
    line(poplars, { natural: 'tree_row', height: 14, min_height: 1.5, density: 0.6 }),
    line(footpath, { highway: 'footway', surface: 'gravel' }),
    area(playground, { leisure: 'playground' }),
    area(rectangle([-12, -12], [4, 2]), { building: 'yes', name: 'Mill', height: 6.5 }),
    line(fence, { barrier: 'fence', height: 1.2 }),
  ];
}

/** Singles over the green, a small grove beside the lightly wooded holes 5, 6 and 8, and a few that lean into the lines. */
function trees(): MapItem[] {
  const groves = [5, 6, 8].map(ref => holes[ref - 1]!);
  const blocked = (p: LocalPoint) =>
    nearestStation([...pond, pond[0]!], p).distance_m < 5 ||
    nearestStation(footpath, p).distance_m < 3 ||
    nearestStation(hedge, p).distance_m < 4 ||
    nearestStation(fence, p).distance_m < 5 ||
    nearestStation(poplars, p).distance_m < 7 ||
    nearestStation([...playground, playground[0]!], p).distance_m < 8 ||
    nearestStation([...scrub, scrub[0]!], p).distance_m < 4;
  const singles = scatter(
    [-8, 6],
    [232, 208],
    150,
    17,
    p => clearOfHoles_m(p, holes) > clear_m + 3 && !blocked(p),
    random,
  );
  const beside = (p: LocalPoint) => clearOfHoles_m(p, groves) > clear_m - 1.5 && clearOfHoles_m(p, groves) < 17;
  const grove = scatter(
    [0, 60],
    [200, 208],
    420,
    7.5,
    p => beside(p) && clearOfHoles_m(p, holes) > 5 && !blocked(p),
    random,
  ).filter(p => singles.every(q => Math.hypot(p[0] - q[0], p[1] - q[1]) > 6));
  const leaning = [
    besideLine(holes[7]!.line, 34, 2.5),
    besideLine(holes[5]!.line, 28, -2),
    besideLine(holes[4]!.line, 30, 3),
    besideLine(holes[2]!.line, 42, -2.5),
    besideLine(holes[8]!.line, 50, 3),
  ];
  return [
    ...singles.map((at, i) => (i % 9 === 4 ? unmeasuredTree(at) : tree(at, i % 4 === 1 ? 'conifer' : 'park', random))),
    ...grove.map(at => tree(at, 'slender', random)),
    ...leaning.map(at => tree(at, 'slender', random)),
  ];
}
