/** Items that have no names of their own, each with its place in the list as its key: their order never changes. */
export const keyed = <T>(items: readonly T[]): readonly Readonly<{ key: string; item: T }>[] =>
  items.map((item, place) => ({ key: `${place}`, item }));
