/** What one of these things is called, where it is not the plural without its s. */
const SINGULAR: Readonly<Record<string, string>> = {
  'woods and scrub': 'wood or scrub',
  'tree rows and hedges': 'tree row or hedge',
  'walls, fences and buildings': 'wall, fence or building',
  'out-of-bounds': 'out-of-bounds',
  'places where discs get lost': 'place where discs get lost',
  'places where people pass': 'place where people pass',
};

/**
 * "3 tees", "1 wood or scrub".
 * @param what - the things in the plural, as a course's counts name them
 */
export const countWords = ({ count, what }: Readonly<{ count: number; what: string }>): string =>
  `${count} ${count === 1 ? (SINGULAR[what] ?? what.replace(/s$/, '')) : what}`;
