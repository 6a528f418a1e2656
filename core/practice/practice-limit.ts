import { DISC_CLASSES } from '../player/disc-class.ts';
import type { DiscClass, FittedPlayer } from '../player/fitted-player.ts';
import type { LineShape } from '../strategy/shots.ts';
import { nameInText } from '../units/name-in-text.ts';
import type { Problem, Result } from '../units/result.ts';

/** Rollers and overhead throws are no lines to practise on their own: a limit by shape leaves them out. */
type Shape = LineShape;
type Hand = 'backhand' | 'forehand';

/**
 * What a practice round allows. Every property narrows; a disc must be in one of `classes` or `discIds` when either is given.
 * Empty: the whole bag.
 */
export type PracticeLimit = Readonly<{
  classes?: readonly DiscClass[];
  discIds?: readonly string[];
  /** Neutral stability only: over-stable discs hide faults (common practice). */
  neutral?: boolean;
  hands?: readonly Hand[];
  shapes?: readonly Shape[];
}>;

/** What is printed on a disc, as far as a limit asks. */
export type LimitDisc = Readonly<{
  id: string;
  name: string;
  class: DiscClass;
  turn: number;
  fade: number;
  role: 'putting' | 'throwing';
}>;

/** A limit as the player's own discs meet it. */
export type AllowedThrows = Readonly<{
  /** "putters only, forehand". */
  words: string;
  discIds: readonly string[];
  discNames: readonly string[];
  /** All when left out. */
  hands?: readonly Hand[];
  shapes?: readonly Shape[];
}>;

/** A disc is neutral when turn and fade add up to no more than this either way: own choice, no source. */
const NEUTRAL_SUM = 1;

/**
 * The discs of a player that a limit leaves, with what it is called.
 * @param discs - the player's discs, with their trade numbers
 * @returns problems with paths `limit.discIds`, `limit.classes`, `limit.neutral` or `limit`, when nothing is left to throw
 */
export function allowedThrows(
  player: Pick<FittedPlayer, 'name' | 'throws'>,
  discs: readonly LimitDisc[],
  limit: PracticeLimit,
): Result<AllowedThrows> {
  const { classes, discIds, neutral = false, hands, shapes } = limit;
  const unknown = (discIds ?? []).filter(id => !discs.some(disc => disc.id === id));
  if (unknown.length > 0)
    return refused([
      {
        path: 'limit.discIds',
        message: `${player.name} has no disc "${unknown.join('", "')}"; the discs are ${discs.map(({ id }) => id).join(', ')}`,
      },
    ]);
  const named = discs.filter(disc => isNamed(disc, classes, discIds));
  const throwing = named.filter(({ role }) => role === 'throwing');
  if (throwing.length === 0) return refused([nothingNamed(player.name, named, classes)]);
  const left = neutral ? throwing.filter(isNeutral) : throwing;
  if (left.length === 0) return refused([nothingNeutral(player.name, throwing)]);
  const thrown = player.throws.some(
    ({ discId, hand, role }) =>
      role === 'throwing' && left.some(({ id }) => id === discId) && (hands === undefined || hands.includes(hand)),
  );
  if (!thrown)
    return refused([
      { path: 'limit.hands', message: `${player.name} throws none of these discs ${hands?.join(' or ')}` },
    ]);
  return {
    ok: true,
    value: {
      words: limitWords(limit, left),
      discIds: left.map(({ id }) => id),
      discNames: left.map(({ name }) => name),
      ...(hands && { hands }),
      ...(shapes && { shapes }),
    },
  };
}

/** Turn and fade on the disc cancel out, nearly. */
export function isNeutral({ turn, fade }: Pick<LimitDisc, 'turn' | 'fade'>): boolean {
  return Math.abs(turn + fade) <= NEUTRAL_SUM + 1e-9;
}

function isNamed(disc: LimitDisc, classes?: readonly DiscClass[], discIds?: readonly string[]): boolean {
  if (classes === undefined && discIds === undefined) return true;
  return (classes?.includes(disc.class) ?? false) || (discIds?.includes(disc.id) ?? false);
}

function nothingNamed(name: string, named: readonly LimitDisc[], classes?: readonly DiscClass[]): Problem {
  if (named.length > 0)
    return {
      path: 'limit',
      message: `${named.map(disc => disc.name).join(', ')} ${named.length === 1 ? 'is' : 'are'} kept for putting: give a disc the role "throwing" in the bag, or choose another limit`,
    };
  return {
    path: 'limit.classes',
    message: `${name} has no disc of class ${classes?.join(' or ') ?? 'any'}: add one to the bag, or choose another limit`,
  };
}

function nothingNeutral(name: string, throwing: readonly LimitDisc[]): Problem {
  const nearest = [...throwing].sort((a, b) => Math.abs(a.turn + a.fade) - Math.abs(b.turn + b.fade))[0]!;
  const sum = nearest.turn + nearest.fade;
  return {
    path: 'limit.neutral',
    message: `${name} has no neutral disc there (turn and fade adding up to between −${NEUTRAL_SUM} and ${NEUTRAL_SUM}); the nearest is ${nearest.name} at ${sum > 0 ? '+' : '−'}${Math.abs(sum)}: choose it as the one disc instead`,
  };
}

const PLURAL: Readonly<Record<DiscClass, string>> = {
  putter: 'putters',
  midrange: 'midranges',
  fairway: 'fairway drivers',
  control: 'control drivers',
  distance: 'distance drivers',
};

function limitWords(limit: PracticeLimit, left: readonly LimitDisc[]): string {
  const { classes, discIds, neutral, hands, shapes } = limit;
  const what: string[] = [];
  if (discIds !== undefined && classes === undefined)
    what.push(
      left.length === 1
        ? `one disc: ${nameInText(left[0]!.name)}`
        : `${left.length} discs: ${left.map(d => nameInText(d.name)).join(', ')}`,
    );
  else if (classes !== undefined) {
    const named = DISC_CLASSES.filter(one => classes.includes(one)).map(one => PLURAL[one]);
    const others = left.filter(disc => !classes.includes(disc.class)).map(disc => disc.name);
    what.push(`${[...named, ...others].join(' and ')} only`);
  }
  if (neutral) what.push('neutral discs only');
  if (hands?.length === 1) what.push(`${hands[0]} only`);
  if (shapes !== undefined) what.push(`${shapes.join(' and ')} lines only`);
  return what.length === 0 ? 'the whole bag' : what.join(', ');
}

function refused(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems };
}
