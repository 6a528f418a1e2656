import { refKey } from './hole-ref.ts';
import type { Notes } from './notes.ts';
import type { SnappedLine } from './snap-line.ts';

export type NamedLine = SnappedLine & Readonly<{ ref: string }>;

/**
 * Gives every hole line its ref: its own, else that of the tee and basket it joins, else the lowest free number in file
 * order (noted as an assumption).
 * @param taken - keys of refs in use elsewhere on the map
 */
export function nameLines(lines: readonly SnappedLine[], taken: ReadonlySet<string>, notes: Notes): NamedLine[] {
  const used = new Set(taken);
  const refs = lines.map(snapped => {
    const ref = snapped.line.ref ?? refOfEnds(snapped, notes);
    if (ref !== undefined) used.add(refKey(ref));
    return ref;
  });
  let next = 1;
  const numbered: string[] = [];
  const named = lines.map((snapped, i) => {
    const known = refs[i];
    if (known !== undefined) return { ...snapped, ref: known };
    while (used.has(String(next))) next += 1;
    const ref = String(next);
    used.add(ref);
    numbered.push(`${snapped.line.feature.path} is hole ${ref}`);
    return { ...snapped, ref };
  });
  if (numbered.length > 0) {
    const first = lines[refs.indexOf(undefined)]!;
    const message = `hole lines without ref are numbered in file order: ${numbered.join(', ')}; give them refs to change that`;
    notes.assumptions.push({ path: first.line.feature.path, message });
  }
  return named;
}

function refOfEnds({ line, tee, basket }: SnappedLine, notes: Notes): string | undefined {
  const [teeRefs, basketRefs] = [tee?.refs ?? [], basket?.refs ?? []];
  const shared =
    teeRefs.length > 0 && basketRefs.length > 0
      ? teeRefs.filter(ref => basketRefs.includes(ref))
      : [...teeRefs, ...basketRefs];
  if (teeRefs.length > 0 && basketRefs.length > 0 && shared.length === 0) {
    notes.problems.push({
      path: line.feature.path,
      message: `${line.label} runs from ${tee!.label} to ${basket!.label}, which name different holes: give the line a ref or mend theirs`,
    });
  }
  if (shared.length !== 1) return undefined;
  // The key has lost its spelling: show it as tagged where a single ref was tagged.
  return [tee?.site.ref, basket?.site.ref].find(ref => ref !== undefined && refKey(ref) === shared[0]) ?? shared[0];
}
