import type { Feature } from 'geojson';
import type { Problem } from '../../core/units/result.ts';
import type { LeftOut } from './osm-element.ts';

/** Named places and lines of a file that says nothing of tees and baskets: what each is, is for the user to confirm. */
export type LooseMap = Readonly<{
  /** The file's own name for the whole, when it has one. */
  name?: string;
  /** `properties` hold `name`, `description`, data the file attaches, and from where it is (`@from`, `@folder`). */
  features: readonly Feature[];
  leftOut: readonly LeftOut[];
  assumptions: readonly Problem[];
  /** What the heights of the file, where it has any, are measured from. */
  heightsFrom: 'sea level' | null;
}>;

/** Text of a file as one line of at most so many characters. */
export function shortText(value: unknown, most: number): string | undefined {
  if (typeof value !== 'string' && typeof value !== 'number') return undefined;
  const line = String(value).replace(/\s+/g, ' ').trim();
  return line === '' ? undefined : Array.from(line).slice(0, most).join('');
}
