import { formatLength } from '../units/length.ts';
import type { UnitsChoice } from '../units/units-choice.ts';
import type { FittedThrow } from './fitted-player.ts';

/** How far a slower kind of disc has to go before the next faster one is worth carrying. */
type Gate = Readonly<{ what: string; from_m: number; to_m: number /** As the trade says it. */; feet: string }>;

export type ReadinessFacts = Readonly<{
  verdict: 'ready' | 'too fast for now';
  disc: string;
  /** What opens the disc (common practice); null when it suits any arm. */
  gate: Gate | null;
  /** The player's own disc the verdict rests on; null when no slower one is known from this hand. */
  evidence: Readonly<{ disc: string; averageDay_m: number }> | null;
  /** Against that disc: metres longer (less than 0: shorter), and metres further off the line. Null when ready, or nothing to compare. */
  cost: Readonly<{ longer_m: number; wider_m: number }> | null;
}>;

export type Readiness = ReadinessFacts &
  Readonly<{
    /** Why, in the player's own numbers; what it costs when too fast. */
    text: string;
  }>;

type Thrown = Pick<FittedThrow, 'discId' | 'disc' | 'discSpeed' | 'hand' | 'basis' | 'averageDay_m' | 'finish_m'>;

/**
 * Step by step to faster discs. Common practice, no source: a first driver once a midrange goes 200 ft; speeds 8–10 once a
 * fairway driver goes 300–325 ft; high-speed drivers once those go 375–400 ft. The lower figure opens the gate.
 */
const GATES: readonly Readonly<{ opens: (speed: number) => boolean } & Gate>[] = [
  {
    opens: speed => speed > 10,
    what: 'a control driver (speed 8 to 10)',
    from_m: 114,
    to_m: 122,
    feet: '375 to 400 ft',
  },
  { opens: speed => speed >= 8, what: 'a fairway driver', from_m: 91, to_m: 99, feet: '300 to 325 ft' },
  { opens: speed => speed >= 6.5, what: 'a midrange', from_m: 61, to_m: 61, feet: '200 ft' },
];
const METRES: UnitsChoice = { length: 'm', speed: 'mps' };
const NOTHING_M = 0.5;

/**
 * Whether a disc suits the arm yet, judged by how far the player's slower discs go from the same hand.
 * @param bag - the player's fitted throws
 */
export function readiness(bag: readonly Thrown[], thrown: Thrown): Readiness {
  const facts = factsOf(bag, thrown);
  return { ...facts, text: readinessText(facts, METRES) };
}

/** True for discs fast enough to be too fast for somebody. */
export function needsAnArm(discSpeed: number): boolean {
  return GATES.some(({ opens }) => opens(discSpeed));
}

function factsOf(bag: readonly Thrown[], thrown: Thrown): ReadinessFacts {
  const { disc } = thrown;
  const found = GATES.find(({ opens }) => opens(thrown.discSpeed));
  if (found === undefined) return { verdict: 'ready', disc, gate: null, evidence: null, cost: null };
  const { opens, ...gate } = found;
  const sameHand = bag.filter(t => t.hand === thrown.hand);
  const slower = sameHand.filter(t => !opens(t.discSpeed) && t.discId !== thrown.discId);
  const evidence =
    bestEvidence(slower.filter(t => t.basis !== 'predicted')) ??
    (thrown.basis === 'predicted' ? bestEvidence(slower) : thrown);
  if (evidence === null) return { verdict: 'too fast for now', disc, gate, evidence: null, cost: null };
  const isReady = evidence.averageDay_m >= gate.from_m;
  return {
    verdict: isReady ? 'ready' : 'too fast for now',
    disc,
    gate,
    evidence: { disc: evidence.disc, averageDay_m: evidence.averageDay_m },
    cost: isReady || evidence.discId === thrown.discId ? null : costAgainst(evidence, thrown),
  };
}

/** The longest of the discs; null without any. */
function bestEvidence(discs: readonly Thrown[]): Thrown | null {
  return discs.reduce<Thrown | null>(
    (best, t) => (best === null || t.averageDay_m > best.averageDay_m ? t : best),
    null,
  );
}

function costAgainst(slower: Thrown, fast: Thrown): ReadinessFacts['cost'] {
  return {
    longer_m: fast.averageDay_m - slower.averageDay_m,
    wider_m: Math.abs(fast.finish_m) - Math.abs(slower.finish_m),
  };
}

/** The verdict in a sentence without its full stop, lengths in the reader's units. */
export function readinessText({ verdict, disc, gate, evidence, cost }: ReadinessFacts, units: UnitsChoice): string {
  if (gate === null) return `${disc} suits any arm`;
  if (evidence === null) return `${disc} is too fast for now: measure a slower disc first`;
  const length = (length_m: number) => formatLength(length_m, units, 0);
  const metres = gate.from_m === gate.to_m ? `${gate.from_m} m` : `${gate.from_m} to ${gate.to_m} m`;
  const range = units.length === 'ft' ? gate.feet : `${metres} (${gate.feet})`;
  const reach = `${evidence.disc} goes ${length(evidence.averageDay_m)}`;
  if (verdict === 'ready') return `${reach}; ${range} with ${gate.what} opens this disc (common practice)`;
  return `${disc} is too fast for now: ${reach}, common practice is to wait until ${gate.what} goes ${range}${cost === null ? '' : costText(cost, evidence.disc, length)}`;
}

function costText(
  { longer_m, wider_m }: NonNullable<ReadinessFacts['cost']>,
  slower: string,
  length: (length_m: number) => string,
): string {
  const distance =
    Math.abs(longer_m) < NOTHING_M
      ? `no farther than ${slower}`
      : longer_m < 0
        ? `${length(-longer_m)} shorter than ${slower}`
        : `only ${length(longer_m)} longer than ${slower}`;
  return `; it lands ${distance}${wider_m >= NOTHING_M ? ` and ${length(wider_m)} further off the line` : ''}`;
}
