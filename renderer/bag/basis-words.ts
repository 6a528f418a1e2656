/** How a throw is known, in words. */
export const BASIS_WORDS = {
  measured: 'measured',
  borrowed: 'from your other discs',
  predicted: 'a guess: never measured',
} as const;
