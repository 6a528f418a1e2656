/** Lengths as reasons say them. */
export const distance = (m: number): string => (Math.abs(m) < 10 ? `${m.toFixed(1)} m` : `${Math.round(m)} m`);

/** How much of the difference one thing makes. @param share - of the whole; above 1 counts as all of it */
export function shareWords(share: number): string {
  const [, words] = SHARES.find(([from]) => share >= from) ?? SHARES.at(-1)!;
  return `that is ${words} of the difference`;
}

const SHARES = [
  [0.9, 'all'],
  [0.65, 'most'],
  [0.4, 'about half'],
  [0, 'part'],
] as const;

/**
 * What something costs the other throw and the choice: "the wind costs it 0.05 throws, the choice only 0.02".
 * @param other, chosen - throws; negative where it helps
 */
export function bothInThrows(what: string, other: number, chosen: number): string {
  const size = (throws: number) => Math.abs(throws).toFixed(2);
  const isNone = (throws: number) => Math.abs(throws) < 0.005;
  if (isNone(other))
    return `${what} ${chosen < 0 ? 'saves' : 'costs'} the choice ${size(chosen)} throws and leaves it as it is`;
  const it = `${what} ${other < 0 ? 'saves' : 'costs'} it ${size(other)} throws`;
  if (isNone(chosen)) return `${it} and leaves the choice as it is`;
  if (other < 0 !== chosen < 0) return `${it} and ${chosen < 0 ? 'saves' : 'costs'} the choice ${size(chosen)}`;
  if (other < 0)
    return `${what} helps the choice ${chosen < other ? 'more' : 'less'}: ${size(chosen)} throws against ${size(other)}`;
  return `${it}, the choice ${chosen < other ? 'only ' : ''}${size(chosen)}`;
}
