import { describe, it } from 'vitest';
import { CASES, type Case, expectNear, RED_STEP_S } from './check-cases.ts';
import { heavierBy } from './coefficients.ts';
import { flyFastSpin } from './fast-spin-plain.ts';
import { type ReferenceRelease, releaseState } from './release.ts';
import { LEVEL_GROUND, STILL_AIR, type Surroundings } from './surroundings.ts';
import { vector } from './vector.ts';

// Every expected number: [C] computed once for invented discs by two independent formulations (world-frame momentum;
// body-frame Euler equations with a quaternion), own derivation.

const windAlong = (x_mps: number, y_mps: number): Surroundings => ({
  ...STILL_AIR,
  wind_mps: () => vector(x_mps, y_mps, 0),
});
const inDensity = (density_kgpm3: number): Surroundings => ({ ...STILL_AIR, density_kgpm3 });

/** Logarithmic wind law over open ground. Source: WMO-No. 8, Part I, chapter 5 (z0 = 0.03 m: open terrain). */
const logLaw = (at10m_mps: number): Surroundings => ({
  ...STILL_AIR,
  wind_mps: z => vector(z <= 0.03 ? 0 : (at10m_mps * Math.log(z / 0.03)) / Math.log(10 / 0.03), 0, 0),
});

type Thrown = { disc: (typeof CASES)[Case]['disc']; release: ReferenceRelease };
type Change = Readonly<{ name: string; air?: Surroundings; change?: (thrown: Thrown) => Thrown }>;
const released = (change: (r: ReferenceRelease) => Partial<ReferenceRelease>) => (thrown: Thrown) => ({
  ...thrown,
  release: { ...thrown.release, ...change(thrown.release) },
});

/** Landing x, y, apex to two printed digits; null where nothing was printed. */
const variations: readonly (readonly [Change, B: readonly (number | null)[], C: readonly (number | null)[]])[] = [
  [{ name: 'none' }, [61.76, 2.93, 4.21], [82.08, -4.95, 6.04]],
  [{ name: 'uniform headwind 2', air: windAlong(-2, 0) }, [60.03, -2, 4.91], [77.52, -18.91, 6.53]],
  [{ name: 'uniform headwind 5', air: windAlong(-5, 0) }, [52.12, -16.67, 5.63], [59.61, -22.54, 6.89]],
  [{ name: 'uniform tailwind 2', air: windAlong(2, 0) }, [60.98, 4.64, 3.46], [82.53, 2.59, 5.3]],
  [{ name: 'uniform tailwind 5', air: windAlong(5, 0) }, [55.09, 3.97, 2.48], [78.74, 5.88, 3.98]],
  [{ name: 'log-law headwind 5', air: logLaw(-5) }, [55.08, -12.03, 5.57], [63.16, -23.86, 6.94]],
  [{ name: 'log-law tailwind 5', air: logLaw(5) }, [58.56, 4.71, 2.85], [80.68, 5.45, 4.37]],
  [{ name: 'crosswind 5 to the right', air: windAlong(0, -5) }, [62.81, -8.45, 3.73], [85.45, -21.51, 5.41]],
  [{ name: 'crosswind 5 to the left', air: windAlong(0, 5) }, [62.51, 12.92, 4.88], [80.27, 5.89, 6.65]],
  [{ name: 'density 1.05807', air: inDensity(1.05807) }, [62.23, 5.1, 3.96], [83.17, 2.24, 5.99]],
  [{ name: 'density 0.90912', air: inDensity(0.90912) }, [61.86, 6.15, 3.61], [83.71, 6.91, 5.71]],
  [{ name: 'density 1.2915', air: inDensity(1.2915) }, [61.42, 1.84, 4.28], [81.41, -8.3, 6.01]],
  [
    { name: 'spin × 0.8', change: released(r => ({ spin_radps: 0.8 * r.spin_radps })) },
    [61.7, 1.41, null],
    [82.13, -11.01, null],
  ],
  [
    { name: 'spin × 1.2', change: released(r => ({ spin_radps: 1.2 * r.spin_radps })) },
    [61.81, 3.87, null],
    [81.7, -1.38, null],
  ],
  [
    { name: 'mass 0.150', change: ({ disc, release }) => ({ disc: heavierBy(disc, 0.15 / disc.mass_kg), release }) },
    [60.41, -1.23, 4.37],
    [78.74, -15.42, 5.87],
  ],
  [
    { name: 'speed × 0.9', change: released(r => ({ speed_mps: 0.9 * r.speed_mps })) },
    [50.97, 5.05, null],
    [67.99, 4.65, null],
  ],
  [
    { name: 'speed × 1.1', change: released(r => ({ speed_mps: 1.1 * r.speed_mps })) },
    [72.41, -3.8, null],
    [89.34, -23.46, null],
  ],
  [{ name: 'nose −2°', change: released(() => ({ nose_deg: -2 })) }, [62.23, -0.63, null], [82.24, -11.21, null]],
  [{ name: 'nose +4°', change: released(() => ({ nose_deg: 4 })) }, [55.58, 9.25, null], [71.15, 7.36, null]],
  [{ name: 'hyzer 0', change: released(() => ({ hyzer_deg: 0 })) }, [null, -4.79, null], [null, -17.99, null]],
  [{ name: 'hyzer 10', change: released(() => ({ hyzer_deg: 10 })) }, [null, 8.67, null], [null, 6.3, null]],
  [{ name: 'hyzer 20', change: released(() => ({ hyzer_deg: 20 })) }, [null, 13.39, null], [null, 19.08, null]],
  [{ name: 'hyzer −10', change: released(() => ({ hyzer_deg: -10 })) }, [null, -13.29, null], [null, -16.92, null]],
];

describe('variations of cases B and C, RED landing x, y, apex', () => {
  // 0.006: half a unit of the last printed digit, and the rounding of numbers that end in 5
  it.each(variations)('$name: B %j, C %j', ({ air = STILL_AIR, change = thrown => thrown }, wantB, wantC) => {
    for (const [name, want] of [
      ['B', wantB],
      ['C', wantC],
    ] as const) {
      const { disc, release: thrown } = change(CASES[name]);
      const limits = { step_s: RED_STEP_S, until_s: 30, ground: LEVEL_GROUND };
      const { end, apex_m } = flyFastSpin(disc, air, releaseState(thrown), limits);
      const got = [end.state.position.x, end.state.position.y, apex_m];
      const printed = want.flatMap((value, index) => (value === null ? [] : [{ value, got: got[index]! }]));
      expectNear(
        printed.map(row => row.got),
        printed.map(row => row.value),
        0.006,
      );
    }
  });

  it.each([
    [3, -6.7],
    [-5, 5],
    [-10, 6.7],
  ])('case C landing %d m above the tee plays %d m longer', (height_m, longer_m) => {
    const landingX = (ground_m: number): number =>
      flyFastSpin(CASES.C.disc, STILL_AIR, releaseState(CASES.C.release), {
        step_s: RED_STEP_S,
        until_s: 30,
        ground: { height_m: ground_m, slopeX: 0, slopeY: 0 },
      }).end.state.position.x;
    expectNear([landingX(height_m) - landingX(0)], [longer_m], 0.05);
  });
});
