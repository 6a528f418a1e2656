/** A chance of a penalty below this is not worth a word. */
export const LEAST_PENALTY = 0.005;
