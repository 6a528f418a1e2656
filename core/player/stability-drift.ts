import { SIGMA_POINTS, TYPICAL_SCATTER } from '../flight/dispersion.ts';
import type { FlightBatch } from '../flight/flight-batch.ts';
import { civilDay } from './civil-day.ts';
import { chooseLaunch, type DiscFit, groupMoments, startFit } from './disc-fit.ts';
import { fieldRecords } from './fieldwork.ts';
import type { FittedPlayer, FittedThrow } from './fitted-player.ts';
import type { PlayerFile } from './player-file.ts';
import { differenceStep, moved } from './solve-disc.ts';
import { PLAIN_RULER, weighThrows } from './weigh-throws.ts';

/** A disc's stability as one session shows it. */
type SessionStability = Readonly<{
  date: string;
  /** Days after the first session of the list. */
  day: number;
  /** Throws with a measured side, outliers by their weight. */
  throws: number;
  /** Turn units, positive more stable than the numbers say; `sd` one standard deviation, day-to-day spread not counted. */
  stability: number;
  sd: number;
}>;

/** How a disc's stability moved over the sessions; discs wear, and mostly lose some. */
export type StabilityDrift = Readonly<{
  sessions: readonly SessionStability[];
  /** Turn units from the first to the last session along a straight line, with its 90 % interval. */
  change: number;
  low: number;
  high: number;
  days: number;
  verdict: 'less stable' | 'more stable' | 'no change shown';
}>;

const FEWEST_SIDED = 3;
const FEWEST_DAYS = 7;
const NORMAL_90 = 1.6448536269514722; // Φ⁻¹(0.95)
/** A wind misread or an aim off for a day looks like a change of stability of about this size, in turn units (assumed). */
const DAY_SPREAD = 0.3;
const FEWEST_FOR_SPREAD = 4;

/**
 * What later sessions say of a disc's stability against earlier ones: each session's sideways finish in its own wind, flat throws at
 * full power only (a tilt or a share of power misjudged looks like a change), the release speed and scatter held at the fitted ones. Sessions without a date or with fewer than three sides are left out.
 * @param flier - its disc, air and ground are set here
 * @returns null when fewer than two such sessions a week apart are there
 */
export function stabilityDrift(file: PlayerFile, player: FittedPlayer, t: FittedThrow, flier: FlightBatch) {
  flier.setStep(0.12);
  const dated = file.sessions.flatMap(session => {
    const day = session.date === undefined ? null : civilDay(session.date);
    if (day === null) return [];
    const throws = session.throws.filter(
      x => x.discId === t.discId && x.hand === t.hand && x.shape === 'flat' && x.power === 'full',
    );
    if (throws.filter(x => x.side_m !== undefined).length < FEWEST_SIDED) return [];
    const records = fieldRecords({ ...file, sessions: [{ ...session, throws }] });
    const record = records.find(r => r.disc.id === t.discId && r.hand === t.hand);
    if (record === undefined || record.groups.length === 0) return [];
    const shown = sessionStability(startFit(record, player.handedness), t, flier);
    return shown === null ? [] : [{ date: session.date!, day, ...shown }];
  });
  dated.sort((a, b) => a.day - b.day);
  const [first, last] = [dated[0], dated.at(-1)];
  if (first === undefined || last === undefined || last.day - first.day < FEWEST_DAYS) return null;
  return driftOver(dated.map(s => ({ ...s, day: s.day - first.day })));
}

/** Stability under which the session's throws finish where they did, from all its groups together. */
function sessionStability(fit: DiscFit, t: FittedThrow, flier: FlightBatch) {
  fit.unknowns = {
    logSpeed: Math.log(t.releaseSpeed_mps),
    stability: t.stabilityOffset,
    logLongScatter: Math.log(t.scatter.speed / TYPICAL_SCATTER.speed),
    logSideScatter: Math.log(t.scatter.azimuth_deg / TYPICAL_SCATTER.azimuth_deg),
  };
  for (const at of fit.groups) {
    at.launch_deg = t.launch_deg;
    at.launch_deg = chooseLaunch(flier, fit, at, SIGMA_POINTS);
    at.moments = groupMoments(flier, fit, at, fit.unknowns, SIGMA_POINTS);
  }
  weighThrows(fit, PLAIN_RULER, { along: 1, left: 1 });
  let precision = 0;
  let pull = 0;
  let throws = 0;
  for (const at of fit.groups) {
    if (at.left_m === null) continue;
    const there = groupMoments(flier, fit, at, moved(fit.unknowns, 'stability'), SIGMA_POINTS);
    const slope = (there.left_m - at.moments.left_m) / differenceStep('stability');
    precision += slope ** 2 / at.leftVariance;
    pull += (slope * (at.left_m - at.moments.left_m)) / at.leftVariance;
    throws += at.weights.reduce((sum, weight, i) => sum + (at.group.throws[i]!.left_m === null ? 0 : weight), 0);
  }
  if (!(precision > 0)) return null;
  return { throws, stability: t.stabilityOffset + pull / precision, sd: Math.sqrt(1 / precision) };
}

/** Straight line through the sessions, each counted by its own doubt and the day-to-day spread. */
function driftOver(sessions: readonly SessionStability[]): StabilityDrift {
  const days = sessions.at(-1)!.day;
  const assumed = lineThrough(sessions, DAY_SPREAD ** 2);
  const excess = sessions.length < FEWEST_FOR_SPREAD ? 0 : assumed.misfit / (sessions.length - 2);
  // days that stray more than assumed widen the interval; a lucky line never narrows it
  const { slope, variance } = assumed;
  const change = slope * days;
  const half = NORMAL_90 * Math.sqrt(variance * Math.max(1, excess)) * days;
  const [low, high] = [change - half, change + half];
  const verdict = high < 0 ? 'less stable' : low > 0 ? 'more stable' : 'no change shown';
  return { sessions, change, low, high, days, verdict };
}

/** @returns slope per day with its variance, and the weighted sum of squares about the line */
function lineThrough(sessions: readonly SessionStability[], spreadVariance: number) {
  const weights = sessions.map(({ sd }) => 1 / (sd ** 2 + spreadVariance));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const meanDay = sessions.reduce((sum, s, i) => sum + weights[i]! * s.day, 0) / total;
  const mean = sessions.reduce((sum, s, i) => sum + weights[i]! * s.stability, 0) / total;
  let squares = 0;
  let products = 0;
  sessions.forEach((s, i) => {
    squares += weights[i]! * (s.day - meanDay) ** 2;
    products += weights[i]! * (s.day - meanDay) * (s.stability - mean);
  });
  const slope = products / squares;
  const misfit = sessions.reduce(
    (sum, s, i) => sum + weights[i]! * (s.stability - mean - slope * (s.day - meanDay)) ** 2,
    0,
  );
  return { slope, variance: 1 / squares, misfit };
}

/** What the drift says, in a sentence without its full stop. */
export function driftText({ change, low, high, days, sessions, verdict }: StabilityDrift): string {
  const numbers = `${signed(change)} turn units in ${days} days (90 %: ${signed(low)} to ${signed(high)}, ${sessions.length} sessions)`;
  const means =
    verdict === 'less stable'
      ? 'it has become less stable: wear, or another way of throwing it'
      : verdict === 'more stable'
        ? 'it has become more stable, which wear does not do: look for another cause (wind written down wrong, another grip)'
        : 'no change shown';
  return `${numbers}: ${means}`;
}

function signed(value: number): string {
  const size = Math.abs(value).toFixed(1);
  return Number(size) === 0 ? '0.0' : `${value < 0 ? '−' : '+'}${size}`;
}
