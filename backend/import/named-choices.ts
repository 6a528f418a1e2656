import type { LooseItem, RoleChoice } from '../../core/course/import/propose-roles.ts';
import type { Problem, Result } from '../../core/units/result.ts';

/** What a thing of this name (or `folder / name`) is. */
export type NamedChoice = Readonly<{ name: string; choice: RoleChoice }>;

/**
 * A choice for every item: what was said by name, else what is proposed.
 * @returns problems with path `map` for names that nothing or several things have
 */
export function chosenRoles(
  items: readonly LooseItem[],
  said: readonly NamedChoice[],
): Result<(RoleChoice & Readonly<{ index: number }>)[]> {
  const problems: Problem[] = [];
  const chosen = new Map<number, RoleChoice>();
  for (const { name, choice } of said) {
    const found = items.filter(item => item.name === name || `${item.folder} / ${item.name}` === name);
    const [only] = found;
    if (only === undefined)
      problems.push({ path: 'map', message: `nothing in the file is named "${name}"${similar(items, name)}` });
    else if (found.length > 1)
      problems.push({
        path: 'map',
        message: `${found.length} things are named "${name}": name one by its folder, as in "${found[0]!.folder ?? 'folder'} / ${name}"`,
      });
    else chosen.set(only.index, choice);
  }
  if (problems.length > 0) return { ok: false, problems };
  const all = items.map(({ index, proposal: { sure: _, why: __, ...proposed } }) => ({
    ...(chosen.get(index) ?? proposed),
    index,
  }));
  return { ok: true, value: all };
}

function similar(items: readonly LooseItem[], name: string): string {
  const start = name.toLowerCase().slice(0, 3);
  const near = items.filter(item => item.name.toLowerCase().includes(start)).slice(0, 3);
  return near.length === 0 ? '' : `: did you mean ${near.map(item => `"${item.name}"`).join(', ')}?`;
}
