/** "1 throw", "3 throws". @param what - one of them, with a regular plural */
export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
