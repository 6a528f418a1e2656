import type { FeatureCollection } from 'geojson';
import { z } from 'zod';
import type { Problem } from '../units/result.ts';
import type { CourseHole, Layout, LayoutHole, Site } from './course.ts';
import { refKey } from './hole-ref.ts';
import { limits } from './limits.ts';
import type { Notes } from './notes.ts';
import { problemPath } from './problem-path.ts';
import { findSite, siteKey } from './site-key.ts';
import { type TaggedFeature, tagText, tagWord } from './tags.ts';

const word = z
  .union([z.string(), z.number()], { error: () => 'must be text, such as "1" or "long"' })
  .transform(value => String(value).trim())
  .refine(text => text !== '', 'is empty: write a word, or leave it out');

/** One hole of a layout as the file has it. Members it does not name pass through. */
const LayoutHoleSchema = z.looseObject(
  {
    ref: word.describe('the hole'),
    tee: word.optional().describe('name of the tee, or #2 for the second of the hole'),
    basket: word.optional(),
    par: z
      .int({ error: () => 'par must be a whole number' })
      .min(limits.par.least, { error: () => parRange })
      .max(limits.par.most, { error: () => parRange })
      .optional()
      .describe('when this layout plays it to another par'),
  },
  { error: () => 'every hole of a layout is an object such as {"ref": "1", "tee": "long", "basket": "A"}' },
);
const LayoutHolesSchema = z
  .array(LayoutHoleSchema, { error: () => wanted })
  .min(1, { error: () => 'the layout has no hole: list at least one' });

const parRange = `par must be a whole number from ${limits.par.least} to ${limits.par.most}`;
const wanted =
  'must list the holes in order of play, such as [{"ref": "1", "tee": "long", "basket": "A"}, {"ref": "2"}]';

/** `disc_golf=layout`: no thing on the ground, so it needs no geometry. */
export function isLayout({ tags }: TaggedFeature): boolean {
  return tagWord(tags, 'disc_golf') === 'layout';
}

/** The layouts of the file, in file order; whatever they name must be there. */
export function readLayouts(
  features: readonly TaggedFeature[],
  source: FeatureCollection,
  holes: readonly CourseHole[],
  notes: Notes,
): Layout[] {
  const layouts: Layout[] = [];
  for (const feature of features.filter(isLayout)) {
    const name = tagText(feature.tags, 'name');
    if (name === undefined) {
      notes.problems.push({ path: feature.path, message: 'the layout has no name: give it one, such as "Short tees"' });
      continue;
    }
    if (layouts.some(other => sameName(other.name, name)))
      notes.problems.push({ path: feature.path, message: `a second layout is called "${name}": give it another name` });
    const { at, list } = holesProperty(feature, source);
    const parsed = LayoutHolesSchema.safeParse(list);
    if (!parsed.success) {
      notes.problems.push(
        ...parsed.error.issues.map(issue => ({
          path: `${at}${issue.path.length === 0 ? '' : problemPath(['', ...issue.path]).replace(/^\./, '')}`,
          message: issue.message,
        })),
      );
      continue;
    }
    const entries = parsed.data.map(({ ref, tee, basket, par }) => ({
      ref,
      ...(tee === undefined ? {} : { tee }),
      ...(basket === undefined ? {} : { basket }),
      ...(par === undefined ? {} : { par }),
    }));
    // Where holes could not be assembled, their own problems say so; a layout's would only repeat them.
    if (notes.problems.length === 0) notes.problems.push(...namedButMissing(name, entries, holes, at));
    layouts.push({ name, path: feature.path, featureIndex: feature.index, holes: entries });
  }
  return layouts;
}

export const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** `holes` beside the other tags; geodata programs that keep plain values only turn the list into its JSON text. */
function holesProperty(feature: TaggedFeature, source: FeatureCollection): { at: string; list: unknown } {
  const properties: Record<string, unknown> = source.features[feature.index]!.properties ?? {};
  const isNested = !('holes' in properties) && typeof properties.tags === 'object' && properties.tags !== null;
  const holder = isNested ? (properties.tags as Record<string, unknown>) : properties;
  const at = `${feature.path}.properties${isNested ? '.tags' : ''}.holes`;
  if (typeof holder.holes !== 'string') return { at, list: holder.holes };
  try {
    return { at, list: JSON.parse(holder.holes) as unknown };
  } catch {
    return { at, list: holder.holes };
  }
}

function namedButMissing(
  name: string,
  entries: readonly LayoutHole[],
  holes: readonly CourseHole[],
  at: string,
): Problem[] {
  const seen = new Set<string>();
  return entries.flatMap(({ ref, tee, basket }, i) => {
    const path = `${at}[${i}]`;
    const hole = holes.find(hole => refKey(hole.ref) === refKey(ref));
    if (hole === undefined) {
      const refs = holes.map(hole => hole.ref).join(', ');
      return [{ path: `${path}.ref`, message: `layout "${name}": the course has no hole "${ref}"; it has ${refs}` }];
    }
    if (seen.has(refKey(ref)))
      return [
        {
          path: `${path}.ref`,
          message: `layout "${name}" plays hole ${ref} twice: give its second tee or basket a hole of its own (ref "${ref};10" on what both share)`,
        },
      ];
    seen.add(refKey(ref));
    return [
      ...missingSite(hole.tees, tee, `${path}.tee`, `layout "${name}": hole ${ref} has no tee`),
      ...missingSite(hole.baskets, basket, `${path}.basket`, `layout "${name}": hole ${ref} has no basket`),
    ];
  });
}

function missingSite(sites: readonly Site[], key: string | undefined, path: string, what: string): Problem[] {
  if (key === undefined || findSite(sites, key) !== undefined) return [];
  const keys = sites.map(site => siteKey(site, sites)).join(', ');
  return [{ path, message: `${what} "${key}"; it has ${keys}` }];
}
