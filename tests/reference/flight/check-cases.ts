import { expect } from 'vitest';
import { SYNTHETIC_DISCS } from './coefficients.ts';
import { type ReferenceRelease, spinFromRpm } from './release.ts';

const release = (change: Partial<ReferenceRelease> & { rpm: number }): ReferenceRelease => {
  const { rpm, ...rest } = change;
  const throwOf = { speed_mps: 20, launch_deg: 8, nose_deg: 0, hyzer_deg: 5, azimuth_deg: 0, height_m: 1.2 };
  return { ...throwOf, spin_radps: -spinFromRpm(rpm), ...rest };
};

/** The four code-check throws: an invented disc and a right-hand backhand each. [S] round numbers. */
export const CASES = {
  A: { disc: SYNTHETIC_DISCS.P, release: release({ speed_mps: 18, rpm: 800 }) },
  B: { disc: SYNTHETIC_DISCS.M, release: release({ speed_mps: 22, rpm: 950 }) },
  C: { disc: SYNTHETIC_DISCS.F, release: release({ speed_mps: 25, launch_deg: 9, rpm: 1050 }) },
  D: { disc: SYNTHETIC_DISCS.X, release: release({ speed_mps: 27, launch_deg: 10, hyzer_deg: 10, rpm: 1150 }) },
} as const;
export type Case = keyof typeof CASES;

// step errors below 1e-7 m, see the step size test
export const FULL_STEP_S = 0.004;
export const RED_STEP_S = 0.01;

/** Every number of `got` lies within `tolerance` of its fellow in `want`, either way. */
export function expectNear(got: readonly number[], want: readonly number[], tolerance: number): void {
  expect(got).toHaveLength(want.length);
  for (const [index, value] of want.entries()) {
    expect(Math.abs(got[index]! - value), `value ${index}: got ${got[index]}, want ${value}`).toBeLessThanOrEqual(
      tolerance,
    );
  }
}
