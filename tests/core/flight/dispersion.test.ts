import { describe, expect, it } from 'vitest';
import { windProfile } from '../../../core/air/wind-profile.ts';
import { discModel } from '../../../core/flight/disc-model.ts';
import {
  type Cubature,
  DEGREE_FIVE,
  farthestLaunch_deg,
  restMoments,
  SIGMA_POINTS,
  TYPICAL_SCATTER,
} from '../../../core/flight/dispersion.ts';
import { createFlier, LANDING } from '../../../core/flight/flier.ts';
import { createFlightBatch } from '../../../core/flight/flight-batch.ts';
import { groundPlay, SURFACE_FRICTION } from '../../../core/flight/ground-play.ts';
import { normalSamples, SAMPLE_DIMENSIONS } from '../../../core/flight/normal-samples.ts';

/** E[x^n] of a standard normal: 0 when n is odd, else (n − 1)!! (textbook moments). */
const momentOf = (n: number): number => (n % 2 === 1 ? 0 : n <= 0 ? 1 : (n - 1) * momentOf(n - 2));

/** All powers of five variables with a sum of at most `degree`. */
function powersUpTo(degree: number, variables = 5): number[][] {
  if (variables === 0) return [[]];
  return Array.from({ length: degree + 1 }, (_, n) =>
    powersUpTo(degree - n, variables - 1).map(rest => [n, ...rest]),
  ).flat();
}
const integral = (rule: Cubature, powers: readonly number[]) =>
  rule.points.reduce((sum, p, i) => sum + rule.weights[i] * powers.reduce((v, n, d) => v * p[d] ** n, 1), 0);

describe.each([
  { name: 'ten sigma points', rule: SIGMA_POINTS, degree: 3, points: 10 },
  { name: 'the degree-5 rule', rule: DEGREE_FIVE, degree: 5, points: 51 },
])('$name', ({ rule, degree, points }) => {
  it(`gives every moment of five standard normals up to degree ${degree} (E[x²] = 1, E[x⁴] = 3, E[x²y²] = 1 …)`, () => {
    expect(rule.points).toHaveLength(points);
    const all = powersUpTo(degree);
    // [C] C(5 + degree, 5) monomials: 56 and 252
    expect(all).toHaveLength(degree === 3 ? 56 : 252);
    for (const powers of all) {
      const want = powers.reduce((v, n) => v * momentOf(n), 1);
      expect(Math.abs(integral(rule, powers) - want)).toBeLessThan(1e-12);
    }
  });
});

describe('moments of where a throw rests', () => {
  const batch = createFlightBatch();
  const flier = createFlier();
  const scatter = TYPICAL_SCATTER;
  /** Two methods against each other: the cubature, and the flights of 4,096 scattered releases. */
  function both(number: number, fade: number, speed_mps: number, windFrom_deg: number) {
    const model = discModel({ speed: number, glide: 4.5, turn: -0.8, fade });
    const radius_m = model.diameter_m / 2;
    const spinPerSpeed = -0.46 / radius_m;
    const wind = (windFrom_deg * Math.PI) / 180;
    for (const each of [batch, flier]) {
      each.setDisc(model);
      each.setAir(1.2, -4 * Math.cos(wind), 4 * Math.sin(wind), windProfile('open'));
      each.setPlane(0, 0, 0);
      each.setStep(0.08);
    }
    const launch_deg = farthestLaunch_deg(batch, radius_m, 'turf', { speed_mps, hyzer_deg: 0, spinPerSpeed }, scatter);
    const release = { speed_mps, hyzer_deg: 0, spinPerSpeed, launch_deg };
    const moments = restMoments(batch, radius_m, 'turf', release, scatter, DEGREE_FIVE);
    const rows = 4096;
    const normals = normalSamples(rows, 41);
    const play = new Float64Array(2);
    const sums = { x: 0, y: 0, xx: 0, yy: 0 };
    for (let i = 0; i < rows; i++) {
      const z = (d: number) => normals[i * SAMPLE_DIMENSIONS + d];
      const speed = speed_mps * (1 + scatter.speed * z(0));
      flier.fly(
        speed,
        scatter.azimuth_deg * z(1),
        launch_deg + scatter.launch_deg * z(3),
        scatter.nose_deg * z(4),
        scatter.hyzer_deg * z(2),
        spinPerSpeed * speed,
        1.2,
      );
      groundPlay(flier.landing, radius_m, SURFACE_FRICTION.turf, 0, 0, play);
      const x = flier.landing[LANDING.x] + play[0];
      const y = flier.landing[LANDING.y] + play[1];
      sums.x += x / rows;
      sums.y += y / rows;
      sums.xx += (x * x) / rows;
      sums.yy += (y * y) / rows;
    }
    const sampled = {
      along_m: sums.x,
      left_m: sums.y,
      alongSd_m: Math.sqrt(sums.xx - sums.x ** 2),
      leftSd_m: Math.sqrt(sums.yy - sums.y ** 2),
    };
    return { moments, sampled };
  }

  it.each([
    { number: 2, fade: 1, speed_mps: 18, windFrom_deg: 0 },
    { number: 5, fade: 1.5, speed_mps: 22, windFrom_deg: 90 },
    { number: 5, fade: 3, speed_mps: 25, windFrom_deg: 200 },
    { number: 9, fade: 2, speed_mps: 25, windFrom_deg: 300 },
  ])(
    'agree with 4,096 sampled flights: speed $number at $speed_mps m/s',
    ({ number, fade, speed_mps, windFrom_deg }) => {
      const { moments, sampled } = both(number, fade, speed_mps, windFrom_deg);
      // regression: means measured within 0.12 m, spreads within 2.9 % of the sample (side wind on a midrange the worst)
      expect(Math.abs(moments.along_m - sampled.along_m)).toBeLessThan(0.16);
      expect(Math.abs(moments.left_m - sampled.left_m)).toBeLessThan(0.16);
      expect(Math.abs(moments.alongSd_m / sampled.alongSd_m - 1)).toBeLessThan(0.04);
      expect(Math.abs(moments.leftSd_m / sampled.leftSd_m - 1)).toBeLessThan(0.04);
    },
  );
});
