import type { ShowUnits } from '../words/use-units.ts';
import type { Update } from './use-course-file.ts';

type Difference = Update['differences'][number];
type HoleChange = Update['holes'][number];
type Lengths = Pick<ShowUnits, 'length'>;

/** What a thing is called where its tag is no word for it. */
const WORDS: Readonly<Record<string, string>> = {
  hole: 'line of play',
  course: 'course outline',
  way: 'road or path',
  other: 'thing that means nothing to the course',
};

/** "tee of hole 3: moved 5.5 m", with what ticking it does. */
export function differenceWords(difference: Difference, { length }: Lengths): string {
  const { does, by, ref, name, moved_m, hasNewShape, tags } = difference;
  const what = WORDS[difference.what] ?? difference.what.replaceAll('_', ' ');
  const thing = [what, ref === undefined ? '' : `of hole ${ref}`, name === undefined ? '' : `“${name}”`]
    .filter(Boolean)
    .join(' ');
  if (does === 'add')
    return by === 'file' ? `${thing}: new in the map` : `${thing}: you deleted it; tick to bring it back`;
  if (does === 'remove') {
    if (by === 'you') return `${thing}: you drew it; tick to delete it`;
    if (by === 'file' && !difference.isTaken) return `delete ${thing}`;
    return by === 'file'
      ? `${thing}: gone from the map`
      : `${thing}: gone from the map, but you changed it; tick to delete it`;
  }
  const facts = [
    moved_m === undefined ? (hasNewShape ? 'other shape' : '') : `moved ${length(moved_m)}`,
    ...tags.map(({ key, before, after }) => `${key} ${before ?? 'not said'} → ${after ?? 'not said'}`),
  ].filter(Boolean);
  const said = `${thing}: ${facts.join(', ')}`;
  if (by === 'you') return `${said}; you changed it, tick to have it as in the map`;
  return by === 'both' ? `${said}; you changed it too, tick to lose yours` : said;
}

/** "Hole 3: tee moved 5.5 m, 95 m → 101 m". */
export function holeWords(hole: HoleChange, { length }: Lengths): string {
  const { ref, does, teeMoved_m, basketMoved_m, lengthBefore_m, lengthAfter_m, parBefore, parAfter } = hole;
  if (does === 'add') return `Hole ${ref} is new, ${length(lengthAfter_m!, 0)}`;
  if (does === 'remove') return `Hole ${ref} goes, ${length(lengthBefore_m!, 0)}`;
  const [before, after] = [length(lengthBefore_m!, 0), length(lengthAfter_m!, 0)];
  const facts = [
    teeMoved_m === undefined ? '' : `tee moves ${length(teeMoved_m)}`,
    basketMoved_m === undefined ? '' : `basket moves ${length(basketMoved_m)}`,
    before === after ? '' : `${before} → ${after} long`,
    parBefore === parAfter ? '' : `par ${parBefore ?? 'not said'} → ${parAfter ?? 'not said'}`,
  ].filter(Boolean);
  return `Hole ${ref}: ${facts.length === 0 ? 'another line of play' : facts.join(', ')}`;
}
