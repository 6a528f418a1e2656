import type { Course } from '../../../core/course/course.ts';
import { refKey } from '../../../core/course/hole-ref.ts';
import type { Result } from '../../../core/units/result.ts';

/**
 * The holes of "1,3-5" or "4A", as the course spells them and in its order.
 * @returns their refs, or a problem with path `holes` that lists the holes there are
 */
export function holeList(text: string, course: Course): Result<string[]> {
  const refs = course.holes.map(hole => hole.ref);
  const wanted = new Set<string>();
  const missing: string[] = [];
  for (const part of text.split(',').map(item => item.trim())) {
    const found = refsOf(part, refs);
    if (found.length === 0) missing.push(part);
    for (const ref of found) wanted.add(ref);
  }
  if (missing.length === 0) return { ok: true, value: refs.filter(ref => wanted.has(ref)) };
  const which = missing.map(part => `"${part}"`).join(', ');
  const message = `the course has no hole ${which}; it has ${refs.join(', ')} (write 4, 1,3-5 or all)`;
  return { ok: false, problems: [{ path: 'holes', message }] };
}

function refsOf(part: string, refs: readonly string[]): string[] {
  if (part.toLowerCase() === 'all') return [...refs];
  const exact = refs.filter(ref => refKey(ref) === refKey(part));
  const range = /^#?\s*(\d+)\s*[-–]\s*#?(\d+)$/.exec(part);
  if (exact.length > 0 || range === null) return exact;
  const [from, to] = [Number(range[1]), Number(range[2])];
  return refs.filter(ref => {
    const number = Number(/^\d+/.exec(refKey(ref))?.[0] ?? Number.NaN);
    return number >= from && number <= to;
  });
}
