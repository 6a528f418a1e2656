import { nameInText } from '../units/name-in-text.ts';
import { type CourseFit, courseScore, type HoleFit, type TeeFit } from './course-fit.ts';
import type { CourseFitReport } from './practice-report.ts';

/** What the look at one course's lengths and ceilings says. Sentences in metres. */
export function courseFitReport(fit: CourseFit, wanted: number): CourseFitReport {
  const suits = fit.holes.filter(({ tee }) => tee !== null).length;
  return {
    key: fit.key,
    course: fit.course,
    suits,
    score: courseScore(fit, Math.min(wanted, Math.max(1, fit.holes.length))),
    text: courseText(fit, suits),
    holes: fit.holes.map(hole => ({
      ref: hole.ref,
      par: hole.tees[0]!.estimate.par,
      verdict: hole.tee === null ? 'too long' : hole.tee === hole.tees[0] ? 'suits' : 'suits from another tee',
      text: holeText(hole),
      tee: hole.tee?.name ?? null,
      tees: hole.tees.map(({ name, estimate }) => ({
        tee: name,
        playLength_m: estimate.playLength_m,
        reach_m: estimate.reach_m,
        reach20Chance: unit(estimate.reach20Chance),
        expectedThrows: estimate.expectedThrows,
        underCeiling: estimate.underCeiling,
      })),
    })),
  };
}

function courseText({ holes }: CourseFit, suits: number): string {
  if (suits === 0) {
    const tees = holes.flatMap(hole => hole.tees);
    const shortest = [...tees].sort((a, b) => a.estimate.playLength_m - b.estimate.playLength_m)[0]!;
    return `Too long for this limit: the shortest hole is ${metres(shortest.estimate.playLength_m)}, and the longest throw allowed goes ${metres(Math.max(...tees.map(tee => tee.estimate.reach_m)))}.`;
  }
  const skip = holes.filter(({ tee }) => tee === null).map(({ ref }) => ref);
  const other = holes.filter(hole => hole.tee !== null && hole.tee !== hole.tees[0]);
  return [
    skip.length === 0
      ? `All ${holes.length} holes suit.`
      : `${suits} of ${holes.length} holes suit; skip ${listed(skip)}.`,
    ...(other.length > 0
      ? [`Other tees: ${other.map(hole => `${hole.ref} from the ${nameInText(hole.tee!.name)}`).join(', ')}.`]
      : []),
  ].join(' ');
}

/** Why a hole suits, from which tee, or does not. */
export function holeText({ tees, tee }: HoleFit): string {
  const [first] = tees;
  if (tee === null) {
    const shortest = tees.reduce((a, b) => (b.estimate.playLength_m < a.estimate.playLength_m ? b : a));
    const from = tees.length > 1 ? ` from the ${nameInText(shortest.name)}, its shortest` : '';
    return `too long: ${metres(shortest.estimate.playLength_m)}${from}, ${reachWords(shortest)}`;
  }
  const within = `within 20 m in ${parThrows(tee.estimate.par)} about ${Math.round(100 * tee.estimate.reach20Chance)} % of the time`;
  if (tee === first) return `${metres(tee.estimate.playLength_m)}, ${within}`;
  return `from the ${nameInText(tee.name)}, ${metres(tee.estimate.playLength_m)} (the ${nameInText(first!.name)} is ${metres(first!.estimate.playLength_m)}, too long): ${within}`;
}

function reachWords({ estimate }: TeeFit): string {
  return `the longest throw allowed goes ${metres(estimate.reach_m)}${estimate.underCeiling ? ' under what hangs over it' : ''}`;
}

function parThrows(par: number): string {
  const allowed = Math.max(1, par - 2);
  return allowed === 1 ? 'one throw' : `${allowed} throws`;
}

const metres = (length_m: number) => `${Math.round(length_m)} m`;
const unit = (chance: number) => Math.min(1, Math.max(0, chance));

function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
