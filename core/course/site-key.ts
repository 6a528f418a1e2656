import type { Site } from './course.ts';

/**
 * What a layout calls one of a hole's tees or baskets: its name, or `#2` (the second of the hole, in file order) when it
 * has none or shares it.
 * @param sites - the tees, or the baskets, of the hole; `site` among them
 */
export function siteKey(site: Site, sites: readonly Site[]): string {
  const name = site.name?.trim() ?? '';
  const isOnlyOne = name !== '' && sites.filter(other => sameWord(other.name ?? '', name)).length === 1;
  return isOnlyOne && !isNumber(name) ? name : `#${sites.indexOf(site) + 1}`;
}

/** The tee or basket a layout calls so; letter case and outer blanks do not count. */
export function findSite(sites: readonly Site[], key: string): Site | undefined {
  const number = /^#\s*(\d+)$/.exec(key.trim());
  if (number !== null) return sites[Number(number[1]) - 1];
  const named = sites.filter(site => sameWord(site.name ?? '', key));
  return named.length === 1 ? named[0] : undefined;
}

const isNumber = (name: string): boolean => /^#\s*\d+$/.test(name);
const sameWord = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
