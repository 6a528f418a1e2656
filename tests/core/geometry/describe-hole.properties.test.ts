import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { CourseObject } from '../../../core/course/course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { LocalPoint } from '../../../core/geometry/hole-map.ts';
import type { HoleReport } from '../../../core/geometry/hole-report.ts';
import { asDrawn, courseOf, holeOf, onMap, type Placing, type Sketcher, sketcher, treeAt, woodOf } from './sketch.ts';

// Properties: a hole laid out elsewhere, turned or mirrored, is the same hole. No outside numbers are needed.
const point = fc.tuple(fc.integer({ min: -45, max: 45 }), fc.integer({ min: 5, max: 150 }));
const scene = fc.record({
  bend: fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 50, max: 70 })),
  basket: fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: 110, max: 150 })),
  heights: fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })),
  trees: fc.array(point, { maxLength: 6 }),
  woods: fc.array(fc.tuple(point, fc.integer({ min: 5, max: 30 })), { maxLength: 3 }),
  pond: point,
  branch: point,
  gap: point,
  mando: point,
  path: fc.tuple(point, point),
});
type Scene = typeof scene extends fc.Arbitrary<infer T> ? T : never;

// A hair off whole metres, so that no drawn edge lies exactly on a 0.5 m station, where rounding would decide.
const off = ([x, y]: readonly [number, number]): LocalPoint => [x + 0.137, y + 0.171];

function objectsOf(sketch: Sketcher, drawn: Scene, mirrored: boolean): CourseObject[] {
  const pond = off(drawn.pond);
  const branch = off(drawn.branch);
  const gap = off(drawn.gap);
  return [
    ...drawn.trees.map((at, k) => treeAt(sketch, k, off(at))),
    ...drawn.woods.map(([at, size], k) => {
      const [x, y] = off(at);
      return woodOf(20 + k, sketch.box(x, y, x + size, y + size * 0.7));
    }),
    {
      ...onMap(30),
      kind: 'outOfBounds',
      reason: 'water',
      geometry: sketch.area(pond, [pond[0] + 18, pond[1] + 3], [pond[0] + 9, pond[1] + 21]),
    },
    {
      ...onMap(31),
      kind: 'ceiling',
      geometry: sketch.line(branch, [branch[0] + 7, branch[1] + 2]),
      clearance_m: 3.2,
      top_m: 7,
      width_m: 1,
    },
    {
      ...onMap(32),
      kind: 'gap',
      posts: [sketch.at(gap), sketch.at([gap[0] + 3, gap[1] + 0.4])],
      low_m: 0.3,
      high_m: 4,
    },
    {
      ...onMap(33),
      kind: 'mando',
      geometry: { type: 'Point', coordinates: [...sketch.at(off(drawn.mando))] },
      side: mirrored ? 'right' : 'left',
      ref: '1',
    },
    { ...onMap(34), kind: 'people', what: 'path', geometry: sketch.line(off(drawn.path[0]), off(drawn.path[1])) },
  ];
}

function reportAt(drawn: Scene, placing: Placing): HoleReport {
  const sketch = sketcher(placing);
  const [teeHeight_m, basketHeight_m] = drawn.heights;
  const hole = holeOf(sketch, { line: [[0, 0], drawn.bend, drawn.basket], teeHeight_m, basketHeight_m });
  return describeHole(buildHoleMap(courseOf([hole], objectsOf(sketch, drawn, placing.mirrored)), hole));
}

/** Everything but the bearing, numbers to the millimetre, so that two reports can be compared whole. */
function comparable(report: HoleReport): unknown {
  const { bearing_deg: _, ...rest } = report;
  return rest;
}

function expectAlike(got: unknown, want: unknown, path = 'report'): void {
  if (typeof got === 'number' && typeof want === 'number')
    expect(Math.abs(got - want), `${path}: ${got} against ${want}`).toBeLessThan(0.002);
  else if (Array.isArray(got) && Array.isArray(want)) {
    expect(got.length, `${path}: ${JSON.stringify(got)} against ${JSON.stringify(want)}`).toBe(want.length);
    for (const [i, value] of got.entries()) expectAlike(value, want[i], `${path}[${i}]`);
  } else if (typeof got === 'object' && got !== null && typeof want === 'object' && want !== null) {
    expect(Object.keys(got).sort(), path).toEqual(Object.keys(want).sort());
    for (const key of Object.keys(got))
      expectAlike(got[key as keyof typeof got], want[key as keyof typeof want], `${path}.${key}`);
  } else expect(got, path).toEqual(want);
}

const turn = (a: number, b: number): number => ((((b - a) % 360) + 540) % 360) - 180;

it('a hole turned on the spot has the same report, its bearing turned as much', () => {
  fc.assert(
    fc.property(scene, fc.double({ min: -180, max: 180, noNaN: true }), (drawn, turn_deg) => {
      const [here, turned] = [reportAt(drawn, asDrawn), reportAt(drawn, { ...asDrawn, turn_deg })];
      expectAlike(comparable(turned), comparable(here));
      expect(Math.abs(turn(turn_deg, turn(here.bearing_deg, turned.bearing_deg)))).toBeLessThan(1e-4);
    }),
    { seed: 21, numRuns: 60 },
  );
});

it('a hole laid out elsewhere, over the antimeridian too, has the same report', () => {
  const places = fc.record({
    lon_deg: fc.oneof(fc.double({ min: -180, max: 180, noNaN: true }), fc.constant(179.9999)),
    lat_deg: fc.double({ min: -70, max: 70, noNaN: true }),
  });
  fc.assert(
    fc.property(scene, places, (drawn, place) => {
      const [here, there] = [reportAt(drawn, asDrawn), reportAt(drawn, { ...asDrawn, ...place })];
      expectAlike(comparable(there), comparable(here));
    }),
    { seed: 22, numRuns: 60 },
  );
});

it('a mirrored hole has the mirrored report', () => {
  fc.assert(
    fc.property(scene, drawn => {
      const [plain, mirrored] = [reportAt(drawn, asDrawn), reportAt(drawn, { ...asDrawn, mirrored: true })];
      const swap = (side: string) => (side === 'left' ? 'right' : side === 'right' ? 'left' : side);
      const parts = (text: string) =>
        text.replace(/^between (.*) and (.*)$/, (_, a, b) => `between ${[a, b].sort().join(' and ')}`);
      const byText = <T extends { station_m: number }>(list: readonly T[]) =>
        [...list].sort((a, b) => a.station_m - b.station_m || JSON.stringify(a).localeCompare(JSON.stringify(b)));
      const view = (report: HoleReport, isMirrored: boolean) => ({
        lengths: [report.length_m, report.playLength_m, report.rise_m],
        bends: report.bends.map(b => ({ ...b, angle_deg: isMirrored ? -b.angle_deg : b.angle_deg })),
        ceilings: report.ceilings,
        gaps: report.gaps.map(gap => ({ ...gap, source: parts(gap.source) })),
        narrowest: report.narrowest && { station_m: report.narrowest.station_m, width_m: report.narrowest.width_m },
        outOfBounds: byText(report.outOfBounds.map(o => ({ ...o, side: isMirrored ? swap(o.side) : o.side }))),
        mandos: report.mandos.map(m => ({ ...m, side: isMirrored ? swap(m.side) : m.side })),
        people: [
          report.pathCrossings,
          report.peopleNearby.map(p => ({ ...p, side: isMirrored ? swap(p.side) : p.side })),
        ],
      });
      expectAlike(view(mirrored, true), view(plain, false));
    }),
    { seed: 23, numRuns: 60 },
  );
});

it('stations run from 0 to the play length, widths are above 0, and every window is an angle', () => {
  fc.assert(
    fc.property(scene, drawn => {
      const report = reportAt(drawn, asDrawn);
      const isStation = (s: number) => s >= -1e-9 && s <= report.playLength_m + 1e-6;
      for (const { from_m, to_m } of [...report.ceilings, ...report.gaps, ...report.barriers, ...report.outOfBounds])
        expect(isStation(from_m) && isStation(to_m) && from_m <= to_m).toBe(true);
      for (const gap of report.gaps) {
        expect(gap.width_m).toBeGreaterThan(0);
        expect(gap.station_m >= gap.from_m && gap.station_m <= gap.to_m).toBe(true);
        expect(gap.windowWidth_deg >= 0 && gap.windowWidth_deg <= 180).toBe(true);
      }
      expect(report.length_m).toBeLessThanOrEqual(report.playLength_m + 1e-9);
    }),
    { seed: 24, numRuns: 100 },
  );
});
