type Tags = Readonly<Record<string, string>>;

/** What OpenStreetMap is made of, once read and checked; `tags` may be empty. */
type OsmNode = Readonly<{ type: 'node'; id: number; lat: number; lon: number; tags: Tags }>;
export type OsmWay = Readonly<{ type: 'way'; id: number; nodes: readonly number[]; tags: Tags }>;
export type OsmMember = Readonly<{ type: 'node' | 'way' | 'relation'; ref: number; role: string }>;
export type OsmRelation = Readonly<{ type: 'relation'; id: number; members: readonly OsmMember[]; tags: Tags }>;
export type OsmElement = OsmNode | OsmWay | OsmRelation;

/** Elements of a file, and what was left out of it by reason. */
export type OsmData = Readonly<{ elements: readonly OsmElement[]; leftOut: readonly LeftOut[] }>;
export type LeftOut = Readonly<{ what: string; count: number; why: string }>;

/** Counts what is left out, a line a reason. */
export function leftOutCounter() {
  const counts = new Map<string, { what: string; count: number; why: string }>();
  return {
    add: (what: string, why: string, count = 1) => {
      if (count === 0) return;
      const key = `${what}\n${why}`;
      const line = counts.get(key);
      if (line === undefined) counts.set(key, { what, count, why });
      else line.count += count;
    },
    lines: (): LeftOut[] => [...counts.values()],
  };
}

/** A whole number within what JavaScript counts exactly; editors give new things negative ids. */
export function osmId(value: unknown): number | undefined {
  const id = typeof value === 'string' && /^-?\d{1,16}$/.test(value) ? Number(value) : value;
  return typeof id === 'number' && Number.isSafeInteger(id) ? id : undefined;
}
