import type { Result } from '../../units/result.ts';
import type { RoleChoice } from './propose-roles.ts';
import { needsRef, ROLE_WORDS, ROLES, type Role } from './role.ts';

/**
 * A choice as typed: `tee 3`, `basket 10A`, `tee 3 long`, `line of play 4`, `leave out`, `wood`.
 * @returns the choice, or one problem with path `choice`
 */
export function parseChoice(text: string): Result<RoleChoice> {
  const words = text.trim().replace(/\s+/g, ' ');
  const role = byLength.find(candidate => spellings(candidate).some(word => startsWith(words, word)));
  if (role === undefined)
    return refuse(
      `"${words.slice(0, 40)}" is nothing known: write ${ROLES.map(known => ROLE_WORDS[known]).join(', ')}`,
    );
  const said = spellings(role).find(word => startsWith(words, word))!;
  const rest = words.slice(said.length).trim();
  if (!needsRef(role) && role !== 'dropZone' && role !== 'fairway' && !role.startsWith('mando'))
    return { ok: true, value: { role, ...(rest === '' ? {} : { label: rest }) } };
  const [ref = '', ...label] = rest.split(' ');
  if (needsRef(role) && ref === '')
    return refuse(`which hole? Write ${ROLE_WORDS[role]} and its number, as in "${ROLE_WORDS[role]} 3"`);
  return {
    ok: true,
    value: { role, ...(ref === '' ? {} : { ref }), ...(label.length === 0 ? {} : { label: label.join(' ') }) },
  };
}

const OTHER_SPELLINGS: Readonly<Partial<Record<Role, readonly string[]>>> = {
  lineOfPlay: ['line', 'hole'],
  outOfBounds: ['out of bounds', 'ob'],
  dropZone: ['dropzone'],
  leave: ['leave', 'nothing'],
};

const spellings = (role: Role): readonly string[] => [ROLE_WORDS[role], ...(OTHER_SPELLINGS[role] ?? [])];
/** "tree row" before "tree". */
const byLength = ROLES.toSorted((a, b) => ROLE_WORDS[b].length - ROLE_WORDS[a].length);
const startsWith = (words: string, start: string) =>
  words.toLowerCase() === start || words.toLowerCase().startsWith(`${start} `);

function refuse(message: string): Result<never> {
  return { ok: false, problems: [{ path: 'choice', message }] };
}
