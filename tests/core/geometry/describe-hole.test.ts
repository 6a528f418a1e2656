import { describe, expect, it } from 'vitest';
import type { Course, CourseHole, CourseObject } from '../../../core/course/course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import { type HoleReport, HoleReportSchema } from '../../../core/geometry/hole-report.ts';
import { asDrawn, courseOf, holeOf, onMap, sketcher, treeAt, woodOf } from './sketch.ts';

// Invented sketches, x right of the tee and y straight ahead; wants by hand from the sketch unless a row names a source.
const sketch = sketcher();
const straight = holeOf(sketch, {
  line: [
    [0, 0],
    [0, 100],
  ],
});

function reportOf(
  objects: readonly CourseObject[],
  hole: CourseHole = straight,
  rest: Partial<Course> = {},
): HoleReport {
  const report = describeHole(buildHoleMap(courseOf([hole], objects, rest), hole));
  expect(HoleReportSchema.safeParse(report).error).toBeUndefined();
  expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  return report;
}

function within(got: number, want: number, tolerance: number): void {
  expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(tolerance);
}

describe('lengths, bends, rise', () => {
  it('a dogleg drawn in degrees: 190.0049 m of play, 169.1038 m at 42.8011°, 55.0015° right at 110.0061 m ([C] GeographicLib)', () => {
    const line = [
      [24.9, 60.2],
      [24.9006784, 60.2009278],
      [24.9020717, 60.2011136],
    ] as const;
    const tee = { position: line[0], featureIndex: 0 };
    const basket = { position: line[2], featureIndex: 1 };
    const report = reportOf([], {
      ref: '4',
      par: 3,
      tee,
      basket,
      tees: [tee],
      baskets: [basket],
      line,
      lineSource: 'drawn',
    });
    within(report.playLength_m, 190.0049, 0.0002);
    within(report.length_m, 169.1038, 0.0001);
    within(report.bearing_deg, 42.8011, 0.0001);
    expect(report.bends).toHaveLength(1);
    within(report.bends[0]!.station_m, 110.0061, 0.0001);
    // The convergence of the meridians over the first leg is 0.0006°, so the turn between geodesics differs by that much at most.
    within(report.bends[0]!.angle_deg, 55.0015, 0.0007);
  });

  it('100 m of plan with the basket 12 m lower is 100.717 m through the air (by hand: √(100² + 12²))', () => {
    const report = reportOf(
      [],
      holeOf(sketch, {
        line: [
          [0, 0],
          [0, 100],
        ],
        teeHeight_m: 50,
        basketHeight_m: 38,
      }),
    );
    within(report.rise_m!, -12, 0.001);
    within(report.slopeLength_m!, 100.717, 0.001);
  });

  it('says null, not 0, when heights are not mapped', () => {
    expect(reportOf([])).toMatchObject({ rise_m: null, slopeLength_m: null });
  });

  it('one bend drawn round is one; wavers of a hand-drawn line are none', () => {
    const round = reportOf(
      [],
      holeOf(sketch, {
        line: [
          [0, 0],
          [0, 60],
          [3, 66],
          [9, 69],
          [60, 69],
        ],
      }),
    );
    expect(round.bends).toHaveLength(1);
    within(round.bends[0]!.angle_deg, 90, 0.01);
    const wavering = reportOf(
      [],
      holeOf(sketch, {
        line: [
          [0, 0],
          [0.5, 50],
          [0, 100],
        ],
      }),
    );
    expect(wavering.bends).toEqual([]);
  });
});

describe('ceilings', () => {
  const ceiling = (geometry: object, numbers: object = {}): CourseObject =>
    ({ ...onMap(7), kind: 'ceiling', geometry, clearance_m: 2.9, top_m: 8, width_m: 1, ...numbers }) as CourseObject;

  it('a mapped area comes back with its clearance and stations', () => {
    const { ceilings } = reportOf([ceiling(sketch.box(-5, 30, 5, 42))]);
    expect(ceilings).toHaveLength(1);
    within(ceilings[0]!.from_m, 30, 0.01);
    within(ceilings[0]!.to_m, 42, 0.01);
    expect(ceilings[0]!.clearance_m).toBe(2.9);
    expect(ceilings[0]!.source).toBe('features[7] (mapped)');
  });

  it('a branch drawn as a line is its width about the crossing', () => {
    const { ceilings } = reportOf([ceiling(sketch.line([-5, 40], [5, 40]))]);
    within(ceilings[0]!.from_m, 39.5, 0.01);
    within(ceilings[0]!.to_m, 40.5, 0.01);
  });

  it('hangs over a dogleg by station along the bend', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 50],
        [50, 50],
      ],
    });
    const { ceilings } = reportOf([ceiling(sketch.box(10, 40, 20, 60))], hole);
    within(ceilings[0]!.from_m, 60, 0.01);
    within(ceilings[0]!.to_m, 70, 0.01);
  });

  it('one that ends just beside the line of play is named so; one far off is not', () => {
    const beside = reportOf([ceiling(sketch.box(1, 30, 6, 34))]).ceilings;
    expect(beside[0]!.source).toContain('beside');
    within(beside[0]!.from_m, 30 - Math.sqrt(3), 0.3);
    expect(reportOf([ceiling(sketch.box(20, 30, 26, 34))]).ceilings).toEqual([]);
  });

  it('crowns over the line are ceilings too, joined where they hang alike', () => {
    const { ceilings } = reportOf([
      treeAt(sketch, 1, [0, 30]),
      treeAt(sketch, 2, [1, 34], { crownBase_m: 3.1 }),
      treeAt(sketch, 3, [0, 60], { crownBase_m: 2 }),
      treeAt(sketch, 4, [5, 80]),
    ]);
    expect(ceilings).toHaveLength(2);
    within(ceilings[0]!.from_m, 27, 0.01);
    within(ceilings[0]!.to_m, 34 + Math.sqrt(8), 0.01);
    expect(ceilings[0]!.clearance_m).toBe(3);
    expect(ceilings[0]!.source).toBe('tree crowns: features[1], features[2]');
    within(ceilings[1]!.from_m, 57, 0.01);
    expect(ceilings[1]!.clearance_m).toBe(2);
  });

  it('a wood over the line is a ceiling of crowns and a barrier of stems', () => {
    const report = reportOf([woodOf(5, sketch.box(-20, 40, 20, 60), { base_m: 3.5 })]);
    expect(report.ceilings).toHaveLength(1);
    within(report.ceilings[0]!.from_m, 40, 0.01);
    expect(report.ceilings[0]!.clearance_m).toBe(3.5);
    expect(report.ceilings[0]!.source).toBe('wood crowns: features[5]');
    expect(report.barriers[0]!.source).toBe('wood (stems): features[5]');
    // In the wood there is no free corridor to measure.
    expect(reportOf([woodOf(5, sketch.box(-4, 40, 4, 60))]).gaps).toEqual([]);
  });
});

describe('gaps', () => {
  it('a mapped 3 m gap comes back with its width and its window from the tee', () => {
    const posts = [sketch.at([-1, 38]), sketch.at([2, 38])] as const;
    const { gaps, narrowest } = reportOf([{ ...onMap(6), kind: 'gap', posts, low_m: 0.5, high_m: 4 }]);
    expect(gaps).toHaveLength(1);
    within(gaps[0]!.width_m, 3, 0.001);
    within(gaps[0]!.station_m, 38, 0.001);
    // By hand: atan(1/38) + atan(2/38); atan(2.8/d) − atan(−0.7/d), d = √(38² + 0.5²).
    within(gaps[0]!.windowWidth_deg, 4.5201, 0.001);
    within(gaps[0]!.windowHeight_deg!, 5.2693, 0.001);
    expect(narrowest).toMatchObject({ left_source: 'features[6] (mapped), post' });
  });

  it('sees an opening as a thrower sees the catch zone: 57 cm × 82–133 cm at 10 m is 3.264° × 2.921° ([C] atan of half-width, edges)', () => {
    const posts = [sketch.at([-0.285, 10]), sketch.at([0.285, 10])] as const;
    const { gaps } = reportOf([{ ...onMap(6), kind: 'gap', posts, low_m: 0.82, high_m: 1.33 }]);
    within(gaps[0]!.windowWidth_deg, 2 * 1.632, 0.0011);
    within(gaps[0]!.windowHeight_deg!, 2.921, 0.0006);
  });

  it('open above has no height', () => {
    const posts = [sketch.at([-1, 38]), sketch.at([2, 38])] as const;
    const { gaps } = reportOf([{ ...onMap(6), kind: 'gap', posts, low_m: 0, high_m: Number.POSITIVE_INFINITY }]);
    expect(gaps[0]).toMatchObject({ high_m: null, windowHeight_deg: null });
  });

  it.each([0, 30, 77, 200])(
    'a 4 m corridor between two woods is one gap of 4 m ± 0.05, hole turned by %d°',
    turn_deg => {
      const turned = sketcher({ ...asDrawn, turn_deg });
      const hole = holeOf(turned, {
        line: [
          [0, 0],
          [0, 100],
        ],
      });
      const { gaps, narrowest } = reportOf(
        [woodOf(1, turned.box(-40, 20, -2, 70)), woodOf(2, turned.box(2, 20, 40, 70))],
        hole,
      );
      expect(gaps).toHaveLength(1);
      within(gaps[0]!.width_m, 4, 0.05);
      within(gaps[0]!.station_m, 20, 0.6);
      within(gaps[0]!.from_m, 20, 0.6);
      within(gaps[0]!.to_m, 70, 0.6);
      within(narrowest!.width_m, 4, 0.05);
      expect([narrowest!.left_source, narrowest!.right_source]).toEqual(['features[1]', 'features[2]']);
      expect(gaps[0]!.high_m).toBeNull();
    },
  );

  it('a corridor off the line of play’s middle, or with the line along a wood with a hole in it, is as wide', () => {
    const off = reportOf([woodOf(1, sketch.box(-40, 20, -1, 70)), woodOf(2, sketch.box(3, 20, 40, 70))]);
    within(off.gaps[0]!.width_m, 4, 0.05);
    const outer = sketch.box(-40, 10, 40, 90).coordinates[0]!;
    const lane = sketch.box(-2, 5, 2, 85).coordinates[0]!;
    const cut = reportOf([woodOf(1, { type: 'Polygon', coordinates: [outer, lane] })]);
    within(cut.gaps[0]!.width_m, 4, 0.05);
  });

  it('two narrowings with room between are two gaps, a pinch in a corridor is the narrowest', () => {
    const objects = [
      woodOf(1, sketch.area([-40, 20], [-3, 20], [-1.5, 40], [-5, 60], [-2, 80], [-40, 80])),
      woodOf(2, sketch.box(2, 20, 40, 80)),
    ];
    const { gaps, narrowest } = reportOf(objects);
    expect(gaps.map(gap => Math.round(gap.width_m * 10) / 10)).toEqual([3.5, 4]);
    within(gaps[0]!.station_m, 40, 0.6);
    within(gaps[1]!.station_m, 80, 0.6);
    within(narrowest!.station_m, 40, 0.6);
  });

  it('two trunks make a gap, though one stands a metre further on; low crowns narrow it', () => {
    const trunks = reportOf([treeAt(sketch, 1, [-2, 40]), treeAt(sketch, 2, [2.4, 41])]);
    expect(trunks.gaps).toHaveLength(1);
    within(trunks.gaps[0]!.width_m, 4.4 - 0.4, 0.05);
    // The crowns (base 3 m) meet over it.
    expect(trunks.gaps[0]!.high_m).toBe(3);
    const low = reportOf([
      treeAt(sketch, 1, [-5, 40], { crownBase_m: 1.5 }),
      treeAt(sketch, 2, [5, 40], { crownBase_m: 1.5 }),
    ]);
    within(low.gaps[0]!.width_m, 10 - 6, 0.05);
  });

  it('an avenue of like pairs is one corridor', () => {
    const trees = [20, 28, 36, 44].flatMap((y, k) => [
      treeAt(sketch, 2 * k, [-3, y]),
      treeAt(sketch, 2 * k + 1, [3, y]),
    ]);
    const { gaps } = reportOf(trees);
    expect(gaps).toHaveLength(1);
    within(gaps[0]!.width_m, 5.6, 0.05);
    within(gaps[0]!.from_m, 18.5, 0.8);
    within(gaps[0]!.to_m, 45.5, 0.8);
  });

  it('a mapped gap whose posts are mapped as trees is listed once', () => {
    const posts = [sketch.at([-1.5, 38]), sketch.at([1.5, 38])] as const;
    const { gaps } = reportOf([
      { ...onMap(6), kind: 'gap', posts, low_m: 0, high_m: 5 },
      treeAt(sketch, 1, [-1.5, 38]),
      treeAt(sketch, 2, [1.5, 38]),
    ]);
    expect(gaps.map(gap => gap.source)).toEqual(['features[6] (mapped)']);
  });

  it('an open hole has none, nor one with trees on one side only', () => {
    expect(reportOf([])).toMatchObject({ gaps: [], narrowest: null });
    expect(reportOf([treeAt(sketch, 1, [3, 40])]).gaps).toEqual([]);
  });
});

describe('out-of-bounds, mandos, people', () => {
  const water = (geometry: object): CourseObject =>
    ({ ...onMap(3), kind: 'outOfBounds', geometry, reason: 'water', name: 'Mill pond' }) as CourseObject;

  it('alongside: side, stretch, closest place', () => {
    const { outOfBounds } = reportOf([water(sketch.area([-40, 20], [-12, 20], [-8, 60], [-40, 80]))]);
    expect(outOfBounds).toHaveLength(1);
    expect(outOfBounds[0]).toMatchObject({ side: 'left', what: 'Mill pond, water (features[3])' });
    within(outOfBounds[0]!.from_m, 20, 0.6);
    within(outOfBounds[0]!.closest_m, 8, 0.01);
    within(outOfBounds[0]!.station_m, 60, 0.5);
  });

  it('across, and beyond the basket', () => {
    const across = reportOf([water(sketch.box(-40, 30, 40, 55))]).outOfBounds;
    expect(across).toHaveLength(1);
    expect(across[0]!.side).toBe('across');
    within(across[0]!.from_m, 30, 0.01);
    within(across[0]!.to_m, 55, 0.01);
    const beyond = reportOf([water(sketch.box(-30, 112, 30, 130))]).outOfBounds;
    expect(beyond.map(o => o.side)).toEqual(['beyond']);
    within(beyond[0]!.closest_m, 12, 0.01);
    expect(reportOf([water(sketch.box(50, 0, 60, 100))]).outOfBounds).toEqual([]);
  });

  it('an island: everything before it across, its edges on both sides and behind', () => {
    const { outOfBounds } = reportOf([{ ...onMap(3), kind: 'island', geometry: sketch.box(-9, 85, 7, 112) }]);
    const bySide = Object.fromEntries(outOfBounds.map(o => [o.side, o]));
    within(bySide.across!.to_m, 85, 0.01);
    within(bySide.left!.closest_m, 9, 0.01);
    within(bySide.right!.closest_m, 7, 0.01);
    within(bySide.beyond!.closest_m, 12, 0.01);
  });

  it('mandos by station and side', () => {
    const { mandos } = reportOf([
      { ...onMap(7), kind: 'mando', geometry: { type: 'Point', coordinates: [...sketch.at([4, 55])] }, side: 'left' },
    ]);
    expect(mandos).toHaveLength(1);
    expect(mandos[0]).toMatchObject({ side: 'left', low_m: 0, high_m: null, source: 'features[7]' });
    within(mandos[0]!.station_m, 55, 0.01);
    expect(mandos[0]!.assumed).toContain('plane derived, confirm with the course');
  });

  it('paths that cross, and people within 20 m', () => {
    const people = (index: number, geometry: object): CourseObject =>
      ({ ...onMap(index), kind: 'people', geometry, what: 'path' }) as CourseObject;
    const report = reportOf([
      people(1, sketch.line([-30, 62], [30, 62])),
      people(2, sketch.line([15, 0], [15, 100])),
      people(3, sketch.line([28, 0], [28, 100])),
      people(4, { type: 'Point', coordinates: [...sketch.at([-9, 40])] }),
    ]);
    expect(report.pathCrossings).toHaveLength(1);
    within(report.pathCrossings[0]!.station_m, 62, 0.01);
    expect(report.pathCrossings[0]!.what).toBe('path (features[1])');
    const nearby = Object.fromEntries(report.peopleNearby.map(p => [p.what, p]));
    expect(Object.keys(nearby).sort()).toEqual(['path (features[2])', 'path (features[4])']);
    expect(nearby['path (features[2])']!.side).toBe('right');
    within(nearby['path (features[2])']!.distance_m, 15, 0.01);
    within(nearby['path (features[4])']!.station_m, 40, 0.01);
  });
});

describe('blind spots', () => {
  const wall = (y: number, height_m: number): CourseObject => ({
    ...onMap(4),
    kind: 'cover',
    form: 'wall',
    geometry: sketch.line([-10, y], [10, y]),
    width_m: 0.3,
    height_m,
    base_m: 0,
    density: 1,
  });

  it('a wall hides the basket when the sight line from 1.6 m to 0.5 m meets it (by hand: 1.05 m up half-way)', () => {
    expect(reportOf([wall(50, 1)]).blindSpots).toEqual([]);
    const { blindSpots } = reportOf([wall(50, 1.1)]);
    expect(blindSpots).toHaveLength(1);
    expect(blindSpots[0]).toMatchObject({ target: 'basket', blockedBy: 'wall: features[4]' });
    within(blindSpots[0]!.blockedAt_m, 50, 0.6);
  });

  it('a hill hides it too', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 100],
      ],
      teeHeight_m: 20,
      basketHeight_m: 20,
    });
    const hill = { position: sketch.at([0, 50]), height_m: 26 };
    expect(reportOf([], hole, { heights: [hill] }).blindSpots[0]).toMatchObject({
      target: 'basket',
      blockedBy: 'the ground',
    });
    expect(reportOf([], hole).blindSpots).toEqual([]);
  });

  it('twenty metres of stems hide the bend behind them, five do not', () => {
    const hole = holeOf(sketch, {
      line: [
        [0, 0],
        [0, 80],
        [60, 80],
      ],
    });
    expect(reportOf([woodOf(1, sketch.box(-9, 30, 9, 50))], hole).blindSpots.map(b => b.target)).toEqual(['bend']);
    expect(reportOf([woodOf(1, sketch.box(-9, 30, 9, 35))], hole).blindSpots).toEqual([]);
  });
});

it('passes through what is not mapped and what is assumed', () => {
  const map = buildHoleMap(courseOf([straight]), straight);
  const report = describeHole(map, ['mandos', 'out-of-bounds']);
  expect(report.notMapped).toEqual(['mandos', 'out-of-bounds']);
  expect(report.assumptions).toEqual([...map.assumptions]);
});
