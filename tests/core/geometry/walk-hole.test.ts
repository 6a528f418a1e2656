import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCourse } from '../../../core/course/parse-course.ts';
import { buildHoleMap } from '../../../core/geometry/build-hole-map.ts';
import { describeHole } from '../../../core/geometry/describe-hole.ts';
import type { HoleReport } from '../../../core/geometry/hole-report.ts';
import { walkHole } from '../../../core/geometry/walked-hole/walk-hole.ts';
import { type WalkedHoleEntry, WalkedHoleSchema } from '../../../core/geometry/walked-hole/walked-hole-input.ts';
import type { Problem } from '../../../core/units/result.ts';

const START = [11.25, 46.9] as const;
const NOWHERE = [0, 0] as const;

type Entry = Partial<WalkedHoleEntry>;
const walk = (entry: Entry, start: readonly [number, number] | null = START) =>
  walkHole(
    WalkedHoleSchema.parse({ ref: '4', distances: { unit: 'm' }, sizes: 'm', length: 100, bearing_deg: 30, ...entry }),
    start,
    NOWHERE,
  );

function described(entry: Entry, start: readonly [number, number] | null = START): HoleReport {
  const made = walk(entry, start);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const course = parseCourse({ type: 'FeatureCollection', features: made.value.features }, 'walked');
  if (!course.ok) throw new Error(JSON.stringify(course.problems));
  return describeHole(buildHoleMap(course.value, course.value.holes[0]!));
}
const problems = (entry: Entry): readonly Problem[] => {
  const made = walk(entry);
  return made.ok ? [] : made.problems;
};
/** The numbers are those put in: no other source is needed. A centimetre, for the file keeps tenths of a millimetre. */
const near = (got: number | null | undefined, want: number, tolerance = 0.01) =>
  expect(Math.abs((got ?? Number.NaN) - want), `${got} is not ${want}`).toBeLessThanOrEqual(tolerance);

describe('a walked hole gives its numbers back', () => {
  it('length, direction, bends and rise', () => {
    const report = described({ length: 140, bearing_deg: 75, rise: -6, bends: [{ at: 60, turn_deg: -40 }] });
    near(report.playLength_m, 140);
    near(report.rise_m, -6);
    // By hand: two legs of 60 and 80 m with 140° between them, law of cosines.
    near(report.length_m, Math.sqrt(60 ** 2 + 80 ** 2 - 2 * 60 * 80 * Math.cos((140 * Math.PI) / 180)));
    expect(report.bends).toHaveLength(1);
    near(report.bends[0]!.station_m, 60);
    near(report.bends[0]!.angle_deg, -40);
    expect(report.parSource).toBe('derived');
  });

  it('in paces and feet', () => {
    const report = described({
      length: 120,
      distances: { unit: 'paces', pace_m: 0.75 },
      sizes: 'ft',
      ceilings: [{ at: 40, clearance: 10 }],
    });
    near(report.playLength_m, 90); // 120 × 0.75 by hand
    near(report.ceilings[0]!.clearance_m, 3.048); // 10 ft, exact: NIST SP 811 B.8
    near((report.ceilings[0]!.from_m + report.ceilings[0]!.to_m) / 2, 30);
    near(described({ length: 300, distances: { unit: 'ft' } }).playLength_m, 91.44); // 300 × 0.3048 by hand
  });

  it('the lowest branch and a gap, round a bend', () => {
    const report = described({
      bends: [{ at: 50, turn_deg: 30 }],
      ceilings: [{ at: 38, clearance: 3, deep: 4, top: 7 }],
      gaps: [{ at: 62, width: 3.4, low: 0.5, high: 4 }],
    });
    expect(report.ceilings).toHaveLength(1);
    const [ceiling] = report.ceilings;
    near(ceiling!.from_m, 36);
    near(ceiling!.to_m, 40);
    near(ceiling!.clearance_m, 3);
    expect(report.gaps).toHaveLength(1);
    const [gap] = report.gaps;
    near(gap!.station_m, 62);
    near(gap!.width_m, 3.4);
    near(gap!.low_m, 0.5);
    near(gap!.high_m, 4);
    expect(gap!.windowWidth_deg).toBeGreaterThan(1);
  });

  it('water and out-of-bounds beside, across and beyond', () => {
    const report = described({
      bends: [{ at: 40, turn_deg: -25 }],
      out: [
        { what: 'water', side: 'left', from: 20, to: 70, away: 6 },
        { what: 'outOfBounds', side: 'right', from: 10, to: 35, away: 9 },
        { what: 'outOfBounds', side: 'beyond', away: 7 },
      ],
    });
    const of = (side: string) => report.outOfBounds.find(entry => entry.side === side)!;
    near(of('left').closest_m, 6, 0.02);
    near(of('left').from_m, 20, 0.51); // found by half metres
    near(of('left').to_m, 70, 0.51);
    expect(of('left').what).toContain('water');
    near(of('right').closest_m, 9, 0.02);
    near(of('right').from_m, 10, 0.51);
    near(of('right').to_m, 35, 0.51);
    near(of('beyond').closest_m, 7, 0.02);
    const creek = described({ out: [{ what: 'water', side: 'across', from: 44, to: 49 }] });
    expect(creek.outOfBounds.map(({ side }) => side)).toEqual(['across']);
    near(creek.outOfBounds[0]!.from_m, 44);
    near(creek.outOfBounds[0]!.to_m, 49);
  });

  it('trees beside the line narrow it', () => {
    const tree = { at: 30, aside: 4, height: 9, crown: 2, branches: 1 } as const;
    const report = described({
      trees: [
        { ...tree, side: 'left' },
        { ...tree, side: 'right' },
      ],
    });
    near(report.narrowest?.station_m, 30, 1.6); // crowns of 1 m radius, staggered by at most 1.5 m
    near(report.narrowest?.width_m, 6, 0.05); // 2 × (4 − 1) by hand
  });

  it('whatever they are', () => {
    const metres = (least: number, most: number) => fc.integer({ min: least, max: most });
    const entry = fc.record({
      length: metres(40, 300),
      bearing_deg: metres(0, 360),
      turn_deg: metres(-60, 60),
      share: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
      clearance: metres(1, 8),
      width: metres(2, 9),
      away: metres(1, 12),
      side: fc.constantFrom('left', 'right'),
      isPlaced: fc.boolean(),
    });
    fc.assert(
      fc.property(entry, ({ length, bearing_deg, turn_deg, share, clearance, width, away, side, isPlaced }) => {
        const bend = Math.round(length * share);
        const report = described(
          {
            length,
            bearing_deg,
            bends: [{ at: bend, turn_deg }],
            ceilings: [{ at: bend / 2, clearance }],
            gaps: [{ at: bend + 3, width }],
            out: [{ what: 'outOfBounds', side, from: 2, to: bend - 1, away }],
          },
          isPlaced ? START : null,
        );
        near(report.playLength_m, length);
        if (Math.abs(turn_deg) >= 3) near(report.bends[0]!.angle_deg, turn_deg);
        near(report.ceilings[0]!.clearance_m, clearance);
        near((report.ceilings[0]!.from_m + report.ceilings[0]!.to_m) / 2, bend / 2);
        near(report.gaps[0]!.width_m, width);
        near(report.gaps[0]!.station_m, bend + 3);
        // An edge on the inside of the bend may come nearer to the second leg.
        const inside = turn_deg < 0 === (side === 'left');
        const { closest_m } = report.outOfBounds.find(entry => entry.side === side)!;
        if (inside) expect(closest_m).toBeLessThanOrEqual(away + 0.02);
        else near(closest_m, away, 0.02);
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe('a walked hole without a place', () => {
  it('says so, on the line and in the course', () => {
    const made = walk({}, null);
    if (!made.ok) throw new Error('unreachable');
    expect(made.value.features[0]!.properties).toMatchObject({ placed: 'no', source: 'taped' });
    const course = parseCourse({ type: 'FeatureCollection', features: made.value.features }, 'walked');
    expect(course.ok && course.value.assumptions.map(({ message }) => message)).toContain(
      'hole 4 is not placed on the map (placed=no): its own lengths and directions hold, where it lies does not',
    );
    expect(described({}).assumptions.join()).not.toContain('placed');
  });
});

describe('numbers that do not fit together', () => {
  it.each<[Entry, string]>([
    [{ length: 2000 }, 'length: the hole would be 2000.0 m long: expected 5 to 1500 m; check the number and its unit'],
    [
      { bends: [{ at: 100, turn_deg: 20 }] },
      'bends[0].at: a bend lies between the tee and the basket: between 0 and 100',
    ],
    [
      {
        bends: [
          { at: 60, turn_deg: 20 },
          { at: 40, turn_deg: 20 },
        ],
      },
      'bends[1].at: comes before the bend at 60: list bends from the tee on',
    ],
    [
      { ceilings: [{ at: 120, clearance: 3 }] },
      'ceilings[0].at: 120 lies off the hole: it is 100 long, counted from the tee',
    ],
    [
      { ceilings: [{ at: 20, clearance: 3, top: 2 }] },
      'ceilings[0].top: 2 is not above 3: the top lies over the free height',
    ],
    [{ gaps: [{ at: 20, width: 0.1 }] }, 'gaps[0].width: 0.1 m is not believable: expected 0.21 to 100 m'],
    [
      { out: [{ what: 'water', side: 'left', from: 3, to: 9 }] },
      'out[0].away: is missing: how far from the line of play its edge runs',
    ],
    [{ out: [{ what: 'water', side: 'beyond' }] }, 'out[0].away: is missing: how far behind the basket it begins'],
    [
      { bends: [{ at: 20, turn_deg: 120 }], out: [{ what: 'water', side: 'right', from: 5, to: 40, away: 20 }] },
      'out[0].away: the inside of the bend has no room for an edge 20 from the line: end it before the bend, or bring it nearer',
    ],
  ])('%# are named', (entry, message) => {
    expect(problems(entry).map(({ path, message }) => `${path}: ${message}`)).toEqual([message]);
  });
});
