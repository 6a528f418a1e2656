/** A map that forgets what was used longest ago. */
export type Lru<V> = Readonly<{
  get(key: string): V | undefined;
  set(key: string, value: V): void;
  remove(key: string): void;
}>;

export function lru<V>(most: number): Lru<V> {
  const kept = new Map<string, V>();
  const set = (key: string, value: V) => {
    kept.delete(key);
    kept.set(key, value);
    for (const oldest of kept.keys()) if (kept.size > most) kept.delete(oldest);
  };
  return {
    get: key => {
      const value = kept.get(key);
      if (value !== undefined) set(key, value);
      return value;
    },
    set,
    remove: key => {
      kept.delete(key);
    },
  };
}
