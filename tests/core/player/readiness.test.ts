import { describe, expect, it } from 'vitest';
import { needsAnArm, readiness, readinessText } from '../../../core/player/readiness.ts';

type Bag = Parameters<typeof readiness>[0];
const thrown = (
  discId: string,
  discSpeed: number,
  averageDay_m: number,
  basis: 'measured' | 'predicted' = 'measured',
): Bag[number] => ({
  discId,
  disc: discId,
  discSpeed,
  hand: 'backhand',
  basis,
  averageDay_m,
  finish_m: -4,
});

// Thresholds: common practice, no source (200 ft, 300–325 ft, 375–400 ft)
describe('readiness', () => {
  it.each([
    { disc: 7, slower: 5, reach: 60, verdict: 'too fast for now' },
    { disc: 7, slower: 5, reach: 61, verdict: 'ready' },
    { disc: 9, slower: 7, reach: 90, verdict: 'too fast for now' },
    { disc: 9, slower: 7, reach: 91, verdict: 'ready' },
    { disc: 12, slower: 9, reach: 113, verdict: 'too fast for now' },
    { disc: 12, slower: 9, reach: 114, verdict: 'ready' },
    { disc: 3, slower: 2, reach: 20, verdict: 'ready' },
  ])('speed $disc with a speed $slower that goes $reach m: $verdict', ({ disc, slower, reach, verdict }) => {
    const fast = thrown('fast', disc, reach + 1);
    expect(readiness([thrown('slow', slower, reach), fast], fast).verdict).toBe(verdict);
  });

  it('says so in the player’s own numbers and what it costs', () => {
    const fast = { ...thrown('Comet', 12, 58), finish_m: -9 };
    const { text } = readiness([thrown('Lantern', 5, 60), fast], fast);
    expect(text).toContain('Lantern goes 60 m');
    expect(text).toContain('2 m shorter');
    expect(text).toContain('5 m further off the line');
  });

  it('believes measured discs before predicted ones, and only the same hand', () => {
    const fast = thrown('fast', 7, 70, 'predicted');
    expect(readiness([thrown('slow', 5, 55), thrown('guess', 4, 80, 'predicted'), fast], fast).verdict).toBe(
      'too fast for now',
    );
    expect(readiness([{ ...thrown('slow', 5, 80), hand: 'forehand' }, fast], fast).verdict).toBe('too fast for now');
  });

  it('writes lengths in the reader’s units, thresholds as the trade says them', () => {
    const fast = thrown('Comet', 12, 60);
    const facts = readiness([thrown('Lantern', 5, 60), fast], fast);
    const text = readinessText(facts, { length: 'ft', speed: 'mph' });
    expect(text).toContain('Lantern goes 197 ft'); // 60 m by hand
    expect(text).toContain('375 to 400 ft');
    expect(text).toContain('no farther than Lantern');
    expect(text).not.toMatch(/\d m\b/);
  });

  it('asks an arm of discs from speed 6.5 on only', () => {
    expect([2, 6, 6.5, 8, 13].map(needsAnArm)).toEqual([false, false, true, true, true]);
  });
});
