import { describe, expect, it } from 'vitest';
import type { ReviewReport, Sum } from '../../../core/review/review-report.ts';
import { season } from '../../../core/review/season.ts';
import { intervalFactor90 } from '../../../core/review/student-t.ts';

const sum = (gain: number, choice = 0, execution = -gain - choice, throws = 3): Sum => {
  const estimate = (value: number) => ({ throws: value, standardError: 0.02 });
  return {
    throws,
    split: throws,
    gain: estimate(gain),
    choiceCost: estimate(choice),
    executionCost: estimate(execution),
  };
};

/** A round of one hole that won so many throws. */
function report(date: string, gain: number): ReviewReport {
  const group = { key: 'tee', name: 'from the tee', sum: sum(gain, 0.1) };
  const hole = { ref: '1', throws: [] } as unknown as ReviewReport['asPlanned']['holes'][number];
  return {
    schema: 'roundwright/review@1',
    course: 'Anywhere',
    player: 'Anybody',
    date,
    seed: 1,
    asPlanned: {
      air: { windSpeed_mps: 0, windFrom_deg: 0, gust_mps: 0, source: '', notes: [] },
      holes: [hole],
      total: { score: 3, par: 3, startValue: 3 + gain, sum: sum(gain, 0.1) },
      byDisc: [],
      byHand: [],
      byShape: [],
      byPhase: [group],
    },
    asItWas: null,
    windHoles: [],
    unfinished: [],
    notes: [],
  };
}

const rounds = (gains: readonly number[]) =>
  gains.map((gain, i) => ({ roundId: `r${i}`, report: report(`2026-05-${String(i + 10)}`, gain) }));
const gainTrend = (gains: readonly number[]) => season(rounds(gains)).trends.find(t => t.measure === 'gain')!;

describe('a season', () => {
  it('says nothing of a trend from fewer than five rounds, nothing of the spread from fewer than three', () => {
    expect(gainTrend([0.1, 0.2])).toMatchObject({ verdict: 'tooFew', meanInterval: null, perRound: null });
    expect(gainTrend([0.1, 0.2, 0.3, 0.4])).toMatchObject({ verdict: 'tooFew', perRound: null });
    expect(gainTrend([0.1, 0.2, 0.3]).meanInterval).not.toBeNull();
  });

  it('fits a straight line and its 90 % interval', () => {
    // [C] ordinary least squares by hand: x −2…2, y 0, 1, 1, 3, 5 → slope 12/10; residuals 0.4, 0.2, −1, −0.2, 0.6, squares 1.6,
    // standard error √(1.6/3/10), t(0.95, 3) = 2.353
    const trend = gainTrend([0, 1, 1, 3, 5]);
    expect(trend.perRound).toBeCloseTo(1.2, 12);
    const half = 2.353 * Math.sqrt(1.6 / 3 / 10);
    expect(trend.perRoundInterval!.low).toBeCloseTo(1.2 - half, 12);
    expect(trend.perRoundInterval!.high).toBeCloseTo(1.2 + half, 12);
    expect(trend.verdict).toBe('better');
    // the mean: 2, sd √(16/4) = 2, error 2/√5, t(0.95, 4) = 2.132
    expect(trend.mean).toBeCloseTo(2, 12);
    expect(trend.meanInterval!.high).toBeCloseTo(2 + (2.132 * 2) / Math.sqrt(5), 12);
  });

  it('calls a rising cost worse, and no trend what chance would do', () => {
    expect(gainTrend([5, 3, 1, 1, 0]).verdict).toBe('worse');
    expect(gainTrend([1, -1, 0.5, -0.5, 1, -1]).verdict).toBe('cannotTell');
    const costs = season(rounds([0, 1, 1, 3, 5])).trends.find(t => t.measure === 'executionCost')!;
    expect(costs.verdict).toBe('better');
  });

  it('puts rounds in order of their dates', () => {
    const [a, b] = rounds([1, 2]);
    expect(season([b!, a!]).rounds.map(({ roundId }) => roundId)).toEqual(['r0', 'r1']);
  });

  it('has intervals that hold the true slope in 90 % of seasons (simulated, seeded)', () => {
    let state = 20260601;
    const uniform = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const trials = 2000;
    let held = 0;
    for (let i = 0; i < trials; i++) {
      const { perRoundInterval } = gainTrend(Array.from({ length: 7 }, (_, x) => 0.03 * x + 0.2 * normal()));
      if (perRoundInterval!.low <= 0.03 && 0.03 <= perRoundInterval!.high) held++;
    }
    // binomial: 0.9 ± 3 · √(0.09/2000) = 0.9 ± 0.02
    expect(Math.abs(held / trials - 0.9)).toBeLessThan(0.02);
  });
});

describe('t quantiles', () => {
  it.each([
    { degrees: 1, want: 6.314 },
    { degrees: 10, want: 1.812 },
    { degrees: 30, want: 1.697 },
    { degrees: 100, want: 1.645 },
  ])('$degrees degrees of freedom: $want (published t table)', ({ degrees, want }) => {
    expect(Math.abs(intervalFactor90(degrees) - want)).toBeLessThan(0.02);
  });
  it('none is refused', () => {
    expect(() => intervalFactor90(0)).toThrow(RangeError);
  });
});
