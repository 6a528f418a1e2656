import type { HoleMap, LocalPoint } from '../../core/geometry/hole-map.ts';
import type { PlainHoleMap } from './contract/hole-map.ts';

/** A hole's map as plain JSON: `null` for a height without end, plain lists for typed ones. */
export function plainHoleMap(map: HoleMap): PlainHoleMap {
  const { terrain } = map;
  return {
    ref: map.ref,
    ...(map.name === undefined ? {} : { name: map.name }),
    par: map.par,
    parSource: map.parSource,
    origin: [map.origin[0], map.origin[1]],
    basket: point(map.basket),
    line: map.line.map(point),
    otherTees: map.otherTees.map(point),
    terrain: { ...terrain, height_m: Array.from(terrain.height_m, centimetres) },
    trees: map.trees.map(tree => ({ ...tree, assumed: [...tree.assumed], at: point(tree.at) })),
    covers: map.covers.map(cover => ({ ...cover, ...area(cover) })),
    ceilings: map.ceilings.map(ceiling => ({ ...ceiling, ...area(ceiling), top_m: endless(ceiling.top_m) })),
    gaps: map.gaps.map(gap => ({
      ...gap,
      assumed: [...gap.assumed],
      posts: [point(gap.posts[0]), point(gap.posts[1])],
      high_m: endless(gap.high_m),
    })),
    outOfBounds: map.outOfBounds.map(outGround),
    hazards: map.hazards.map(ground => ({ ...ground, ...area(ground) })),
    islands: map.islands.map(outGround),
    lostGrounds: (map.lostGrounds ?? []).map(ground => ({ ...ground, ...area(ground) })),
    dropZones: map.dropZones.map(({ uses, ...zone }) => ({
      ...zone,
      assumed: [...zone.assumed],
      at: point(zone.at),
      ...(uses && { uses: [...uses] }),
    })),
    mandos: map.mandos.map(mando => ({
      ...mando,
      assumed: [...mando.assumed],
      line: mando.line.map(point),
      high_m: endless(mando.high_m),
      at: point(mando.at),
    })),
    fairways: map.fairways.map(fairway => ({ ...fairway, ...area(fairway) })),
    people: map.people.map(place => ({
      ...place,
      assumed: [...place.assumed],
      lines: place.lines.map(line => line.map(point)),
    })),
    assumptions: [...map.assumptions],
  };
}

function outGround({ relief, ...ground }: HoleMap['outOfBounds'][number]) {
  return { ...ground, ...area(ground), ...(relief && { relief: [...relief] }) };
}

function area(ground: Pick<HoleMap['covers'][number], 'assumed' | 'polygons'>) {
  return {
    assumed: [...ground.assumed],
    polygons: ground.polygons.map(polygon => polygon.map(ring => ring.map(point))),
  };
}

function point([east_m, north_m]: LocalPoint): [number, number] {
  return [centimetres(east_m), centimetres(north_m)];
}

const centimetres = (value_m: number) => Math.round(value_m * 100) / 100 + 0; // + 0: no minus zero
const endless = (value_m: number) => (Number.isFinite(value_m) ? value_m : null);
