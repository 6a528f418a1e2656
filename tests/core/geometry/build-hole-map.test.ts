import { describe, expect, it } from 'vitest';
import type { CourseObject, MandoSide } from '../../../core/course/course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import type { HoleMap, LocalPoint } from '../../../core/geometry/hole-map.ts';
import { isInAny } from '../../../core/geometry/point-in-polygon.ts';
import { groundHeight } from '../../../core/geometry/terrain.ts';
import { courseOf, holeOf, onMap, sketcher, treeAt, woodOf } from './sketch.ts';

// Every place and number here is invented; wants follow from the sketch by hand.
const sketch = sketcher();
const straight = holeOf(sketch, {
  line: [
    [0, 0],
    [0, 100],
  ],
});
const mapOf = (...objects: CourseObject[]): HoleMap => buildHoleMap(courseOf([straight], objects), straight);

function near(got: LocalPoint, want: LocalPoint): void {
  expect(Math.hypot(got[0] - want[0], got[1] - want[1]), `[${got}] against [${want}]`).toBeLessThan(0.001);
}

const mandoAt = (side: MandoSide, numbers: object = {}): CourseObject => ({
  ...onMap(7),
  kind: 'mando',
  geometry: { type: 'Point', coordinates: [...sketch.at([3, 50])] },
  side,
  ...numbers,
});

const boundary = (...points: LocalPoint[]): CourseObject => ({
  ...onMap(4),
  kind: 'outOfBounds',
  geometry: sketch.line(...points),
  reason: 'tagged',
});

describe('a hole map', () => {
  it('survives structuredClone unchanged: it goes to workers', () => {
    const map = mapOf(treeAt(sketch, 5, [4, 30]), mandoAt('left'), boundary([-20, 0], [-20, 100]));
    expect(structuredClone(map)).toEqual(map);
  });

  it('starts at the tee, ends at the basket, keeps the bends and the other tees', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [10, 60],
        [60, 90],
      ],
    });
    const back = { position: sketch.at([-5, -20]), featureIndex: 9 };
    const map = buildHoleMap(courseOf([hole]), { ...hole, tees: [hole.tee, back] });
    expect(map.line).toHaveLength(3);
    near(map.line[0]!, [0, 0]);
    near(map.line[1]!, [10, 60]);
    near(map.basket, [60, 90]);
    expect(map.otherTees).toHaveLength(1);
    near(map.otherTees[0]!, [-5, -20]);
  });

  it('refuses a hole of no length', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 0],
      ],
    });
    expect(() => buildHoleMap(courseOf([hole]), hole)).toThrow(/hole 1/);
  });

  it('carries what lies within 80 m of the line of play, and no more', () => {
    const map = mapOf(
      treeAt(sketch, 1, [79, 50]),
      treeAt(sketch, 2, [90, 50]),
      woodOf(3, sketch.box(70, 0, 300, 40)),
      woodOf(4, sketch.box(85, 0, 300, 40)),
    );
    expect(map.trees.map(t => t.source)).toEqual(['features[1]']);
    expect(map.covers.map(c => c.source)).toEqual(['features[3]']);
  });

  it('keeps par as tagged, else derives it and says so', () => {
    const tagged = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 100],
      ],
      par: 4,
    });
    expect(buildHoleMap(courseOf([tagged]), tagged)).toMatchObject({ par: 4, parSource: 'tagged' });
    expect(mapOf()).toMatchObject({ par: 3, parSource: 'derived' });
    expect(mapOf().assumptions.some(text => text.includes('par is not mapped'))).toBe(true);
  });

  it('reads the ground off tee and basket, relative to the tee', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 100],
      ],
      teeHeight_m: 210,
      basketHeight_m: 203,
    });
    const { terrain } = buildHoleMap(courseOf([hole]), hole);
    expect(terrain.known).toBe(true);
    expect(groundHeight(terrain, 0, 100)).toBeCloseTo(-7, 4);
    expect(groundHeight(terrain, 0, 50)).toBeCloseTo(-3.5, 4);
    expect(mapOf().assumptions).toContain('heights are not mapped: the ground is taken as level');
  });

  it('takes loose heights between into account', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 100],
      ],
      teeHeight_m: 10,
      basketHeight_m: 10,
    });
    const dip = { position: sketch.at([0, 48]), height_m: 5 };
    const { terrain } = buildHoleMap(courseOf([hole], [], { heights: [dip] }), hole);
    expect(Math.abs(groundHeight(terrain, 0, 48) + 5)).toBeLessThan(0.05);
    expect(Math.abs(groundHeight(terrain, 0, 100))).toBeLessThan(0.01);
  });

  it('names the stand-ins of what it carries, once per kind and number', () => {
    const assumed = { assumed: ['height'] };
    const map = mapOf(
      treeAt(sketch, 1, [5, 20], assumed),
      treeAt(sketch, 2, [5, 40], assumed),
      treeAt(sketch, 3, [300, 0], assumed),
    );
    expect(map.assumptions.filter(text => text.startsWith('tree:'))).toEqual([
      'tree: height is assumed, not mapped (features[1], features[2])',
    ]);
  });

  it('passes on what the reader of the file said of the things here', () => {
    const course = courseOf([straight], [treeAt(sketch, 1, [5, 20])], {
      assumptions: [
        { path: 'features[1].properties.height', message: 'read as feet' },
        { path: 'features[12]', message: 'something elsewhere' },
      ],
    });
    const { assumptions } = buildHoleMap(course, straight);
    expect(assumptions).toContain('features[1].properties.height: read as feet');
    expect(assumptions.some(text => text.includes('elsewhere'))).toBe(false);
  });
});

describe('mandos', () => {
  it.each([
    ['left', [3, 50], [63, 50], 0, Number.POSITIVE_INFINITY],
    ['right', [-57, 50], [3, 50], 0, Number.POSITIVE_INFINITY],
    ['above', [-57, 50], [63, 50], 0, 4],
    ['below', [-57, 50], [63, 50], 4, Number.POSITIVE_INFINITY],
  ] as const)(
    'a single object to pass on the %s side shuts the plane across the line of play',
    (side, from, to, low, high) => {
      const mando = mapOf(mandoAt(side, { height_m: 4 })).mandos[0]!;
      const ends = [...mando.line].sort((a, b) => a[0] - b[0]);
      near(ends[0]!, from);
      near(ends[1]!, to);
      expect(mando).toMatchObject({ low_m: low, high_m: high, side });
      near(mando.at, [3, 50]);
      expect(mando.assumed).toContain('plane derived, confirm with the course');
    },
  );

  it('at a bend the plane stands square to the mean of the two legs', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 50],
        [50, 50],
      ],
    });
    const object: CourseObject = {
      ...onMap(7),
      kind: 'mando',
      geometry: { type: 'Point', coordinates: [...sketch.at([0, 50])] },
      side: 'left',
    };
    const { line } = buildHoleMap(courseOf([hole], [object]), hole).mandos[0]!;
    near(line[1]!, [60 * Math.SQRT1_2, 50 - 60 * Math.SQRT1_2]);
  });

  it('a mapped line is the plane itself', () => {
    const map = mapOf({ ...onMap(7), kind: 'mando', geometry: sketch.line([5, 50], [40, 60]), side: 'left' });
    near(map.mandos[0]!.line[0]!, [5, 50]);
    near(map.mandos[0]!.line[1]!, [40, 60]);
    expect(map.mandos[0]!.assumed).toEqual([]);
  });

  it('go to the hole they name, else to the nearest within 40 m; drop zones too', () => {
    const other = holeOf(sketch, {
      ref: '2',
      line: [
        [30, 0],
        [30, 100],
      ],
    });
    const dropZone = (point: LocalPoint, ref?: string): CourseObject => ({
      ...onMap(8),
      kind: 'dropZone',
      position: sketch.at(point),
      ...(ref !== undefined && { ref }),
    });
    const counts = (...objects: CourseObject[]) =>
      [straight, other].map(hole => {
        const map = buildHoleMap(courseOf([straight, other], objects), hole);
        return map.mandos.length + map.dropZones.length;
      });
    expect(counts(mandoAt('left'))).toEqual([1, 0]);
    expect(counts(mandoAt('left', { ref: '2' }))).toEqual([0, 1]);
    expect(counts(dropZone([20, 50]))).toEqual([0, 1]);
    expect(counts(dropZone([20, 50], '1'))).toEqual([1, 0]);
    expect(counts(dropZone([-50, 50]))).toEqual([0, 0]);
    // A number that no hole has says nothing.
    expect(counts(dropZone([20, 50], '77'))).toEqual([0, 1]);
  });
});

describe('out-of-bounds', () => {
  it('beyond a boundary line is the side away from the line of play, 100 m deep', () => {
    const { polygons } = mapOf(boundary([-20, 0], [-20, 100])).outOfBounds[0]!;
    for (const p of [
      [-20.1, 50],
      [-119, 50],
      [-60, 1],
    ] as LocalPoint[])
      expect(isInAny(p, polygons), `${p}`).toBe(true);
    for (const p of [
      [-19.9, 50],
      [-121, 50],
      [-60, -1],
      [-60, 101],
    ] as LocalPoint[])
      expect(isInAny(p, polygons), `${p}`).toBe(false);
  });

  it('does not depend on which way the boundary was drawn', () => {
    const [up, down] = [boundary([25, 10], [30, 90]), boundary([30, 90], [25, 10])].map(
      o => mapOf(o).outOfBounds[0]!.polygons,
    );
    for (const p of [
      [40, 50],
      [20, 50],
      [0, 50],
    ] as LocalPoint[])
      expect(isInAny(p, up!)).toBe(isInAny(p, down!));
    expect(isInAny([40, 50], up!)).toBe(true);
  });

  it('follows a boundary round a corner without coming back over it', () => {
    // An L round the hole's right and far side, and one that folds away from the hole.
    const round = mapOf(boundary([20, 0], [20, 120], [-60, 120])).outOfBounds[0]!.polygons;
    for (const p of [
      [40, 60],
      [40, 140],
      [-20, 150],
      [80, 170],
    ] as LocalPoint[])
      expect(isInAny(p, round), `${p}`).toBe(true);
    for (const p of [
      [0, 60],
      [19, 119],
      [-50, 110],
    ] as LocalPoint[])
      expect(isInAny(p, round), `${p}`).toBe(false);
    const away = mapOf(boundary([60, 0], [15, 50], [60, 100])).outOfBounds[0]!.polygons;
    for (const p of [
      [20, 50],
      [60, 50],
      [100, 50],
    ] as LocalPoint[])
      expect(isInAny(p, away), `${p}`).toBe(true);
    for (const p of [
      [14, 50],
      [30, 10],
      [30, 90],
      [50, 110],
    ] as LocalPoint[])
      expect(isInAny(p, away), `${p}`).toBe(false);
  });

  it('inside a narrow fold of the boundary only the ground between its arms is out', () => {
    const vee = mapOf(boundary([60, 35], [15, 50], [60, 65])).outOfBounds[0]!.polygons;
    for (const p of [
      [40, 50],
      [60, 50],
      [59, 40],
    ] as LocalPoint[])
      expect(isInAny(p, vee), `${p}`).toBe(true);
    for (const p of [
      [40, 100],
      [40, 0],
      [20, 60],
      [50, 70],
    ] as LocalPoint[])
      expect(isInAny(p, vee), `${p}`).toBe(false);
    const bay = mapOf(boundary([60, 30], [15, 40], [15, 60], [60, 70])).outOfBounds[0]!.polygons;
    for (const p of [
      [20, 50],
      [40, 50],
      [58, 50],
    ] as LocalPoint[])
      expect(isInAny(p, bay), `${p}`).toBe(true);
    for (const p of [
      [60, 75],
      [65, 88],
      [60, 25],
      [14, 50],
    ] as LocalPoint[])
      expect(isInAny(p, bay), `${p}`).toBe(false);
  });

  it('a closed line is the area it goes round, however notched', () => {
    const notched = mapOf(
      boundary([20, 20], [60, 20], [60, 80], [20, 80], [20, 60], [40, 60], [40, 40], [20, 40], [20, 20]),
    ).outOfBounds[0]!.polygons;
    for (const p of [
      [50, 50],
      [30, 30],
      [30, 70],
      [50, 70],
      [22, 22],
    ] as LocalPoint[])
      expect(isInAny(p, notched), `${p}`).toBe(true);
    for (const p of [
      [30, 50],
      [70, 50],
      [30, 90],
    ] as LocalPoint[])
      expect(isInAny(p, notched), `${p}`).toBe(false);
  });

  it('a closed line is the area it goes round; a stream is its own width', () => {
    const ring = mapOf(boundary([20, 20], [40, 20], [40, 40], [20, 40], [20, 20])).outOfBounds[0]!.polygons;
    expect(isInAny([30, 30], ring)).toBe(true);
    expect(isInAny([45, 30], ring)).toBe(false);
    const stream = { ...boundary([-50, 60], [0, 60], [50, 80]), reason: 'water', strip_m: 4 } as CourseObject;
    const { polygons, what } = mapOf(stream).outOfBounds[0]!;
    expect(what).toBe('water');
    expect(isInAny([-20, 61.9], polygons)).toBe(true);
    expect(isInAny([-20, 62.1], polygons)).toBe(false);
    expect(isInAny([-0.1, 58.1], polygons)).toBe(true);
    // The outside of its bend is rounded, not notched.
    expect(isInAny([0.33, 58.3], polygons)).toBe(true);
  });

  it('says when the line of play crosses a boundary, so that the side is a guess', () => {
    const map = mapOf(boundary([-50, 60], [50, 60]));
    expect(map.assumptions.some(text => text.includes('crosses this boundary'))).toBe(true);
  });

  it('an area numbered for another hole is in play here', () => {
    const other = holeOf(sketch, {
      ref: '2',
      line: [
        [30, 0],
        [30, 100],
      ],
    });
    const area: CourseObject = {
      ...onMap(3),
      kind: 'outOfBounds',
      geometry: sketch.box(10, 20, 20, 80),
      reason: 'tagged',
      ref: '2',
    };
    expect(buildHoleMap(courseOf([straight, other], [area]), straight).outOfBounds).toEqual([]);
    expect(buildHoleMap(courseOf([straight, other], [area]), other).outOfBounds).toHaveLength(1);
  });

  it('an island belongs to the hole whose basket it holds', () => {
    const island = (y: number): CourseObject => ({
      ...onMap(3),
      kind: 'island',
      geometry: sketch.box(-10, y - 10, 10, y + 10),
    });
    expect(mapOf(island(100)).islands).toHaveLength(1);
    expect(mapOf(island(60)).islands).toHaveLength(0);
  });
});

describe('fairways', () => {
  const fairway = (numbers: object = {}): CourseObject => ({
    ...onMap(3),
    kind: 'fairway',
    geometry: sketch.box(-8, 0, 8, 100),
    ...numbers,
  });
  const other = holeOf(sketch, {
    ref: '2',
    line: [
      [40, 0],
      [40, 100],
    ],
  });
  const on = (object: CourseObject) =>
    [straight, other].map(hole => buildHoleMap(courseOf([straight, other], [object]), hole).fairways);

  it('go to the hole they name; without a number to the hole that plays along them', () => {
    expect(on(fairway({ ref: '1' })).map(list => list.length)).toEqual([1, 0]);
    expect(on(fairway()).map(list => list.map(f => f.ownHole))).toEqual([[true], [false]]);
  });

  it('know their surface, and say when the word is unknown', () => {
    expect(mapOf(fairway({ surface: 'gravel' })).fairways[0]!.surface).toBe('hardpan');
    const map = mapOf(fairway({ surface: 'marshmallow' }));
    expect(map.fairways[0]!.surface).toBe('turf');
    expect(map.assumptions.some(text => text.includes('marshmallow'))).toBe(true);
  });
});
