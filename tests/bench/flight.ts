import { cpus, loadavg } from 'node:os';
import fc from 'fast-check';
import { windRatioAt } from '../../core/air/wind-profile.ts';
import { createFlier, LANDING, LANDING_NUMBERS } from '../../core/flight/flier.ts';
import { createFlightBatch, MOST_FLIGHTS } from '../../core/flight/flight-batch.ts';
import { extremeFlight, flaws, flown } from '../core/flight/extreme-flight.ts';
import { fromDiscModel } from '../reference/flight/coefficients.ts';
import { flyFastSpin } from '../reference/flight/fast-spin-plain.ts';
import { type MixedThrow, mixedThrows } from '../reference/flight/mixed-throws.ts';
import { releaseState } from '../reference/flight/release.ts';
import { flyRigidBody } from '../reference/flight/rigid-body.ts';
import { STANDARD_GRAVITY_MPS2, type Surroundings } from '../reference/flight/surroundings.ts';
import { distance, scaled, type Vector, vector } from '../reference/flight/vector.ts';

/**
 * Production integrator against the plain object-based one on the same throws, in one process: speed, landing error, and a
 * count of non-finite results among extreme flights. `node tests/bench/flight.ts`, about a minute.
 */
const THROWS = mixedThrows(420, 11);
const RUNS = 7;
const PASSES = 20;
const PLAIN_STEP_S = 0.01;
const EXTREME_FLIGHTS = 100_000;
const LONGEST_S = 40;
const [BAR_FLIGHTS, BAR_RATIO, BAR_FLIGHT_S] = [25_000, 20, 4];

const flier = createFlier();
function flyProduction({ disc, release, air, ground }: MixedThrow): void {
  flier.setDisc(disc);
  flier.setAir(air.density_kgpm3, air.wind_mps.x, air.wind_mps.y, air.profile);
  flier.setPlane(ground.height_m, ground.slopeX, ground.slopeY);
  const { speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m } = release;
  if (!flier.fly(speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m))
    throw new Error('a throw never landed');
}

const batch = createFlightBatch();
/** A whole batch of the same throw, as plans fly many scattered ones of one disc. */
function flyBatch({ disc, release, air, ground }: MixedThrow): void {
  batch.setDisc(disc);
  batch.setAir(air.density_kgpm3, air.wind_mps.x, air.wind_mps.y, air.profile);
  batch.setPlane(ground.height_m, ground.slopeX, ground.slopeY);
  const { speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m } = release;
  for (let i = 0; i < MOST_FLIGHTS; i++)
    batch.release(i, speed_mps, azimuth_deg, launch_deg, nose_deg, hyzer_deg, spin_radps, height_m);
  batch.fly(MOST_FLIGHTS);
}

const surroundings = ({ air }: MixedThrow): Surroundings => ({
  density_kgpm3: air.density_kgpm3,
  gravity_mps2: STANDARD_GRAVITY_MPS2,
  wind_mps: height_m => scaled(air.wind_mps, windRatioAt(air.profile, height_m)),
});
const reference = (fly: typeof flyFastSpin | typeof flyRigidBody, thrown: MixedThrow, step_s: number): Vector => {
  const limits = { step_s, until_s: LONGEST_S, ground: thrown.ground };
  return fly(fromDiscModel(thrown.disc), surroundings(thrown), releaseState(thrown.release), limits).end.state.position;
};

function productionLandings(step_s: number): Vector[] {
  flier.setStep(step_s);
  return THROWS.map(thrown => {
    flyProduction(thrown);
    return vector(flier.landing[LANDING.x], flier.landing[LANDING.y], flier.landing[LANDING.z]);
  });
}

/**
 * Flights per second of processor time of each run; the first run warms up and is not counted. Processor time holds still
 * when the machine is shared; it includes this process's own compiler and garbage collector.
 */
function rates(flyAll: () => void, flights: number): number[] {
  return Array.from({ length: RUNS + 1 }, () => rate(flyAll, flights)).slice(1);
}
function rate(flyAll: () => void, flights: number): number {
  const started = process.cpuUsage();
  flyAll();
  const { user, system } = process.cpuUsage(started);
  return (1e6 * flights) / (user + system);
}
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const rounded = (value: number): string => Math.round(value).toLocaleString('en');
const spread = (values: readonly number[]): string =>
  `mean ${rounded(mean(values))}, min ${rounded(Math.min(...values))}, max ${rounded(Math.max(...values))}`;
const verdict = (isMet: boolean): string => (isMet ? 'met' : 'MISSED');
/** Landing errors in one line; the bars are optional. */
function errors(got: readonly Vector[], want: readonly Vector[], p95Bar_mm?: number, maxBar_mm?: number): string {
  const sorted = got.map((at, i) => 1000 * distance(at, want[i])).sort((a, b) => a - b);
  const [p95, max] = [sorted[Math.ceil(0.95 * sorted.length) - 1], sorted[sorted.length - 1]];
  const bars = [
    ...(p95Bar_mm === undefined ? [] : [`bar p95 ${p95Bar_mm} mm: ${verdict(p95 <= p95Bar_mm)}`]),
    ...(maxBar_mm === undefined ? [] : [`bar max ${maxBar_mm} mm: ${verdict(max <= maxBar_mm)}`]),
  ];
  return [`mean ${mean(sorted).toFixed(2)}, p95 ${p95.toFixed(2)}, max ${max.toFixed(2)} mm`, ...bars].join('; ');
}
const load = (): string =>
  loadavg()
    .map(value => value.toFixed(2))
    .join(' ');

console.log(`${new Date().toISOString().slice(0, 10)}, ${cpus().length} × ${cpus()[0].model}, node ${process.version}`);
console.log(`load average before: ${load()}`);

flier.setStep(0.05);
let seconds = 0;
for (const thrown of THROWS) {
  flyProduction(thrown);
  seconds += flier.time_s();
}
const meanFlight_s = seconds / THROWS.length;
console.log(
  `${THROWS.length} mixed throws (7 discs, 16–30 m/s, log-law wind to 8 m/s, slopes to 8 %), mean flight ${meanFlight_s.toFixed(2)} s; ` +
    `one warm-up run, then ${RUNS} runs`,
);

const plain = rates(() => {
  for (const thrown of THROWS) reference(flyFastSpin, thrown, PLAIN_STEP_S);
}, THROWS.length);
console.log(`plain RK4, objects, ${1000 * PLAIN_STEP_S} ms: ${spread(plain)} flights/s/core`);
for (const step_s of [0.05, 0.08]) {
  flier.setStep(step_s);
  const fast = rates(() => {
    for (let pass = 0; pass < PASSES; pass++) for (const thrown of THROWS) flyProduction(thrown);
  }, PASSES * THROWS.length);
  const comparable = (mean(fast) * meanFlight_s) / BAR_FLIGHT_S;
  const [ratio, worst] = [mean(fast) / mean(plain), Math.min(...fast) / Math.max(...plain)];
  console.log(
    `production RK4, ${1000 * step_s} ms: ${spread(fast)} flights/s/core (${rounded(comparable)} of ${BAR_FLIGHT_S} s); ` +
      `${ratio.toFixed(0)} × the plain one (slowest run against its fastest: ${worst.toFixed(0)} ×)`,
  );
  console.log(
    `  bar ${rounded(BAR_FLIGHTS)} flights/s/core of ${BAR_FLIGHT_S} s: ${verdict(comparable >= BAR_FLIGHTS)}; ` +
      `bar ${BAR_RATIO} ×: ${verdict(ratio >= BAR_RATIO)}`,
  );
}

for (const step_s of [0.05, 0.15]) {
  flier.setStep(step_s);
  batch.setStep(step_s);
  const singly: number[] = [];
  const batched: number[] = [];
  // in turn, so that both meet the same load
  for (let run = 0; run <= RUNS; run++) {
    const one = rate(() => {
      for (let pass = 0; pass < PASSES; pass++) for (const thrown of THROWS) flyProduction(thrown);
    }, PASSES * THROWS.length);
    const many = rate(() => {
      for (const thrown of THROWS) flyBatch(thrown);
    }, MOST_FLIGHTS * THROWS.length);
    if (run > 0) {
      singly.push(one);
      batched.push(many);
    }
  }
  const landing = new Float64Array(LANDING_NUMBERS);
  const apart = THROWS.map(thrown => {
    flyProduction(thrown);
    flyBatch(thrown);
    batch.landing(0, landing);
    return (
      1000 * Math.hypot(landing[LANDING.x] - flier.landing[LANDING.x], landing[LANDING.y] - flier.landing[LANDING.y])
    );
  });
  console.log(
    `batches of ${MOST_FLIGHTS}, four abreast, ${1000 * step_s} ms: ${spread(batched)} flights/s/core; ` +
      `${(mean(batched) / mean(singly)).toFixed(2)} × one by one (${spread(singly)}); ` +
      `landings at most ${Math.max(...apart).toFixed(3)} mm apart`,
  );
}

const exact = productionLandings(0.0005);
const STEP_BARS_MM: readonly (readonly [step_s: number, p95?: number, max?: number])[] = [
  [0.01],
  [0.05, 2, 10],
  [0.08],
];
for (const [step_s, p95, max] of STEP_BARS_MM)
  console.log(
    `landing error of ${1000 * step_s} ms steps against 0.5 ms: ${errors(productionLandings(step_s), exact, p95, max)}`,
  );
const at50 = productionLandings(0.05);
const atPlain = THROWS.map(thrown => reference(flyFastSpin, thrown, PLAIN_STEP_S));
console.log(`50 ms against the plain RK4 (which has no guards): ${errors(at50, atPlain)}`);
const rigid = THROWS.map(thrown => reference(flyRigidBody, thrown, 0.004));
console.log(`50 ms against the full rigid body at 4 ms, thrown without wobble: ${errors(at50, rigid, 100)}`);

const extremes = fc.sample(extremeFlight, { numRuns: EXTREME_FLIGHTS, seed: 2024 });
let flawed = 0;
let aloft = 0;
for (const flight of extremes) {
  const result = flown(flight);
  if (!result.landed) aloft++;
  if (flaws(result).length > 0) flawed++;
}
console.log(
  `${rounded(EXTREME_FLIGHTS)} extreme flights: ${flawed} with a non-finite or impossible number, ${aloft} cut off in the air after ${LONGEST_S} s`,
);
console.log(`load average after: ${load()}`);
if (flawed > 0) process.exitCode = 1;
