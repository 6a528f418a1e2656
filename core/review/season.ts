import type { ReviewReport, ThrowReview, WindReview } from './review-report.ts';
import { MEASURES, type Season, type SeasonShot, type Trend } from './season-report.ts';
import { intervalFactor90 } from './student-t.ts';

/** Fewer rounds say nothing about the spread, and nothing about a trend. */
const LEAST_FOR_MEAN = 3;
const LEAST_FOR_TREND = 5;
const SHOTS = 5;

export type ReviewedRound = Readonly<{ roundId: string; report: ReviewReport }>;
type Measure = (typeof MEASURES)[number];

const WORDS: Readonly<Record<Measure, string>> = {
  gain: 'won against the expected score, a hole',
  choiceCost: 'cost of choices, a hole',
  executionCost: 'cost of execution, a hole',
  tee: 'execution from the tee, a hole',
  approach: 'execution of approaches, a hole',
  c2: 'execution from 10 to 20 m, a hole',
  c1: 'execution inside 10 m, a hole',
};

/** Several rounds in the wind that blew (in the planned one where no other was given): trends with 90 % intervals, best and worst throws. */
export function season(reviewed: readonly ReviewedRound[]): Season {
  const rounds = [...reviewed]
    .sort((a, b) => a.report.date.localeCompare(b.report.date) || a.roundId.localeCompare(b.roundId))
    .map(({ roundId, report }) => ({ roundId, report, review: report.asItWas ?? report.asPlanned }))
    .filter(({ review }) => review.holes.length > 0);
  const shots = rounds.flatMap(({ roundId, report, review }) =>
    review.holes.flatMap(hole => hole.throws.map(t => shotOf(roundId, report, hole.ref, t))),
  );
  const by = (value: (shot: SeasonShot) => number) => [...shots].sort((a, b) => value(b) - value(a));
  return {
    rounds: rounds.map(({ roundId, report, review }) => {
      const { total } = review;
      return {
        roundId,
        date: report.date,
        course: report.course,
        holes: review.holes.length,
        score: total.score,
        par: total.par,
        expected: total.startValue,
        gain: total.sum.gain.throws,
        choiceCost: total.sum.choiceCost.throws,
        executionCost: total.sum.executionCost.throws,
      };
    }),
    trends: MEASURES.map(measure =>
      trend(
        measure,
        rounds.map(({ roundId, report, review }) => ({
          roundId,
          date: report.date,
          course: report.course,
          value: measured(measure, review),
        })),
      ),
    ),
    best: by(shot => shot.gain)
      .filter(shot => shot.gain > 0)
      .slice(0, SHOTS),
    worst: by(shot => -shot.gain)
      .filter(shot => shot.gain < 0)
      .slice(0, SHOTS),
    worstChoices: by(shot => shot.choiceCost ?? 0)
      .filter(shot => (shot.choiceCost ?? 0) > 0)
      .slice(0, SHOTS),
    notes: [
      `${MEASURES.length} trends are looked at, each against an interval of 90 %: one of them may well look clear by chance.`,
      'The expected score of a round is that of the player as the fieldwork stood when it was reviewed.',
    ],
  };
}

function measured(measure: Measure, { holes, total, byPhase }: WindReview): number | null {
  if (measure === 'gain') return total.sum.gain.throws / holes.length;
  if (measure === 'choiceCost' || measure === 'executionCost')
    return total.sum.split === 0 ? null : total.sum[measure].throws / holes.length;
  const group = byPhase.find(({ key }) => key === measure);
  return group === undefined || group.sum.split === 0 ? null : group.sum.executionCost.throws / holes.length;
}

/** Straight line through the rounds in order, ordinary least squares. */
function trend(measure: Measure, points: Trend['points']): Trend {
  const values = points.flatMap(({ value }) => (value === null ? [] : [value]));
  const n = values.length;
  const isBetterUp = measure === 'gain';
  const mean = n === 0 ? null : values.reduce((sum, v) => sum + v, 0) / n;
  const base = { measure, words: WORDS[measure], isBetterUp, points, n, mean };
  if (mean === null || n < LEAST_FOR_MEAN)
    return {
      ...base,
      meanInterval: null,
      perRound: null,
      perRoundInterval: null,
      verdict: 'tooFew',
      text: `${n} ${n === 1 ? 'round' : 'rounds'}: too few to say more`,
    };
  const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  const meanInterval = around(mean, Math.sqrt(squares / (n - 1) / n), n - 1);
  if (n < LEAST_FOR_TREND)
    return {
      ...base,
      meanInterval,
      perRound: null,
      perRoundInterval: null,
      verdict: 'tooFew',
      text: `${n} rounds: too few for a trend`,
    };
  const middle = (n - 1) / 2;
  const spread = values.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
  const perRound = values.reduce((sum, v, i) => sum + (i - middle) * (v - mean), 0) / spread;
  const rest = values.reduce((sum, v, i) => sum + (v - mean - perRound * (i - middle)) ** 2, 0);
  const perRoundInterval = around(perRound, Math.sqrt(rest / (n - 2) / spread), n - 2);
  const isClear = perRoundInterval.low > 0 || perRoundInterval.high < 0;
  const verdict = !isClear ? 'cannotTell' : perRound > 0 === isBetterUp ? 'better' : 'worse';
  return { ...base, meanInterval, perRound, perRoundInterval, verdict, text: verdictText(verdict, n) };
}

function verdictText(verdict: 'cannotTell' | 'better' | 'worse', n: number): string {
  if (verdict === 'cannotTell') return `no trend that ${n} rounds could tell from chance`;
  return `getting ${verdict}: chance alone would seldom do it in ${n} rounds`;
}

function around(value: number, standardError: number, degrees: number) {
  const half = intervalFactor90(degrees) * standardError;
  return { low: value - half, high: value + half };
}

function shotOf(roundId: string, report: ReviewReport, ref: string, t: ThrowReview): SeasonShot {
  return {
    roundId,
    date: report.date,
    course: report.course,
    ref,
    number: t.number,
    disc: t.disc,
    phase: t.phase,
    toBasket_m: t.toBasket_m,
    holed: t.holed,
    gain: t.gain.throws,
    choiceCost: t.choiceCost?.throws ?? null,
    executionCost: t.executionCost?.throws ?? null,
  };
}
