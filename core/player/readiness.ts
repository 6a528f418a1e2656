import type { FittedThrow } from './fitted-player.ts';

export type Readiness = Readonly<{
  verdict: 'ready' | 'too fast for now';
  /** Why, in the player's own numbers; what it costs when too fast. */
  text: string;
}>;

type Thrown = Pick<FittedThrow, 'discId' | 'disc' | 'discSpeed' | 'hand' | 'basis' | 'averageDay_m' | 'finish_m'>;

/**
 * Step by step to faster discs. Common practice, no source: a first driver once a midrange goes 200 ft; speeds 8–10 once a
 * fairway driver goes 300–325 ft; high-speed drivers once those go 375–400 ft. The lower figure opens the gate.
 */
const GATES = [
  {
    opens: (speed: number) => speed > 10,
    what: 'a control driver (speed 8 to 10)',
    needs_m: 114,
    range: '114 to 122 m (375 to 400 ft)',
  },
  { opens: (speed: number) => speed >= 8, what: 'a fairway driver', needs_m: 91, range: '91 to 99 m (300 to 325 ft)' },
  { opens: (speed: number) => speed >= 6.5, what: 'a midrange', needs_m: 61, range: '61 m (200 ft)' },
] as const;

/**
 * Whether a disc suits the arm yet, judged by how far the player's slower discs go from the same hand.
 * @param bag - the player's fitted throws
 */
export function readiness(bag: readonly Thrown[], thrown: Thrown): Readiness {
  const gate = GATES.find(({ opens }) => opens(thrown.discSpeed));
  if (gate === undefined) return { verdict: 'ready', text: `${thrown.disc} suits any arm` };
  const sameHand = bag.filter(t => t.hand === thrown.hand);
  const slower = sameHand.filter(t => !gate.opens(t.discSpeed) && t.discId !== thrown.discId);
  const evidence =
    bestEvidence(slower.filter(t => t.basis !== 'predicted')) ??
    (thrown.basis === 'predicted' ? bestEvidence(slower) : thrown);
  if (evidence === null)
    return { verdict: 'too fast for now', text: `${thrown.disc} is too fast for now: measure a slower disc first` };
  const reach = `${evidence.disc} goes ${evidence.averageDay_m.toFixed(0)} m`;
  if (evidence.averageDay_m >= gate.needs_m)
    return { verdict: 'ready', text: `${reach}; ${gate.range} with ${gate.what} opens this disc (common practice)` };
  return {
    verdict: 'too fast for now',
    text: `${thrown.disc} is too fast for now: ${reach}, common practice is to wait until ${gate.what} goes ${gate.range}${cost(evidence, thrown)}`,
  };
}

/** The longest of the discs; null without any. */
function bestEvidence(discs: readonly Thrown[]): Thrown | null {
  return discs.reduce<Thrown | null>(
    (best, t) => (best === null || t.averageDay_m > best.averageDay_m ? t : best),
    null,
  );
}

function cost(slower: Thrown, fast: Thrown): string {
  if (slower.discId === fast.discId) return '';
  const gain = fast.averageDay_m - slower.averageDay_m;
  const side = Math.abs(fast.finish_m) - Math.abs(slower.finish_m);
  const distance = gain < 0.5 ? `${Math.abs(gain).toFixed(0)} m shorter` : `only ${gain.toFixed(0)} m longer`;
  return `; it lands ${distance} than ${slower.disc}${side >= 0.5 ? ` and ${side.toFixed(0)} m further off the line` : ''}`;
}
