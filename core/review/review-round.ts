import type { Day } from '../air/day.ts';
import type { Group, HoleReview, ReviewReport, ThrowReview, WindHole, WindReview } from './review-report.ts';
import { isFinished, type RoundFile } from './round-file.ts';
import { sumOf } from './sum-of.ts';
import { PHASES, type Phase } from './thrown.ts';

const NOT_WRITTEN = 'not written';
const PHASE_WORDS: Readonly<Record<Phase, string>> = {
  tee: 'from the tee',
  approach: 'approach',
  c2: '10 to 20 m',
  c1: 'inside 10 m',
};

/** Adds a round's judged holes up, for one wind. @param holes - in the order they were played */
export function windReview(day: Day, holes: readonly HoleReview[]): WindReview {
  const throws = holes.flatMap(hole => hole.throws);
  const { speed_mps, from_deg, gust_mps } = day.wind;
  return {
    air: { windSpeed_mps: speed_mps, windFrom_deg: from_deg, gust_mps, source: day.source, notes: [...day.notes] },
    holes: [...holes],
    total: {
      score: holes.reduce((sum, hole) => sum + hole.score, 0),
      par: holes.reduce((sum, hole) => sum + hole.par, 0),
      startValue: holes.reduce((sum, hole) => sum + hole.startValue.throws, 0),
      sum: sumOf(throws, Math.hypot(...holes.map(hole => hole.startValue.standardError))),
    },
    byDisc: grouped(throws, t => [t.discId ?? '', t.disc ?? NOT_WRITTEN]),
    byHand: grouped(throws, t => [t.hand ?? '', t.hand ?? NOT_WRITTEN]),
    byShape: grouped(throws, t => [t.shape ?? '', t.shape ?? NOT_WRITTEN]),
    byPhase: PHASES.flatMap(phase =>
      grouped(
        throws.filter(t => t.phase === phase),
        () => [phase, PHASE_WORDS[phase]],
      ),
    ),
  };
}

/** Groups in order of the gain, most lost first. */
function grouped(
  throws: readonly ThrowReview[],
  of: (t: ThrowReview) => readonly [key: string, name: string],
): Group[] {
  const groups = new Map<string, { name: string; throws: ThrowReview[] }>();
  for (const t of throws) {
    const [key, name] = of(t);
    const group = groups.get(key) ?? { name, throws: [] };
    group.throws.push(t);
    groups.set(key, group);
  }
  return [...groups]
    .map(([key, group]) => ({ key, name: group.name, sum: sumOf(group.throws) }))
    .sort((a, b) => a.sum.gain.throws - b.sum.gain.throws);
}

type ReportParts = Readonly<{
  course: string;
  player: string;
  round: RoundFile;
  seed: number;
  asPlanned: WindReview;
  asItWas: WindReview | null;
  /** By ref: what throwing the planned tee shot costs in the wind that blew; undefined where it could not be told. */
  stayingCosts: ReadonlyMap<string, number>;
  notes: readonly string[];
}>;

/** The whole report of a round. */
export function reviewReport(parts: ReportParts): ReviewReport {
  const { course, player, round, seed, asPlanned, asItWas, stayingCosts, notes } = parts;
  const unfinished = round.holes.filter(hole => !isFinished(hole)).map(({ ref }) => ref);
  return {
    schema: 'roundwright/review@1',
    course,
    player,
    date: round.date,
    seed,
    asPlanned,
    asItWas,
    windHoles: asItWas === null ? [] : windHoles(asPlanned, asItWas, stayingCosts),
    unfinished,
    notes: [
      ...(unfinished.length === 0 ? [] : [`Not holed out, so not reviewed: hole ${unfinished.join(', ')}.`]),
      ...namedOtherwise('course', round.course, course),
      ...namedOtherwise('player', round.player, player),
      'Choices are judged by the fewest expected throws, whatever the round was played for.',
      'Costs are the model’s: errors shown are those of sampling, not of the model, the map or the putting curve.',
      ...notes,
    ],
  };
}

function windHoles(asPlanned: WindReview, asItWas: WindReview, stayingCosts: ReadonlyMap<string, number>): WindHole[] {
  return asPlanned.holes.flatMap((hole): WindHole[] => {
    const real = asItWas.holes.find(({ ref }) => ref === hole.ref);
    if (real === undefined) return [];
    const [a, b] = [hole.teeChoice, real.teeChoice];
    const line = ({ title, discId, disc, expectedThrows }: typeof a) => ({ title, discId, disc, expectedThrows });
    return [
      {
        ref: hole.ref,
        planned: line(a),
        real: line(b),
        isOtherDisc: a.discId !== b.discId || a.hand !== b.hand,
        stayingCost: stayingCosts.get(hole.ref) ?? null,
      },
    ];
  });
}

/** Says so when the round file names another one. */
function namedOtherwise(what: string, written: string | undefined, used: string): string[] {
  if (written === undefined || written.trim().toLowerCase() === used.trim().toLowerCase()) return [];
  return [`The round names the ${what} "${written}"; it was judged with "${used}".`];
}
