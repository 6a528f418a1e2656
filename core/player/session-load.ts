import type { FieldThrow } from './player-file.ts';

/** Throws of one day from which rest is urged (assumed, no source: no study counts practice throws). */
const MANY_THROWS = 60;
/** Fewer for forehands, which load the elbow more. */
const MANY_FOREHANDS = 25;

/**
 * A word on the load of a session, when it has grown large; null before.
 * @source that overuse hurts elbow, shoulder, back and knee, and forehand throwers' elbows more often: Nelson et al.,
 * Orthopaedic Journal of Sports Medicine 3(6), 2015; the numbers of throws are assumed
 */
export function loadCaution({ throws }: Readonly<{ throws: readonly Pick<FieldThrow, 'hand'>[] }>): string | null {
  const forehands = throws.filter(({ hand }) => hand === 'forehand').length;
  const stop = 'Stop at the first pain; for pain that stays, see a doctor or physiotherapist.';
  if (forehands >= MANY_FOREHANDS)
    return `${forehands} forehands in one session: they load the elbow more. Rest, or throw something else. ${stop}`;
  if (throws.length >= MANY_THROWS)
    return `${throws.length} throws in one session: tired arms slip and hurt, and the numbers sag. Rest, or end here. ${stop}`;
  return null;
}
