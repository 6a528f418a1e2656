/** "+0.12", "−1.00", "0": two places, for no review is surer. */
export function signed(value: number): string {
  const size = Math.abs(value).toFixed(2);
  if (Number(size) === 0) return '0';
  return `${value < 0 ? '−' : '+'}${size}`;
}

/** A choice's cost: nothing is a dash; "≥" where only part of the throw is known. */
export function choiceWords(cost: number | null, isBound = false): string {
  if (cost === null) return '?';
  if (cost === 0) return '–';
  return `${isBound ? '≥ ' : ''}${cost.toFixed(2)}`;
}

export const PHASE_WORDS = {
  tee: 'from the tee',
  approach: 'approach',
  c2: '10 to 20 m',
  c1: 'inside 10 m',
} as const;

export const plural = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** "won 0.12", "lost 1.00", "even". */
export function wonWords(gain: number): string {
  const size = Math.abs(gain).toFixed(2);
  if (Number(size) === 0) return 'even';
  return `${gain < 0 ? 'lost' : 'won'} ${size}`;
}
