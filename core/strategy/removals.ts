import type { Candidate } from './choose-shot.ts';
import { type Constraint, constraintsOf } from './constraint.ts';
import { kindOf } from './flown-as.ts';
import type { SolvedHole } from './hole-solver.ts';
import { type HoleWithout, holeWithout, type Line, WITHOUT_ROWS } from './hole-without.ts';
import type { Lie } from './march.ts';
import type { ShotOutcome } from './shot-outcome.ts';
import type { ShotSpec } from './shots.ts';

/** The other disc must come out ahead by this, and by one standard error, before the order is said to flip. */
const LEAST_LEAD = 0.01;
/** And the constraint must hold this much of the gap, and this many standard errors of it. */
const LEAST_EXPLAINED = 0.02;
const STANDARD_ERRORS = 1.5;
const FELT_CHANCE = 0.01;

/** What taking one constraint away does to the gap between the choice and another disc. */
export type Removal = Readonly<{
  constraint: Constraint;
  /** Throws the other disc costs against the choice without it; negative: it would be the better throw. */
  costs: number;
  standardError: number;
  /** Throws of the gap that go with it, and their sampling error. */
  explains: number;
  explainsError: number;
  flips: boolean;
  /** The best line of each disc without it. */
  best: Candidate;
  other: Candidate;
}>;

export type Removals = Readonly<{
  against(other: Candidate): readonly Removal[];
  /** A line of the day as it would fly in calm air. */
  inCalm(candidate: Candidate): Candidate;
}>;

/**
 * Takes the constraints of a hole away one at a time and answers the choice and others again, each disc with its best line there,
 * on the samples of the plan and with the same values of later lies.
 */
export function removals(solved: SolvedHole, lie: Lie, best: Candidate): Removals {
  const present = constraintsOf(solved);
  const holes = new Map<Constraint | null, HoleWithout>();
  const lines = new Map<Constraint | null, Map<Candidate, Candidate>>();
  const lists = new Map<Constraint | null, Map<number, readonly Line[]>>();

  function without(constraint: Constraint | null): HoleWithout {
    const hole = holes.get(constraint) ?? holeWithout(solved, constraint, lie);
    holes.set(constraint, hole);
    return hole;
  }

  function line(constraint: Constraint | null, candidate: Candidate): Candidate {
    const known = lines.get(constraint) ?? new Map<Candidate, Candidate>();
    lines.set(constraint, known);
    const found = known.get(candidate) ?? search(constraint, candidate);
    known.set(candidate, found);
    return found;
  }

  function search(constraint: Constraint | null, candidate: Candidate): Candidate {
    const promising = shortlist(constraint, candidate.shot);
    const isMet = constraint === null || constraint === 'wind' || meets(candidate, constraint);
    if (!isMet && sameLines(promising, shortlist(null, candidate.shot))) return line(null, candidate);
    return without(constraint).bestLine(candidate, promising);
  }

  function shortlist(constraint: Constraint | null, shot: ShotSpec): readonly Line[] {
    const kind = kindOf(shot, solved.table.player.throws.length);
    const known = lists.get(constraint) ?? new Map<number, readonly Line[]>();
    lists.set(constraint, known);
    const found = known.get(kind) ?? without(constraint).shortlist(shot);
    known.set(kind, found);
    return found;
  }

  function removal(constraint: Constraint, other: Candidate): Removal {
    const [bestLine, otherLine] = [line(constraint, best), line(constraint, other)];
    const left = differences(otherLine.outcome, bestLine.outcome);
    // searched in the same way, so that a better line found on the way does not pass for the constraint's doing
    const gap = differences(line(null, other).outcome, line(null, best).outcome);
    const { mean: costs, standardError } = meanOf(left);
    const { mean: explains, standardError: explainsError } = meanOf(gap.map((d, i) => d - left[i]));
    const flips =
      costs < -Math.max(LEAST_LEAD, standardError) &&
      explains > Math.max(LEAST_EXPLAINED, STANDARD_ERRORS * explainsError);
    return { constraint, costs, standardError, explains, explainsError, flips, best: bestLine, other: otherLine };
  }

  return {
    against(other) {
      const found: Removal[] = [];
      for (const constraint of present) {
        // both together are asked for only when neither alone turns the order
        const alone = found.some(r => r.flips && (r.constraint === 'overhead' || r.constraint === 'standing'));
        if (constraint === 'trees' && alone) continue;
        found.push(removal(constraint, other));
      }
      return found;
    },
    inCalm: candidate => without('wind').sameLine(candidate, WITHOUT_ROWS),
  };
}

/** The shot itself feels the constraint. */
function meets({ outcome }: Candidate, constraint: Exclude<Constraint, 'wind'>): boolean {
  return constraint === 'penalty' ? outcome.penaltyChance > FELT_CHANCE : outcome.cleanChance < 1 - FELT_CHANCE;
}

/** Without the constraint no other line looks better: then it did not keep the disc from any. */
function sameLines(a: readonly Line[], b: readonly Line[]): boolean {
  return (
    a.length === b.length &&
    a.every((line, i) => line.shot === b[i].shot && line.aim_deg === b[i].aim_deg && line.score === b[i].score)
  );
}

function differences(a: ShotOutcome, b: ShotOutcome): Float64Array {
  const rows = Math.min(WITHOUT_ROWS, a.perSample.length, b.perSample.length);
  return Float64Array.from({ length: rows }, (_, i) => a.perSample[i] - b.perSample[i]);
}

function meanOf(values: Float64Array): Readonly<{ mean: number; standardError: number }> {
  const n = values.length;
  const mean = values.reduce((sum, v) => sum + v, 0) / n;
  const square = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return { mean, standardError: Math.sqrt(square / Math.max(1, n - 1) / n) };
}
