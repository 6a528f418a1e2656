import type { HoleReport } from '../../core/geometry/hole-report.ts';
import type { ShotReport } from '../../core/strategy/plan-report.ts';
import { percent } from '../words/percent.ts';

const LEAST_SAID = 0.005;
const MOST_NAMED = 2;
const WHERE = {
  left: 'on the left',
  right: 'on the right',
  across: 'across the way',
  beyond: 'beyond the basket',
} as const;

/** What this throw must not meet, likeliest first, each with its chance and, where the map names it, which one. */
export function keepAwayFrom(shot: ShotReport, report: HoleReport | null): string[] {
  const dangers = [
    { what: `out-of-bounds${namesOf(report)}`, chance: shot.outOfBoundsChance },
    { what: 'the hazard', chance: shot.hazardChance },
    { what: 'the wrong side of the mando', chance: shot.mandoChance },
    { what: 'ground where the disc may be lost', chance: shot.lostChance ?? 0 },
    { what: 'trees on the way', chance: 1 - shot.cleanChance },
  ];
  return dangers
    .filter(({ chance }) => chance >= LEAST_SAID)
    .sort((a, b) => b.chance - a.chance)
    .map(({ what, chance }) => `${what} (${percent(chance)})`);
}

/** ", water on the left": the nearest of what the hole report lists, without where it stands in the file. */
function namesOf(report: HoleReport | null): string {
  const near = [...(report?.outOfBounds ?? [])].sort((a, b) => a.closest_m - b.closest_m);
  const names = near.map(({ what, side }) =>
    `${what.replace(/ \(features\[\d+\].*\)$/, '').replace(/, out-of-bounds$/, '')} ${what.startsWith('outside') ? '' : WHERE[side]}`.trim(),
  );
  const named = [...new Set(names)].slice(0, MOST_NAMED);
  return named.length === 0 ? '' : `: ${named.join(', ')}`;
}
