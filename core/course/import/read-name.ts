import type { Role } from './role.ts';
import { type NamePiece, namePieces, roleNamed, sideNamed } from './role-names.ts';

/** What a name says, as far as it says it. */
export type NameReading = Readonly<{
  role?: Role;
  /** The role stands there as one letter only: T3, 3B. */
  byLetter: boolean;
  /** Words for two different roles stand in the name. */
  contradicts: boolean;
  ref?: string;
  /** A letter right behind the number, as in 3A: part of the ref, or the name of one of several tees. */
  letter?: string;
  par?: number;
  /** What else stands there: "long", "red". */
  label?: string;
  isHole: boolean;
}>;

const LETTERS: Readonly<Record<string, Role>> = { t: 'tee', b: 'basket' };
const UNITS = new Set(['m', 'metre', 'metres', 'meter', 'meters', 'ft', 'feet', 'foot', 'yd', 'yards']);
/** Words that say nothing. */
const FILLERS = new Set(['disc', 'golf', 'no', 'nr', 'num', 'the', 'of', 'for', 'at', 'and']);

/** Reads a waypoint's, line's or folder's name. A four-figure number or a date is no hole. */
export function readName(name: string): NameReading {
  const pieces = namePieces(name);
  const used = new Set<number>();
  const par = takePar(pieces, used);
  dropMeasures(pieces, used);
  const { role, contradicts, at: roleAt } = takeRole(pieces, used);
  const holeAt = pieces.findIndex(({ text }, i) => !used.has(i) && roleNamed(text) === 'hole');
  const letterHoleAt = pieces.findIndex(({ text }, i) => text === 'h' && pieces[i + 1]?.isNumber);
  const isHole = holeAt !== -1 || letterHoleAt !== -1;
  for (const at of [holeAt, letterHoleAt]) if (at !== -1) used.add(at);
  const refAt = findRef(pieces, used, holeAt !== -1 ? holeAt : letterHoleAt, roleAt);
  const ref = refAt === undefined ? undefined : pieces[refAt]!.text.replace(/^0+(?=\d)/, '');
  if (refAt !== undefined) used.add(refAt);
  const single = refAt === undefined ? undefined : takeLetter(pieces, used, refAt, role);
  const label = pieces
    .filter(({ text }, i) => !used.has(i) && !FILLERS.has(text))
    .map(({ text }) => text)
    .join(' ');
  const found = role ?? single?.role;
  return {
    ...(found === undefined ? {} : { role: found }),
    byLetter: role === undefined && single?.role !== undefined,
    contradicts,
    ...(ref === undefined ? {} : { ref }),
    ...(single?.letter === undefined ? {} : { letter: single.letter }),
    ...(par === undefined ? {} : { par }),
    ...(label === '' ? {} : { label }),
    isHole,
  };
}

function takePar(pieces: readonly NamePiece[], used: Set<number>): number | undefined {
  const at = pieces.findIndex(({ text }, i) => text === 'par' && /^[2-9]$/.test(pieces[i + 1]?.text ?? ''));
  if (at === -1) return undefined;
  used.add(at).add(at + 1);
  return Number(pieces[at + 1]!.text);
}

/** "95 m" is a length, not a hole. */
function dropMeasures(pieces: readonly NamePiece[], used: Set<number>): void {
  pieces.forEach(({ text }, i) => {
    if (UNITS.has(text) && pieces[i - 1]?.isNumber && !used.has(i - 1)) used.add(i - 1).add(i);
  });
}

function takeRole(pieces: readonly NamePiece[], used: Set<number>) {
  let [role, at]: [Role | undefined, number] = [undefined, -1];
  let contradicts = false;
  const take = (next: Role, i: number) => {
    used.add(i);
    contradicts ||= role !== undefined && role !== next;
    if (role === undefined) [role, at] = [next, i];
  };
  for (const [i, { text }] of pieces.entries()) {
    const named = used.has(i) ? undefined : roleNamed(text);
    if (named === undefined || named === 'hole') continue;
    if (named !== 'mando') {
      take(named, i);
      continue;
    }
    used.add(i);
    const sideAt = pieces.findIndex(piece => sideNamed(piece.text) !== undefined);
    if (sideAt === -1) continue;
    used.add(sideAt);
    take(sideNamed(pieces[sideAt]!.text)!, i);
  }
  return { role, contradicts, at };
}

/** The number behind the word for a hole, else behind or before the role's word, else the first. */
function findRef(
  pieces: readonly NamePiece[],
  used: ReadonlySet<number>,
  holeAt: number,
  roleAt: number,
): number | undefined {
  const isRef = (i: number) => {
    const piece = pieces[i];
    return (
      piece?.isNumber === true && !used.has(i) && piece.text.replace(/^0+/, '').length <= 2 && Number(piece.text) > 0
    );
  };
  if (pieces.some(({ text, isNumber }) => isNumber && text.length === 4)) return undefined;
  const near = [holeAt === -1 ? -1 : holeAt + 1, roleAt === -1 ? -1 : roleAt + 1, roleAt - 1];
  return near.find(i => i >= 0 && isRef(i)) ?? pieces.map((_, i) => i).find(isRef);
}

/** One letter at the number: t or b for the role when no word says it, else part of the ref or a name. */
function takeLetter(
  pieces: readonly NamePiece[],
  used: Set<number>,
  refAt: number,
  role: Role | undefined,
): { role?: Role; letter?: string } {
  const candidates = [refAt + 1, refAt - 1].filter(
    i => pieces[i]?.text.length === 1 && !used.has(i) && !pieces[i]!.isNumber,
  );
  if (role === undefined) {
    const at = candidates.find(i => Object.hasOwn(LETTERS, pieces[i]!.text));
    if (at !== undefined) {
      used.add(at);
      return { role: LETTERS[pieces[at]!.text]! };
    }
  }
  const behind = candidates.find(i => i === refAt + 1 && pieces[i]!.joined);
  if (behind === undefined) return {};
  used.add(behind);
  return { letter: pieces[behind]!.text.toUpperCase() };
}
