import type { Feature } from 'geojson';
import type { LonLat } from '../course.ts';
import { groundDistance_m } from '../ground-distance.ts';
import { positionsOf } from '../positions.ts';
import { type NameReading, readName } from './read-name.ts';
import { ROLE_WORDS, type Role, rolesOf, type Shape, shapeOf } from './role.ts';

/** What the user takes a place or line for. `label` names one of several tees or baskets of a hole. */
export type RoleChoice = Readonly<{ role: Role; ref?: string; label?: string; par?: number }>;
/** A choice proposed, how sure it is, and why in words. */
type Proposal = RoleChoice & Readonly<{ sure: boolean; why: string }>;
/** A thing whose role the file does not say; `index` counts in the features. */
export type LooseItem = Readonly<{ index: number; shape: Shape; name: string; folder?: string; proposal: Proposal }>;

/** How near a line's ends must lie to a tee and its basket to be proposed as their line of play. */
const lineEnds_m = 20;

/**
 * Proposes what each place and line is, by its name, its folder, and, of lines, where they begin and end. Nothing is sure but
 * what a word says.
 * @param features - all with a geometry
 * @param loose - indices of those whose role is to be proposed
 */
export function proposeRoles(features: readonly Feature[], loose: readonly number[]): LooseItem[] {
  const read = loose.map(index => {
    const properties = features[index]!.properties ?? {};
    const name = typeof properties.name === 'string' ? properties.name : '';
    const folder = typeof properties['@folder'] === 'string' ? properties['@folder'] : undefined;
    return { index, shape: shapeOf(features[index]!.geometry), name, folder, reading: readName(name) };
  });
  const lettered = letteredRefs(read.map(({ reading }) => reading));
  const items = read.map(({ index, shape, name, folder, reading }) => ({
    index,
    shape,
    name,
    ...(folder === undefined ? {} : { folder }),
    proposal: propose(shape, name, reading, folder, lettered),
  }));
  return items.map(item =>
    item.shape === 'line' && item.proposal.role === 'leave'
      ? { ...item, proposal: byEnds(features, items, item) ?? item.proposal }
      : item,
  );
}

/** Refs such as 3A that both a tee and a basket carry: there the letter is the hole's. */
function letteredRefs(readings: readonly NameReading[]): ReadonlySet<string> {
  const of = (role: Role) =>
    new Set(readings.flatMap(({ ref, letter, role: own }) => (own === role && letter ? [`${ref}${letter}`] : [])));
  const baskets = of('basket');
  return new Set([...of('tee')].filter(ref => baskets.has(ref)));
}

function propose(
  shape: Shape,
  name: string,
  own: NameReading,
  folder: string | undefined,
  lettered: ReadonlySet<string>,
): Proposal {
  if (shape === 'mixed') return leave('is made of parts of several kinds: split it in the program it comes from');
  const around = folder === undefined ? undefined : readName(folder.split(' / ').at(-1)!);
  const ref = own.ref ?? around?.ref;
  const isLettered = own.letter !== undefined && lettered.has(`${ref}${own.letter}`);
  const label = [isLettered ? undefined : own.letter, own.label].filter(part => part !== undefined).join(' ');
  const hole = {
    ...(ref === undefined ? {} : { ref: isLettered ? `${ref}${own.letter}` : ref }),
    ...(own.par === undefined ? {} : { par: own.par }),
  };
  const facts = { ...hole, ...(label === '' ? {} : { label }) };
  if (own.contradicts) return { ...leave(`"${name}" names two things at once`), ...hole };
  const role =
    own.role ?? around?.role ?? (shape === 'line' && (own.isHole || isBareNumber(own)) ? 'lineOfPlay' : undefined);
  if (role === undefined)
    return {
      ...leave(
        ref === undefined
          ? name === ''
            ? 'has no name'
            : `"${name}" says nothing known here`
          : `says which hole (${ref}) but not whether it is its tee or its basket`,
      ),
      ...hole,
    };
  const fitted = roleInShape(role, shape);
  if (fitted === undefined) return { ...leave(`a ${ROLE_WORDS[role]} cannot be drawn as ${SHAPES[shape]}`), ...hole };
  const isComplete = !['tee', 'basket', 'bend', 'lineOfPlay'].includes(fitted) || ref !== undefined;
  if (!isComplete) return { ...leave(`is a ${ROLE_WORDS[fitted]}, but its name has no hole's number`), ...hole };
  const fromFolder = own.role === undefined && around?.role !== undefined;
  return {
    role: fitted,
    ...(OF_A_HOLE.has(fitted) ? facts : { label: name }),
    sure: !own.byLetter && !fromFolder && (own.role !== undefined || own.isHole),
    why: fromFolder
      ? `lies in the folder "${folder}"`
      : own.byLetter
        ? 'by the letter beside its number'
        : `by its name`,
  };
}

/** The others count wherever they lie, and keep their whole name. */
const OF_A_HOLE: ReadonlySet<Role> = new Set([
  ...(['tee', 'basket', 'bend', 'lineOfPlay', 'dropZone', 'mandoLeft', 'mandoRight', 'fairway'] as const),
]);

const SHAPES: Readonly<Record<Shape, string>> = {
  point: 'a point',
  line: 'a line',
  area: 'an area',
  mixed: 'a mixture',
};
const isBareNumber = ({ ref, label, role }: NameReading) =>
  ref !== undefined && label === undefined && role === undefined;
const leave = (why: string): Proposal => ({ role: 'leave', sure: false, why });

/** The role as this shape can have it. */
function roleInShape(role: Role, shape: Shape): Role | undefined {
  if (rolesOf(shape).includes(role)) return role;
  if (shape === 'line' && role === 'fairway') return 'lineOfPlay';
  if (shape === 'line' && role === 'wood') return 'treeRow';
  if (shape === 'area' && role === 'tree') return 'wood';
  return undefined;
}

/** A line that begins at a proposed tee and ends at the basket of the same hole, or the other way round. */
function byEnds(
  features: readonly Feature[],
  items: readonly LooseItem[],
  { index }: Pick<LooseItem, 'index'>,
): Proposal | undefined {
  const line = positionsOf(features[index]!.geometry) as unknown as readonly LonLat[];
  if (line.length < 2) return undefined;
  const near = (role: Role, end: LonLat) =>
    items
      .filter(item => item.proposal.role === role && item.shape === 'point')
      .map(item => ({
        ref: item.proposal.ref!,
        distance_m: groundDistance_m(positionsOf(features[item.index]!.geometry)[0] as unknown as LonLat, end),
      }))
      .filter(({ distance_m }) => distance_m <= lineEnds_m)
      .sort((a, b) => a.distance_m - b.distance_m);
  for (const [from, to] of [
    [line[0]!, line.at(-1)!],
    [line.at(-1)!, line[0]!],
  ] as const) {
    const tee = near('tee', from).find(({ ref }) => near('basket', to).some(basket => basket.ref === ref));
    if (tee !== undefined)
      return {
        role: 'lineOfPlay',
        ref: tee.ref,
        sure: false,
        why: `runs between tee ${tee.ref} and basket ${tee.ref}`,
      };
  }
  return undefined;
}
