import { boundingBox, boxesMeet } from '../../geometry/bounding-box.ts';
import type { HoleMap, LocalCover, LocalPoint, LocalPolygon } from '../../geometry/hole-map.ts';
import { type Hatch, hatch, type Rings } from './hatch.ts';
import { circle, path, pathData } from './svg.ts';
import type { ViewFrame } from './view-frame.ts';

const LEAST_TRUNK_MM = 0.22;
/** Crowns are outlines of their own only where there is room for them. */
const LEAST_CROWN_MM = 0.5;

type Areas = readonly Readonly<{ polygons: readonly LocalPolygon[] }>[];

/** Everything on the ground, lowest first: penalty ground, woods, things, ways of people. */
export function groundMarks(map: HoleMap, frame: ViewFrame): string {
  const onPaper = (polygon: LocalPolygon): Rings => polygon.map(ring => ring.map(frame.place));
  const outline = (kind: string, areas: Areas) =>
    path(
      kind,
      areas
        .flatMap(({ polygons }) => polygons.flatMap(onPaper))
        .map(ring => pathData(ring, true))
        .join(''),
    );
  const hatched = (kind: Hatch, areas: Areas) =>
    path(
      `hatch ${kind}`,
      areas
        .flatMap(({ polygons }) => polygons)
        .map(polygon => hatch(kind, onPaper(polygon), frame.width_mm, frame.height_mm))
        .join(''),
    );
  const own = map.fairways.filter(({ ownHole }) => ownHole);
  const coversOf = (kind: Hatch) => map.covers.filter(cover => coverHatch(cover) === kind);
  return [
    ...(map.islands.length === 0 ? [] : [aroundIslands(frame), outline('inside', map.islands), outline('inside', own)]),
    outline('fairway', own),
    ...(['out', 'hazard'] as const).flatMap(kind => {
      const areas = kind === 'out' ? map.outOfBounds : map.hazards;
      return [hatched(kind, areas), outline('edge', areas)];
    }),
    hatched('wood', coversOf('wood')),
    hatched('solid', coversOf('solid')),
    outline('thin', coversOf('solid')),
    outline('lost', map.lostGrounds ?? []),
    outline('ceiling', map.ceilings),
    trees(map, frame),
    ...map.gaps.map(({ posts }) => posts.map(post => circle('trunk', frame.place(post), LEAST_TRUNK_MM)).join('')),
    ...map.people.map(({ lines, closed }) =>
      lines.map(line => path('people', pathData(line.map(frame.place), closed))).join(''),
    ),
    ...map.dropZones.map(({ at }) => circle('drop', frame.place(at), 0.8)),
  ].join('');
}

function aroundIslands({ width_mm, height_mm }: ViewFrame): string {
  const all: Rings = [
    [
      [0, 0],
      [width_mm, 0],
      [width_mm, height_mm],
      [0, height_mm],
    ],
  ];
  return path('hatch out', hatch('out', all, width_mm, height_mm));
}

function coverHatch({ form }: LocalCover): Hatch {
  switch (form) {
    case 'wood':
    case 'scrub':
      return 'wood';
    case 'treeRow':
    case 'hedge':
    case 'wall':
    case 'fence':
    case 'building':
      return 'solid';
    default:
      return form satisfies never;
  }
}

function trees(map: HoleMap, frame: ViewFrame): string {
  const corners: LocalPoint[] = [
    frame.ground([0, 0]),
    frame.ground([frame.width_mm, 0]),
    frame.ground([frame.width_mm, frame.height_mm]),
    frame.ground([0, frame.height_mm]),
  ];
  const view = boundingBox(corners);
  return map.trees
    .filter(({ at, crownRadius_m }) => boxesMeet(boundingBox([at], crownRadius_m), view))
    .map(({ at, crownRadius_m, trunkRadius_m }) => {
      const crown_mm = crownRadius_m * frame.mmPerMetre;
      const trunk = circle('trunk', frame.place(at), Math.max(LEAST_TRUNK_MM, trunkRadius_m * frame.mmPerMetre));
      return (crown_mm < LEAST_CROWN_MM ? '' : circle('crown', frame.place(at), crown_mm)) + trunk;
    })
    .join('');
}
