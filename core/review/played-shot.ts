import { specialOf } from '../player/fitted-player.ts';
import type { Candidate, Choice, Table } from '../strategy/choose-shot.ts';
import { isSpecialShape } from '../strategy/flown-as.ts';
import type { Lie } from '../strategy/march.ts';
import { shotOutcome } from '../strategy/shot-outcome.ts';
import type { ShotSpec } from '../strategy/shots.ts';
import { addPath, expectedOf, resetThrowValue, type ThrowValue } from '../strategy/throw-value.ts';
import { valueAt } from '../strategy/value-field.ts';
import type { RoundThrow } from './round-file.ts';

/** How much of a throw was written down: the whole shot, its line in part, only the disc. */
type Known = 'shot' | 'line' | 'disc';
export type PlayedShot = Readonly<{ candidate: Candidate; known: Known }>;

/** Rows of the answer samples an answer rests on. */
export type Rows = Readonly<{ first: number; count: number }>;

const DEGREE = Math.PI / 180;
const AIM_REACH_DEG = 48;
const AIM_STEP_DEG = 6;
/** Lines and aims marched with stored paths, then flown exactly, then refined. */
const SHORT = 24;
const REFINED = 4;
const ROWS = 8;

/** A shot the player could have meant, and what may still be changed about it. */
type Meant = Readonly<{ shot: ShotSpec; aim_deg: number }>;

/**
 * What a written throw comes to from its lie, on the answer samples in `rows`. What was not written is taken at its best, so the
 * cost of choosing it is a lower bound.
 * @param choice - the answer to the same lie; its shots are among those that may have been meant
 * @returns undefined when the plan has no such throw: a disc it does not know from that hand, a roller or an overhead
 *   throw that the player has not measured often enough
 */
export function playedShot(table: Table, lie: Lie, t: RoundThrow, choice: Choice, rows: Rows): PlayedShot | undefined {
  const { discId, hand = 'backhand', shape } = t;
  if (discId === undefined || shape === 'putt') return undefined;
  const throwIndex = table.player.throws.findIndex(own => own.discId === discId && own.hand === hand);
  if (throwIndex === -1) return undefined;
  if (shape !== undefined && isSpecialShape(shape) && specialOf(table.player.throws[throwIndex]!, shape) === null)
    return undefined;
  const answered = ({ shot, aim_deg }: Meant) => answer(table, lie, shot, aim_deg, rows);
  const whole = wholeShot(t, throwIndex);
  if (whole !== null) return { candidate: answered(whole), known: 'shot' };
  const known = isAnyOfLineKnown(t) ? 'line' : 'disc';
  const own = bestLines(table, lie, t, throwIndex);
  const asked = choice.finalists.filter(
    ({ shot, aim_deg }) => shot.throwIndex === throwIndex && fits(t, shot, aim_deg),
  );
  const meant = [...own, ...asked.slice(0, REFINED)].map(answered);
  if (meant.length === 0) return undefined;
  const best = meant.reduce((a, b) => (b.outcome.expectedThrows < a.outcome.expectedThrows ? b : a));
  return { candidate: best, known };
}

/** A shot answered on some of the plan's answer samples. */
export function answer(table: Table, lie: Lie, shot: ShotSpec, aim_deg: number, rows: Rows): Candidate {
  const { thrower, field, answerNormals, world } = table;
  const replay = valueAt(field, lie.east_m, lie.north_m);
  const aim = wrapped_deg(aim_deg);
  return {
    shot,
    aim_deg: aim,
    outcome: shotOutcome(thrower, field, shot, lie, aim, answerNormals, rows.first, rows.count, world.dropZone, replay),
  };
}

function wholeShot(t: RoundThrow, throwIndex: number): Meant | null {
  const { shape, power, launch_deg, hyzer_deg, aimBearing_deg, height = 'standard' } = t;
  if (shape === undefined || shape === 'putt') return null;
  if (power === undefined || launch_deg === undefined || hyzer_deg === undefined || aimBearing_deg === undefined)
    return null;
  return { shot: { throwIndex, shape, hyzer_deg, launch_deg, height, power }, aim_deg: aimBearing_deg };
}

const isAnyOfLineKnown = (t: RoundThrow) =>
  [t.shape, t.height, t.power, t.aimBearing_deg, t.hyzer_deg, t.launch_deg].some(part => part !== undefined);

/** The best few shots of the disc that agree with what was written, chosen on the search samples. */
function bestLines(table: Table, lie: Lie, t: RoundThrow, throwIndex: number): Meant[] {
  const { bins, marcher, field } = table;
  const { shots, samples } = bins.library;
  const toBasket = Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) / DEGREE;
  const steps = AIM_REACH_DEG / AIM_STEP_DEG;
  const aims =
    t.aimBearing_deg === undefined
      ? Array.from({ length: 2 * steps + 1 }, (_, i) => toBasket + (i - steps) * AIM_STEP_DEG)
      : [t.aimBearing_deg];
  const lines = nearestPower(
    shots.flatMap((shot, index) => (shot.throwIndex === throwIndex && fitsLine(t, shot) ? [{ shot, index }] : [])),
    t.power,
  );
  const running: ThrowValue = { paths: 0, sum: 0, replay: 0 };
  const marched = lines
    .flatMap(({ shot, index }) =>
      aims.map(aim_deg => {
        resetThrowValue(running);
        marcher.add(index, 0, samples, lie, aim_deg, field, running);
        return { shot: withWritten(t, shot), aim_deg, score: expectedOf(running) };
      }),
    )
    .sort((a, b) => a.score - b.score)
    .slice(0, SHORT);
  return flownBest(table, lie, marched, REFINED)
    .map(meant => refined(table, lie, t, meant))
    .sort((a, b) => a.score - b.score);
}

type Scored = Meant & Readonly<{ score: number }>;

function flownBest(table: Table, lie: Lie, meant: readonly Meant[], most: number): Scored[] {
  return meant
    .map(one => ({ ...one, score: flown(table, lie, one, ROWS) }))
    .sort((a, b) => a.score - b.score)
    .slice(0, most);
}

/** Turns the aim, and power and launch where they were not written, as long as it gets better. */
function refined(table: Table, lie: Lie, t: RoundThrow, meant: Meant): Scored {
  let best: Scored = { ...meant, score: flown(table, lie, meant, 2 * ROWS) };
  for (const size of [1, 0.5]) {
    for (const change of neighbours(best, t, size)) {
      const score = flown(table, lie, change, 2 * ROWS);
      if (score < best.score) best = { ...change, score };
    }
  }
  return best;
}

function neighbours({ shot, aim_deg }: Meant, t: RoundThrow, size: number): Meant[] {
  const aims = t.aimBearing_deg === undefined ? [-3, -1.5, 1.5, 3] : [];
  const powers = t.power === undefined ? [-0.04, 0.04] : [];
  const launches = t.launch_deg === undefined ? [-2, 2] : [];
  return [
    ...aims.map(turn => ({ shot, aim_deg: aim_deg + turn * size })),
    ...powers
      .map(change => shot.power + change * size)
      .filter(power => power > 0.2 && power <= 1)
      .map(power => ({ shot: { ...shot, power }, aim_deg })),
    ...launches
      .map(change => shot.launch_deg + change * size)
      .filter(launch_deg => launch_deg >= 0 && launch_deg < 30)
      .map(launch_deg => ({ shot: { ...shot, launch_deg }, aim_deg })),
  ];
}

/** Exact flights on the samples that choose, never on those that answer. */
function flown({ thrower, field, world, searchNormals }: Table, lie: Lie, { shot, aim_deg }: Meant, rows: number) {
  const value: ThrowValue = { paths: 0, sum: 0, replay: 0, lieValue: valueAt(field, lie.east_m, lie.north_m) };
  const [dropX, dropY] = world.dropZone ?? [Number.NaN, Number.NaN];
  thrower.prepare(shot, lie, aim_deg);
  thrower.throwRows(searchNormals, 0, rows, () => addPath(value, thrower.ends, field, dropX, dropY, 0));
  return expectedOf(value);
}

const fitsLine = (t: RoundThrow, shot: ShotSpec) =>
  (t.shape === undefined || t.shape === shot.shape) && (t.height === undefined || t.height === shot.height);

const NEAR_POWER = 0.06;
const NEAR_AIM_DEG = 3;
const NEAR_ANGLE_DEG = 3;

/** True when a shot the plan found agrees with everything that was written. */
function fits(t: RoundThrow, shot: ShotSpec, aim_deg: number): boolean {
  const near = (written: number | undefined, own: number, within: number) =>
    written === undefined || Math.abs(written - own) <= within;
  return (
    fitsLine(t, shot) &&
    near(t.power, shot.power, NEAR_POWER) &&
    near(t.hyzer_deg, shot.hyzer_deg, NEAR_ANGLE_DEG) &&
    near(t.launch_deg, shot.launch_deg, NEAR_ANGLE_DEG) &&
    (t.aimBearing_deg === undefined || Math.abs(turn_deg(t.aimBearing_deg, aim_deg)) <= NEAR_AIM_DEG)
  );
}

function withWritten(t: RoundThrow, shot: ShotSpec): ShotSpec {
  return {
    ...shot,
    ...(t.power !== undefined && { power: t.power }),
    ...(t.hyzer_deg !== undefined && { hyzer_deg: t.hyzer_deg }),
    ...(t.launch_deg !== undefined && { launch_deg: t.launch_deg }),
  };
}

/** Of lines that differ in power only, those stored nearest the written one. */
function nearestPower<L extends Readonly<{ shot: ShotSpec }>>(lines: readonly L[], power: number | undefined): L[] {
  if (power === undefined) return [...lines];
  const lineOf = ({ shot }: L) => `${shot.shape} ${shot.height} ${shot.hyzer_deg}`;
  const nearest = new Map<string, L>();
  for (const line of lines) {
    const known = nearest.get(lineOf(line));
    if (known === undefined || Math.abs(line.shot.power - power) < Math.abs(known.shot.power - power))
      nearest.set(lineOf(line), line);
  }
  return [...nearest.values()];
}

const wrapped_deg = (bearing_deg: number) => ((bearing_deg % 360) + 360) % 360;
const turn_deg = (from_deg: number, to_deg: number) => wrapped_deg(to_deg - from_deg + 180) - 180;
