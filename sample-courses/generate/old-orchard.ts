import { atStation, nearestStation } from '../../core/geometry/along-line.ts';
import type { LocalPoint } from '../../core/geometry/hole-map.ts';
import { lineLength_m } from '../../core/geometry/line-length.ts';
import { isInPolygon } from '../../core/geometry/point-in-polygon.ts';
import { besideLine, stations, strip } from './beside-line.ts';
import { courseText, type Site } from './course-text.ts';
import { clearOfHoles_m, teePad } from './hole-plan.ts';
import { area, line, type MapItem, nested, point, rectangle, type Tags } from './map-item.ts';
import { orchardHoles as holes, type OrchardHole } from './old-orchard-holes.ts';
import { seededRandom } from './seeded-random.ts';
import { tree } from './trees.ts';
import { woodsBeside } from './woods-beside.ts';

const site: Site = {
  originLon_deg: -3.1186,
  originLat_deg: 52.0734,
  turn_deg: -23,
  height_m: ([x, y]) => 118 + 3 * Math.sin(x / 110) - 2 * Math.cos(y / 90),
};
/** From this hole on the file is written as a converter of OpenStreetMap data would write it. */
const FIRST_NESTED = 10;
const noTags: Tags = {};
const GREEN_RADIUS_M = 8;
const grounds: LocalPoint[] = [
  [2, 18],
  [60, -8],
  [330, -8],
  [428, 120],
  [424, 290],
  [330, 362],
  [180, 366],
  [70, 345],
  [2, 215],
];
const pressHouse = rectangle([136, 343], [152, 353]);
const parking = rectangle([26, 44], [42, 62]);
const random = seededRandom(18181);

/** The wooded course of ceilings, gaps and doglegs: GeoJSON text. */
export function oldOrchard(): string {
  const byHole = holes.flatMap(hole => {
    const items = [...siteItems(hole), ...woods(hole), ...obstacles(hole)];
    return Number(hole.ref) >= FIRST_NESTED ? items.map(nested) : items;
  });
  return courseText([boundary(), ...byHole, ...appleTrees().map(nested), ...surroundings()], site);
}

function boundary(): MapItem {
  return area(grounds, { leisure: 'disc_golf_course', name: 'Hollow Orchard', sport: 'disc_golf', holes: 18 });
}

/** Line, tees and basket, these with their height as `ele`. Numbers of nested items are text, as OpenStreetMap's are. */
function siteItems(hole: OrchardHole): MapItem[] {
  const text = Number(hole.ref) >= FIRST_NESTED;
  const numbered: Tags = hole.unnumbered ? {} : { ref: hole.ref };
  const length_m = Math.round(lineLength_m(hole.line));
  const drawn = hole.backwards ? hole.line.toReversed() : hole.line;
  const lengths = text ? { par: '3', dist: `${length_m} m` } : { par: 3, dist: length_m };
  const ele = (p: LocalPoint) => ({ ele: text ? site.height_m(p).toFixed(1) : Number(site.height_m(p).toFixed(1)) });
  const [start, end] = [hole.line[0]!, hole.line.at(-1)!];
  const red = atStation(hole.line, hole.redTee_m ?? 0).point;
  const tees = hole.redTee_m
    ? [
        teePad(hole, { name: 'blue', ...ele(start) }),
        point(red, { disc_golf: 'tee', ref: hole.ref, name: 'red', ...ele(red) }),
      ]
    : [point(start, { disc_golf: 'tee', ...numbered, ...ele(start) })];
  // "pin" is the rarer word for the same thing
  const basket = point(end, { disc_golf: hole.ref === '3' ? 'pin' : 'basket', ...numbered, ...ele(end) });
  return [line(drawn, { disc_golf: 'hole', ref: hole.ref, name: hole.name!, ...lengths }), ...tees, basket];
}

/** Woods on both sides, their edges ragged, closing in at a pinch and opening round tee and basket. */
function woods(hole: OrchardHole): MapItem[] {
  const { corridor_m, pinch } = hole;
  if (!corridor_m) return [];
  const length_m = lineLength_m(hole.line);
  const others = holes.filter(other => other !== hole);
  return (['left', 'right'] as const).flatMap((side, i) => {
    if (side === hole.openSide) return [];
    const phase = random.between(0, 6.28);
    const height_m = random.whole(11, 18);
    const edge_m = (s: number) => {
      const opening_m = Math.max(0, GREEN_RADIUS_M - corridor_m[i]!) * Math.max(0, 1 - (length_m - s) / 14);
      const ragged_m = corridor_m[i]! + 0.9 * Math.sin(s / 6 + phase) + opening_m;
      return pinch && Math.abs(s - pinch.at_m) <= 8 ? pinch.width_m / 2 : ragged_m;
    };
    const tags = woodTags(hole.ref, i, height_m);
    const edge = { side, edge_m, depth_m: 26, from_m: 3, to_m: length_m - 3 };
    return woodsBeside(hole, others, edge, isWoodland).map(ring => area(ring, tags));
  });
}

/** Not outside the grounds, among the apple trees, or against house and cars. */
function isWoodland(p: LocalPoint): boolean {
  const yards = [pressHouse, parking].map(ring => [...ring, ring[0]!]);
  return (
    isInPolygon(p, [[...grounds, grounds[0]!]]) &&
    clearOfHoles_m(
      p,
      holes.filter(hole => !hole.corridor_m),
    ) > 24 &&
    yards.every(ring => !isInPolygon(p, [ring]) && nearestStation(ring, p).distance_m > 4)
  );
}

/** Most woods are measured; some only by height, some not at all. */
function woodTags(ref: string, side: number, height_m: number): Tags {
  const kind: Tags = Number(ref) % 4 === 2 ? { landuse: 'forest' } : { natural: 'wood' };
  if (ref === '9' && side === 0) return kind;
  if (ref === '16') return { ...kind, height: height_m };
  return {
    ...kind,
    height: height_m,
    min_height: 1.8 + (Number(ref) % 3) * 0.5,
    density: ref === '1' ? 0.45 : 0.6 + 0.05 * side,
  };
}

function obstacles(hole: OrchardHole): MapItem[] {
  const [left_m, right_m] = hole.corridor_m ?? [0, 0];
  const top = (top_m: number | undefined): Tags => (top_m === undefined ? {} : { height: top_m });
  const canopy = (hole.canopy ?? []).map(({ from_m, to_m, clearance_m, top_m }) => {
    const over = strip(
      hole.line,
      stations(from_m, to_m, 4),
      () => -right_m - 0.5,
      () => left_m + 0.5,
    );
    return area(over, { obstacle: 'ceiling', min_height: clearance_m, ...top(top_m) });
  });
  const branch = hole.branch
    ? [
        line([besideLine(hole.line, hole.branch.from_m, -right_m), besideLine(hole.line, hole.branch.from_m, left_m)], {
          obstacle: 'ceiling',
          min_height: hole.branch.clearance_m,
          ...top(hole.branch.top_m),
        }),
      ]
    : [];
  const gaps = (hole.gaps ?? []).map(({ at_m, width_m, shift_m = 0, low_m, high_m }) =>
    line([besideLine(hole.line, at_m, shift_m + width_m / 2), besideLine(hole.line, at_m, shift_m - width_m / 2)], {
      obstacle: 'gap',
      ...(low_m === undefined ? noTags : { min_height: low_m }),
      ...top(high_m),
    }),
  );
  const mando = hole.mando
    ? [
        point(besideLine(hole.line, hole.mando.at_m, hole.mando.left_m), {
          disc_golf: 'mando',
          ref: hole.ref,
          mando: hole.mando.side,
        }),
      ]
    : [];
  const single = [...(hole.trees ?? []), ...(hole.mando ? [[hole.mando.at_m, hole.mando.left_m] as const] : [])];
  return [
    ...canopy,
    ...branch,
    ...gaps,
    ...mando,
    ...single.map(([s, left]) => tree(besideLine(hole.line, s, left), 'slender', random)),
  ];
}

/** Rows of apple trees along holes 5 and 10, every tree measured, the two rows by the fairway wide enough to throw between. */
function appleTrees(): MapItem[] {
  return ['5', '10'].flatMap(ref => {
    const hole = holes.find(h => h.ref === ref)!;
    const others = holes.filter(h => h.ref !== ref);
    return [-19, -12.5, -6, 6, 12.5, 19].flatMap(left_m =>
      stations(6, lineLength_m(hole.line) - 4, 7)
        .map(s => besideLine(hole.line, s + random.between(-0.6, 0.6), left_m + random.between(-0.5, 0.5)))
        .filter(p => clearOfHoles_m(p, others) > 11 && random.between(0, 1) > 0.12)
        .map(p => tree(p, 'apple', random)),
    );
  });
}

function surroundings(): MapItem[] {
  const hole = (ref: string) => holes.find(h => h.ref === ref)!.line;
  const rowBeside = (ref: string, from_m: number, to_m: number, left_m: number) =>
    stations(from_m, to_m, 12).map(s => besideLine(hole(ref), s, left_m));
  const wall = [besideLine(hole('13'), 96, 11), besideLine(hole('13'), 96, -11)];
  return [
    area(pressHouse, { building: 'yes', name: 'Press house', height: '7 m' }),
    line(wall, { barrier: 'wall', height: 1.1 }),
    line(wall, { disc_golf: 'mando', ref: '13', mando: 'above', height: 1.1 }),
    line(rowBeside('9', 6, 40, -3.8), { barrier: 'hedge', height: 2, width: 1.2 }),
    line(rowBeside('1', 4, 70, 7), { natural: 'tree_row', height: "40'", min_height: 1.8 }),
    line(rowBeside('5', 0, 80, -26), { natural: 'tree_row', height: 9, min_height: 1.5, density: 0.5 }),
    line(rowBeside('18', 30, 92, -4.4), { barrier: 'fence', height: 1.2 }),
    area(
      strip(
        hole('18'),
        stations(66, 92, 6),
        () => 3.6,
        () => 6.4,
      ),
      { natural: 'scrub', height: '6 ft' },
    ),
    line(
      [
        [-10, 160],
        [54, 153],
        [90, 163],
        [118, 171],
        [165, 190],
        [222, 187],
        [262, 178],
        [300, 164],
        [354, 139],
        [376, 128],
        [432, 118],
      ],
      { highway: 'bridleway' },
    ),
    area(parking, { amenity: 'parking' }),
  ];
}
