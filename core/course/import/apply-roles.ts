import type { Feature, Geometry, LineString, Position } from 'geojson';
import type { Problem, Result } from '../../units/result.ts';
import { refKey } from '../hole-ref.ts';
import type { LooseItem, RoleChoice } from './propose-roles.ts';
import { needsRef, ROLE_WORDS, rolesOf, tagsOf } from './role.ts';
import { simplifyLine } from './simplify-line.ts';

/** A walked track wanders; corners nearer to its line than this are the walker's, not the hole's. */
const trackTolerance_m = 4;
const longestRef = 10;

export type AppliedRoles = Readonly<{
  features: readonly Feature[];
  /** What became what, for the report. */
  mapped: readonly Readonly<{ item: string; to: string }>[];
  assumptions: readonly Problem[];
}>;

/**
 * The features with the roles the user chose written as tags. What is left out goes; what never was in question stays as it is.
 * @param choices - by item index; an item without one is left out
 * @returns problems with the item's name as path: a role its shape cannot have, a missing ref, a bend without a hole
 */
export function applyRoles(
  features: readonly Feature[],
  items: readonly LooseItem[],
  choices: ReadonlyMap<number, RoleChoice>,
): Result<AppliedRoles> {
  const problems: Problem[] = [];
  const assumptions: Problem[] = [];
  const mapped: { item: string; to: string }[] = [];
  const chosen = new Map<number, RoleChoice>();
  for (const item of items) {
    const choice = choices.get(item.index);
    if (choice === undefined || choice.role === 'leave') continue;
    const fault = faultOf(item, choice);
    if (fault === undefined) chosen.set(item.index, choice);
    else problems.push({ path: nameOf(item), message: fault });
  }
  const loose = new Map(items.map(item => [item.index, item]));
  const bends: { item: LooseItem; ref: string; position: Position }[] = [];
  const out = features.flatMap((feature, index): Feature[] => {
    const item = loose.get(index);
    if (item === undefined) return [feature];
    const choice = chosen.get(index);
    if (choice === undefined) return [];
    mapped.push({ item: nameOf(item), to: toWords(choice) });
    if (choice.role === 'bend') {
      bends.push({
        item,
        ref: refKey(choice.ref!),
        position: (feature.geometry as { coordinates: Position }).coordinates,
      });
      return [];
    }
    return [tagged(feature, item, choice, assumptions)];
  });
  const all = [...out, ...linesThrough(bends, out, problems)];
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { features: all.map(feature => withParOfSites(feature, chosen)), mapped, assumptions } };
}

/** What to call an item in messages: its name, and its folder, as several folders may hold the same names. */
function nameOf({ name, shape, index, folder }: LooseItem): string {
  const own = name === '' ? `${shape === 'mixed' ? 'thing' : shape} ${index + 1}` : `"${name}"`;
  return folder === undefined ? own : `${own} in ${folder}`;
}

/** "tee of hole 3, long". */
export function toWords({ role, ref, label }: RoleChoice): string {
  if (role === 'leave') return ROLE_WORDS.leave;
  const of = ref === undefined || ref === '' ? '' : ` of hole ${ref}`;
  return `${ROLE_WORDS[role]}${of}${label === undefined || label === '' ? '' : `, ${label}`}`;
}

function faultOf(item: LooseItem, { role, ref }: RoleChoice): string | undefined {
  if (!rolesOf(item.shape).includes(role)) {
    const can = rolesOf(item.shape).map(other => ROLE_WORDS[other]);
    return `cannot be a ${ROLE_WORDS[role]}: choose ${can.join(', ')}`;
  }
  const text = ref?.trim() ?? '';
  if (needsRef(role) && text === '') return `is a ${ROLE_WORDS[role]} of no hole: write the hole's number`;
  if (text.length > longestRef || text.includes(';'))
    return `"${text.slice(0, 40)}" is no hole: write its number, such as 7 or 10A`;
  return undefined;
}

function tagged(
  feature: Feature,
  item: LooseItem,
  { role, ref, label, par }: RoleChoice,
  assumptions: Problem[],
): Feature {
  const { name: _, ...rest } = feature.properties ?? {};
  const geometry = role === 'lineOfPlay' ? oneLine(feature, item, assumptions) : feature.geometry;
  return {
    ...feature,
    properties: {
      ...rest,
      ...tagsOf(role, item.shape),
      ...(ref === undefined || ref.trim() === '' ? {} : { ref: ref.trim() }),
      ...(label === undefined || label.trim() === '' ? {} : { name: label.trim() }),
      ...(par === undefined ? {} : { par: String(par) }),
      ...(item.name === '' ? {} : { '@name': item.name }),
    },
    geometry,
  };
}

/** Parts of a track, broken where reception was lost, joined; a recorded track straightened. */
function oneLine(feature: Feature, item: LooseItem, assumptions: Problem[]): Geometry {
  const geometry = feature.geometry;
  const parts = geometry.type === 'MultiLineString' ? geometry.coordinates : [(geometry as LineString).coordinates];
  if (parts.length > 1)
    assumptions.push({ path: nameOf(item), message: `is drawn in ${parts.length} parts: they are joined end to end` });
  const line = parts.flat();
  if (feature.properties?.['@from'] !== 'track') return { type: 'LineString', coordinates: line };
  const simple = simplifyLine(line, trackTolerance_m);
  if (simple.length < line.length)
    assumptions.push({
      path: nameOf(item),
      message: `is a recorded track of ${line.length} places: straightened to ${simple.length} corners, within ${trackTolerance_m} m of it`,
    });
  return { type: 'LineString', coordinates: simple };
}

/** A drawn hole reads its par from its line; names of tees and baskets may be where it stands. */
function withParOfSites(feature: Feature, chosen: ReadonlyMap<number, RoleChoice>): Feature {
  const { disc_golf, ref, par } = feature.properties ?? {};
  if (disc_golf !== 'hole' || par !== undefined || typeof ref !== 'string') return feature;
  const known = [...chosen.values()].find(
    choice => choice.par !== undefined && refKey(choice.ref ?? '') === refKey(ref),
  );
  return known === undefined ? feature : { ...feature, properties: { ...feature.properties, par: String(known.par) } };
}

/** Lines of play made from a tee, bends in the order of the file, and a basket. */
function linesThrough(
  bends: readonly Readonly<{ item: LooseItem; ref: string; position: Position }>[],
  features: readonly Feature[],
  problems: Problem[],
): Feature[] {
  const find = (kind: string, ref: string) =>
    features.find(({ properties, geometry }) => {
      const isKind = properties?.disc_golf === kind && (kind === 'hole' || geometry.type === 'Point');
      return isKind && typeof properties.ref === 'string' && refKey(properties.ref) === ref;
    });
  return [...Map.groupBy(bends, ({ ref }) => ref)].flatMap(([ref, group]): Feature[] => {
    const [tee, basket, line] = [find('tee', ref), find('basket', ref), find('hole', ref)];
    const path = nameOf(group[0]!.item);
    if (line !== undefined)
      problems.push({ path, message: `hole ${ref} has a line of play, which knows its bends: leave the bend out` });
    else if (tee === undefined || basket === undefined)
      problems.push({
        path,
        message: `is a bend of hole ${ref}, which has no ${tee === undefined ? 'tee' : 'basket'}: name one, or leave the bend out`,
      });
    else {
      const ends = [tee, basket].map(({ geometry }) => (geometry as { coordinates: Position }).coordinates);
      const coordinates = [ends[0]!, ...group.map(({ position }) => position), ends[1]!];
      return [
        {
          type: 'Feature',
          properties: { disc_golf: 'hole', ref: String(tee.properties!.ref), '@from': 'bends' },
          geometry: { type: 'LineString', coordinates },
        },
      ];
    }
    return [];
  });
}
