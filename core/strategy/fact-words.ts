/** Lengths as reasons say them. */
export const distance = (m: number): string => (Math.abs(m) < 10 ? `${m.toFixed(1)} m` : `${Math.round(m)} m`);
