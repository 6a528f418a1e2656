import type { HolePlan, RoundReport } from './plan-report.ts';

const LEAST_SHOWN = 5e-4;

/** Scores of a round from those of its holes, taken as independent. The ends below 0.05 % are folded into their neighbours. */
export function roundOf(holes: readonly Pick<HolePlan, 'scoreDistribution' | 'expectedThrows' | 'par'>[]): RoundReport {
  let chances = [1];
  for (const hole of holes) {
    const next = new Array<number>(chances.length + Math.max(...hole.scoreDistribution.map(s => s.throws))).fill(0);
    chances.forEach((chance, total) => {
      for (const score of hole.scoreDistribution) next[total + score.throws] += chance * score.chance;
    });
    chances = next;
  }
  const mean = chances.reduce((sum, chance, throws) => sum + chance * throws, 0);
  const variance = chances.reduce((sum, chance, throws) => sum + chance * (throws - mean) ** 2, 0);
  return {
    expectedThrows: holes.reduce((sum, hole) => sum + hole.expectedThrows, 0),
    sd: Math.sqrt(variance),
    par: holes.reduce((sum, hole) => sum + hole.par, 0),
    distribution: fold(chances),
  };
}

function fold(chances: readonly number[]): { throws: number; chance: number }[] {
  const shown = chances
    .map((chance, throws) => ({ throws, chance }))
    .filter(entry => entry.throws > 0 && entry.chance > 0);
  while (shown.length > 1 && shown[0].chance < LEAST_SHOWN) {
    shown[1] = { throws: shown[1].throws, chance: shown[1].chance + shown[0].chance };
    shown.shift();
  }
  while (shown.length > 1 && shown[shown.length - 1].chance < LEAST_SHOWN) {
    const last = shown.pop();
    const before = shown[shown.length - 1];
    shown[shown.length - 1] = { throws: before.throws, chance: before.chance + (last?.chance ?? 0) };
  }
  return shown;
}
