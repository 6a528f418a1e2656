import type { FittedThrow } from '../player/fitted-player.ts';
import type { SessionLesson } from '../player/session-lesson.ts';
import type { ThrowShift } from '../player/shifted-throw.ts';
import { type Candidate, chooseShot, NEXT_EFFORT } from './choose-shot.ts';
import { isSpecialShape } from './flown-as.ts';
import type { Lie } from './march.ts';
import type { PlannedHole } from './plan-hole.ts';
import type { ShotSpec } from './shots.ts';
import { valueAt } from './value-field.ts';
import { groundAt } from './world.ts';

export type AimedShot = Readonly<{ shot: ShotSpec; aim_deg: number }>;

/** A place of the hole where a shot is chosen, with the chance that it comes up. */
export type Decision = Readonly<{
  lie: Lie;
  chance: number;
  best: Candidate;
  /** Fewest throws first. */
  finalists: readonly Candidate[];
  /** Value of a throw played again from here. */
  replay: number;
}>;

const TEE: Lie = { east_m: 0, north_m: 0, ground_m: 0 };
/** Shots of one disc among which its best is looked for anew. */
const OWN_SHOTS = 2;
/** Distance grows about as this power of the release speed. */
const SHARE_OF_REACH = 1.6;
const LEAST_POWER = 0.2;
const DEGREES_PER_RADIAN = 180 / Math.PI;

/** The tee shot and the likely next throws, each with the finalists of every disc. */
export function decisionsOf({ solved, choice, plan }: Pick<PlannedHole, 'solved' | 'choice' | 'plan'>): Decision[] {
  const { table } = solved;
  const at = (lie: Lie, chance: number, best: Candidate, finalists: readonly Candidate[]): Decision => ({
    lie,
    chance,
    best,
    finalists: [...finalists].sort((a, b) => a.outcome.expectedThrows - b.outcome.expectedThrows),
    replay: valueAt(table.field, lie.east_m, lie.north_m),
  });
  const later = plan.next.flatMap(({ action, chance, east_m, north_m }) => {
    if (action !== 'throw') return [];
    const lie: Lie = { east_m, north_m, ground_m: groundAt(table.world, east_m, north_m) };
    const { best, finalists } = chooseShot(table, lie, { ...NEXT_EFFORT, perDisc: true });
    return [at(lie, chance, best, finalists)];
  });
  return [at(TEE, 1, choice.best, choice.finalists), ...later];
}

/**
 * The best few finalists of one throw, the choice itself first when it is one of them. Rollers and overhead throws are left out:
 * what is asked about is a session of flat throws, and says nothing of them.
 */
export function ownFinalists({ best, finalists }: Decision, throwIndex: number): Candidate[] {
  const isOwn = ({ shot }: Candidate) => shot.throwIndex === throwIndex && !isSpecialShape(shot.shape);
  const own = finalists.filter(c => isOwn(c) && c !== best);
  return (isOwn(best) ? [best, ...own] : own).slice(0, OWN_SHOTS);
}

/**
 * A shot put right for what was learnt of the throw: its power so that it goes as far as before (it cannot pass full power), its
 * aim so that it comes to rest in the same direction.
 */
export function rightedShot(
  { shot, aim_deg }: AimedShot,
  now: FittedThrow,
  { slopes }: SessionLesson,
  shift: ThrowShift,
  what: 'both' | 'power' | 'aim' = 'both',
): AimedShot {
  const along_m = slopes.alongBySpeed * shift.logSpeed + slopes.alongByStability * shift.stability;
  const left_m = slopes.leftBySpeed * shift.logSpeed + slopes.leftByStability * shift.stability;
  const reach_m = Math.max(1, now.averageDay_m);
  const farther = Math.max(0.3, 1 + along_m / reach_m);
  const power = Math.min(1, Math.max(LEAST_POWER, shot.power * farther ** (-1 / SHARE_OF_REACH)));
  return {
    shot: what === 'aim' ? shot : { ...shot, power },
    aim_deg: what === 'power' ? aim_deg : aim_deg + (left_m / reach_m) * DEGREES_PER_RADIAN,
  };
}
