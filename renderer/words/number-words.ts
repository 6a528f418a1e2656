/** A cost in throws for the eye; two places at most, for no plan is surer than that. */
export function costWords(regret: number, tie: boolean): string {
  if (tie || regret < 0.005) return 'no worse';
  return `+${regret.toFixed(regret < 0.095 ? 2 : 1)} throws`;
}

/** Expected throws with one place. */
export const throwsWords = (expectedThrows: number): string => expectedThrows.toFixed(1);

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "+3", "even", "−2" against par or another figure: the difference of the two as they are written. */
export function againstPar(expectedThrows: number, par: number): string {
  const over = Number(throwsWords(expectedThrows)) - Number(throwsWords(par));
  if (Math.abs(over) < 0.05) return 'even';
  return `${over > 0 ? '+' : '−'}${Math.abs(over).toFixed(1)}`;
}
