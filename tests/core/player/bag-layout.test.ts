import { describe, expect, it } from 'vitest';
import { bagLayout, DOUBLE_UNDER_SD, GAP_M, leanOf } from '../../../core/player/bag-layout.ts';
import type { FittedThrow } from '../../../core/player/fitted-player.ts';
import { layoutSentences } from '../../../core/player/layout-words.ts';
import { BAG, inventedPlayer } from '../strategy/invented-player.ts';

const METRIC = { length: 'm', speed: 'mps' } as const;
/** A throw placed by hand; it flies as its numbers say, which only the headwind looks at. */
const [plain] = inventedPlayer({ arm_mps: 23, discs: [BAG[1]!] }).throws as [FittedThrow];
const spot = (
  discId: string,
  averageDay_m: number,
  finish_m: number,
  more: Partial<FittedThrow> = {},
): FittedThrow => ({
  ...plain,
  discId,
  disc: discId,
  averageDay_m,
  finish_m,
  averageDaySd_m: 1,
  finishSd_m: 1,
  distanceSd_m: 6,
  sideSd_m: 6,
  ...more,
});

describe('the bag laid out', () => {
  it('finds the gap between neighbours wider than the threshold, and no other', () => {
    const { gaps } = bagLayout([spot('far', 60 + GAP_M + 20, 0), spot('near', 50, -8), spot('middle', 60, 8)]);
    expect(gaps).toEqual([
      { hand: 'backhand', shorter: 'middle', longer: 'far', from_m: 60, to_m: 80 + GAP_M, isSure: true },
    ]);
    // 20 m over the threshold against 1.6 times √2 m of doubt is sure; 1 m over is not [C] by hand
    expect(bagLayout([spot('a', 50, 0), spot('b', 50 + GAP_M + 1, 0)]).gaps[0]?.isSure).toBe(false);
    expect(bagLayout([spot('a', 50, 0), spot('b', 50 + GAP_M, 0)]).gaps).toEqual([]);
  });

  it('calls two discs a double only when their scatter cannot tell them apart', () => {
    const { doubles } = bagLayout([spot('a', 60, 0), spot('b', 61, 2), spot('c', 60, 9)]);
    expect(doubles.map(d => d.discs)).toEqual([['a', 'b']]);
    // [C] √(1² + 2²) m over 6 m of scatter; Φ(0.3727 / 2) = 0.5739 from a table of the normal distribution
    expect(doubles[0]!.apartSds).toBeCloseTo(Math.sqrt(5) / 6, 9);
    expect(doubles[0]!.tellApartChance).toBeCloseTo(0.5739, 3);
    expect(Math.sqrt(5) / 6).toBeLessThan(DOUBLE_UNDER_SD);
  });

  it('does not call discs alike that part in a headwind', () => {
    const [stable, loose] = inventedPlayer({
      arm_mps: 23,
      discs: [
        { id: 'stable', speed: 5, glide: 4, turn: 0, fade: 3 },
        { id: 'loose', speed: 5, glide: 5, turn: -3, fade: 0.5 },
      ],
    }).throws as [FittedThrow, FittedThrow];
    const placed = [stable, loose].map(t => ({ ...t, averageDay_m: 80, finish_m: 0, distanceSd_m: 6, sideSd_m: 6 }));
    expect(bagLayout(placed).doubles).toEqual([]);
  });

  it('is sure of a double only between measured discs that are well known', () => {
    const pair = (more: Partial<FittedThrow>) =>
      bagLayout([spot('a', 60, 0), spot('b', 60, 0, more)]).doubles[0]!.isSure;
    expect(pair({})).toBe(true);
    expect(pair({ basis: 'predicted' })).toBe(false);
    expect(pair({ averageDaySd_m: 8 })).toBe(false);
  });

  it('says which kind of finish is missing, and beyond which distance', () => {
    const { finishGaps } = bagLayout([spot('a', 60, -6), spot('b', 62, 0), spot('c', 95, -10)]);
    expect(finishGaps.map(({ lean, longest_m }) => [lean, longest_m])).toEqual([
      ['turns', null],
      ['straight', 62],
    ]);
    expect(bagLayout([spot('a', 60, -6), spot('b', 62, 0)]).finishGaps).toEqual([]); // too few discs to say
  });

  it('mirrors with the hand: a forehand fades the other way', () => {
    expect(leanOf({ spinPerSpeed: -1, finish_m: -6, averageDay_m: 60 })).toBe('fades');
    expect(leanOf({ spinPerSpeed: 1, finish_m: -6, averageDay_m: 60 })).toBe('turns');
    expect(leanOf({ spinPerSpeed: 1, finish_m: 6, averageDay_m: 60 })).toBe('fades');
    expect(leanOf({ spinPerSpeed: -1, finish_m: 0, averageDay_m: 60 })).toBe('straight');
  });

  it('keeps the putting putter out and each hand for itself', () => {
    const { spots, gaps } = bagLayout([
      spot('putt', 20, 0, { role: 'putting' }),
      spot('a', 60, 0),
      spot('b', 65, -6),
      spot('a', 30, 0, { hand: 'forehand', spinPerSpeed: 1 }),
    ]);
    expect(spots.map(s => `${s.discId} ${s.hand}`)).toEqual(['a backhand', 'b backhand', 'a forehand']);
    expect(gaps).toEqual([]);
  });

  it('says it in words, lengths in the reader’s units', () => {
    const { spots: _, ...found } = bagLayout([spot('a', 50, 0), spot('b', 80, 0), spot('c', 80.2, 0)]);
    const layout = {
      ...found,
      gaps: [...found.gaps],
      finishGaps: [...found.finishGaps],
      doubles: found.doubles.map(d => ({ ...d, discs: [d.discs[0], d.discs[1]] as [string, string] })),
      spots: [],
      thresholds: { gap_m: 12, finishGap_m: 15, double_sd: 0.75, headwind_mps: 6 },
    };
    expect(layoutSentences(layout, METRIC).gaps[0]).toBe(
      'Backhand: nothing between a (50 m) and b (80 m), 30 m apart.',
    );
    expect(layoutSentences(layout, { length: 'ft', speed: 'mph' }).gaps[0]).toContain('98 ft apart'); // 30 m by hand
    expect(layoutSentences(layout, METRIC).doubles[0]).toContain('b and c land 0 m apart');
  });
});
