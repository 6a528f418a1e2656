import { SAMPLE_DIMENSIONS } from '../flight/normal-samples.ts';
import type { HoleMap, LocalPoint } from '../geometry/hole-map.ts';
import { FEWEST_SPECIAL_THROWS, specialOf } from '../player/fitted-player.ts';
import {
  type Candidate,
  type Choice,
  chooseShot,
  isTie,
  NEXT_EFFORT,
  pairedDifference,
  type Table,
  TEE_EFFORT,
} from '../strategy/choose-shot.ts';
import type { Lie } from '../strategy/march.ts';
import type { PlannedHole } from '../strategy/plan-hole.ts';
import { puttFrom } from '../strategy/putting-value.ts';
import { type ShotPlace, shotReport } from '../strategy/shot-report.ts';
import { distanceToBasket, isPutt, valueAt } from '../strategy/value-field.ts';
import { groundAt } from '../strategy/world.ts';
import { holeLies, type LieToLie } from './hole-lies.ts';
import { answer, type PlayedShot, playedShot, type Rows } from './played-shot.ts';
import { type HoleReview, NOISE_THROWS, type ThrowReview } from './review-report.ts';
import { isFinished, penaltyThrows, type RoundHole, type RoundThrow, scoreOf } from './round-file.ts';
import { sumOf } from './sum-of.ts';
import { CIRCLE_M, phaseOf } from './thrown.ts';

const DEGREE = Math.PI / 180;
const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };

type Estimate = Readonly<{ throws: number; standardError: number }>;
const HOLED: Estimate = { throws: 0, standardError: 0 };

/** What one lie was worth, and what the throw from it was meant to be worth. */
type JudgedLie = Readonly<{
  value: Estimate;
  /** Expected throws of what was thrown; null when it is not known. */
  chosen: Estimate | null;
  choiceCost: Estimate | null;
  choiceMeasured: number | null;
  known: ThrowReview['known'];
  best: Candidate | null;
  played: Candidate | null;
  notes: readonly string[];
}>;

/**
 * What every throw of a finished hole won or lost, and which part of that was the choice. One value of each lie is used as the
 * end of one throw and the start of the next, so the gains add up to the value of the tee minus the score, exactly.
 * @param planned - the hole as planned in the wind it is judged in
 * @throws {RangeError} when the hole is not holed out
 * @source strokes gained, Broadie 2012 (form); choice against execution: own method
 */
export function reviewHole(map: HoleMap, planned: PlannedHole, hole: RoundHole): HoleReview {
  if (!isFinished(hole)) throw new RangeError(`hole ${hole.ref} is not holed out`);
  const { plan, solved } = planned;
  const lies = holeLies(map, hole.throws);
  const judged = hole.throws.map((t, i) => judge(planned, lies[i]!, t));
  const throws = hole.throws.map((t, i) =>
    throwReview(planned, lies[i]!, t, judged[i]!, judged[i + 1]?.value ?? HOLED, i),
  );
  return {
    ref: hole.ref,
    par: plan.par,
    score: scoreOf(hole),
    penalties: hole.throws.reduce((sum, t) => sum + penaltyThrows(t), 0),
    startValue: judged[0]!.value,
    exposure: solved.exposure,
    teeChoice: plan.choice,
    sum: sumOf(throws, judged[0]!.value.standardError),
    throws,
    notes: [...plan.assumptions],
  };
}

function judge({ solved, choice }: PlannedHole, { from, fromTee }: LieToLie, t: RoundThrow): JudgedLie {
  const { table } = solved;
  const lie = lieAt(table, from, fromTee);
  const { field } = table;
  const d = distanceToBasket(field, lie.east_m, lie.north_m);
  if (d <= CIRCLE_M && !fromTee) {
    const value = exactly(valueAt(field, lie.east_m, lie.north_m));
    const nothing = { choiceCost: HOLED, choiceMeasured: 0, best: null, played: null, notes: [] };
    return { value, chosen: value, known: 'putt', ...nothing };
  }
  const rows = fromTee ? TEE_ROWS : laterRows(table);
  const search = fromTee ? choice : chooseShot(table, lie, NEXT_EFFORT);
  const best = answer(table, lie, search.best.shot, search.best.aim_deg, rows);
  const putt = isPutt(field, lie.east_m, lie.north_m, d) ? puttFrom(field.putting, d) : Number.POSITIVE_INFINITY;
  if (isMeantAsPutt(table, t)) return puttFromAfar(best, putt);
  const played = playedShot(table, lie, t, search, rows);
  return played === undefined ? notKnown(table, t, best, putt) : thrown(table, search, best, putt, played);
}

/** The tee is answered on the plan's own samples, so that it says what the plan said. */
const TEE_ROWS: Rows = { first: 0, count: TEE_EFFORT.answerRows };
/** Other lies are answered on samples that chose nothing. */
function laterRows({ answerNormals }: Table): Rows {
  const first = NEXT_EFFORT.answerRows;
  return { first, count: answerNormals.length / SAMPLE_DIMENSIONS - first };
}

const exactly = (throws: number): Estimate => ({ throws, standardError: 0 });
const of = ({ outcome }: Candidate): Estimate => ({
  throws: outcome.expectedThrows,
  standardError: outcome.standardError,
});
const lower = (a: Estimate, b: Estimate): Estimate => (b.throws < a.throws ? b : a);

/** Said to be a putt, or thrown with a disc that is kept for putts. */
function isMeantAsPutt({ player }: Table, { shape, discId }: RoundThrow): boolean {
  if (shape !== undefined) return shape === 'putt';
  const own = player.throws.filter(fitted => fitted.discId === discId);
  return own.length > 0 && own.every(({ role }) => role === 'putting');
}

function puttFromAfar(best: Candidate, putt: number): JudgedLie {
  if (!Number.isFinite(putt)) {
    const note = 'a putt from here is out of reach or blocked on the map: only what it won or lost can be told';
    return { ...unsplit(of(best)), best, notes: [note] };
  }
  const value = lower(of(best), exactly(putt));
  const measured = putt - value.throws;
  return {
    value,
    chosen: exactly(putt),
    choiceCost: counted(measured, best.outcome.standardError, false),
    choiceMeasured: measured,
    known: 'putt',
    best: putt <= best.outcome.expectedThrows ? null : best,
    played: null,
    notes: [],
  };
}

function notKnown({ player }: Table, t: RoundThrow, best: Candidate, putt: number): JudgedLie {
  const isPuttBest = putt <= best.outcome.expectedThrows;
  return {
    ...unsplit(isPuttBest ? exactly(putt) : of(best)),
    best: isPuttBest ? null : best,
    notes: [whyNotKnown(player.throws, t)],
  };
}

const unsplit = (value: Estimate) =>
  ({ value, chosen: null, choiceCost: null, choiceMeasured: null, known: 'nothing', played: null }) as const;

function whyNotKnown(known: Table['player']['throws'], { discId, hand = 'backhand', shape }: RoundThrow): string {
  const only = 'only what it won or lost can be told';
  if (discId === undefined) return `the disc was not written: ${only}`;
  if (!known.some(own => own.discId === discId)) return `"${discId}" is no disc of the player: ${only}`;
  if (!known.some(own => own.discId === discId && own.hand === hand)) return `no ${hand} is measured: ${only}`;
  if (shape === 'roller' || shape === 'overhead') {
    const own = known.find(t => t.discId === discId && t.hand === hand)!;
    if (specialOf(own, shape) === null)
      return `the plan does not know ${shape}s of ${own.disc}, fewer than ${FEWEST_SPECIAL_THROWS} are measured or they were not fitted: ${only}`;
  }
  return `the plan has no such line with this disc: ${only}`;
}

function thrown(table: Table, search: Choice, best: Candidate, putt: number, shot: PlayedShot): JudgedLie {
  const { candidate: played, known } = shot;
  const value = lower(lower(of(best), of(played)), exactly(putt));
  const measured = played.outcome.expectedThrows - value.throws;
  const isPuttBest = putt <= Math.min(best.outcome.expectedThrows, played.outcome.expectedThrows);
  const { standardError } = isPuttBest ? played.outcome : pairedDifference(played.outcome, best.outcome);
  const isSame = !isPuttBest && (isSameShot(played, search.best) || isTie(table, best, played));
  return {
    value,
    chosen: of(played),
    choiceCost: counted(measured, standardError, isSame),
    choiceMeasured: measured,
    known,
    best: isPuttBest ? null : best,
    played,
    notes: known === 'shot' ? [] : [BOUND[known]],
  };
}

const BOUND = {
  line: 'what was not written of the throw is taken at its best: the choice cost at least this much',
  disc: 'only the disc is known, its line and aim are taken at their best: the choice cost at least this much',
} as const;

const isSameShot = (a: Candidate, b: Candidate) =>
  a.aim_deg === b.aim_deg && JSON.stringify(a.shot) === JSON.stringify(b.shot);

/** Nothing, where no better choice is known. */
function counted(measured: number, standardError: number, isSame: boolean): Estimate {
  return isSame || measured < NOISE_THROWS ? { throws: 0, standardError } : { throws: measured, standardError };
}

function throwReview(
  { plan, solved }: PlannedHole,
  { from, fromTee, rest, next, assumed }: LieToLie,
  t: RoundThrow,
  judged: JudgedLie,
  after: Estimate,
  index: number,
): ThrowReview {
  const { table } = solved;
  const lie = lieAt(table, from, fromTee);
  const d = distanceToBasket(table.field, lie.east_m, lie.north_m);
  const { value, chosen, choiceCost, best, played } = judged;
  const gain: Estimate = {
    throws: value.throws - after.throws - 1 - penaltyThrows(t),
    standardError: Math.hypot(value.standardError, after.standardError),
  };
  const place = placeOfShot(table, lie, fromTee, plan.headwind_mps);
  const report = (candidate: Candidate) => shotReport(table, candidate, best ?? candidate, place);
  const disc = table.player.throws.find(own => own.discId === t.discId);
  return {
    number: index + 1,
    phase: phaseOf(fromTee, d),
    from: [from[0], from[1]],
    toBasket_m: d,
    rest: rest === null ? null : [rest[0], rest[1]],
    next: next === null ? null : [next[0], next[1]],
    holed: t.holed === true,
    penalties: (t.penalties ?? []).map(({ kind, throws = 1 }) => ({ kind, throws })),
    discId: t.discId ?? null,
    disc: disc?.disc ?? t.discId ?? null,
    hand: t.discId === undefined && t.hand === undefined ? null : (t.hand ?? 'backhand'),
    shape: t.shape ?? (judged.known === 'putt' ? 'putt' : null),
    known: judged.known,
    valueBefore: { ...value },
    valueAfter: { ...after },
    gain,
    choiceCost: choiceCost === null ? null : { ...choiceCost },
    choiceMeasured: judged.choiceMeasured,
    executionCost:
      choiceCost === null || chosen === null
        ? null
        : {
            throws: -gain.throws - choiceCost.throws,
            standardError: Math.hypot(chosen.standardError, after.standardError),
          },
    best: best === null ? null : report(best),
    played: played === null ? null : report(played),
    notes: [...assumed, ...judged.notes],
  };
}

function lieAt({ world }: Table, [east_m, north_m]: LocalPoint, fromTee: boolean): Lie {
  return fromTee ? TEE : { east_m, north_m, ground_m: groundAt(world, east_m, north_m) };
}

/** @param headwind_mps - along the line from the tee to the basket, taken for lies on the way too */
function placeOfShot({ field }: Table, lie: Lie, fromTee: boolean, headwind_mps: number): ShotPlace {
  const toBasket_deg = Math.atan2(field.basket[0] - lie.east_m, field.basket[1] - lie.north_m) / DEGREE;
  const toBasket_m = distanceToBasket(field, lie.east_m, lie.north_m);
  return { fromTee, toBasket_m, toBasket_deg, tailwind: headwind_mps < -2 };
}
