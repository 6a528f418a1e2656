import type { CourseHole, LonLat, Site } from './course.ts';
import { groundDistance_m, lineLength_m } from './ground-distance.ts';
import { leastHole_m, mostHole_m } from './limits.ts';
import type { Notes } from './notes.ts';
import type { HoleFacts } from './read-hole-lines.ts';

export type HoleParts = Readonly<{
  ref: string;
  facts: HoleFacts;
  path: string;
  tees: readonly Site[];
  baskets: readonly Site[];
  bends: readonly LonLat[];
  otherLines?: readonly (readonly LonLat[])[];
  lineSource: CourseHole['lineSource'];
}>;

/** A tagged length that is off by more than this share, and by more than a phone's fix, is worth a word. */
const lengthDoubt = 0.25;
const lengthDoubt_m = 20;
/** Positions nearer than this are one: a step without direction is no bend. */
const samePlace_m = 0.01;

/**
 * A hole from its parts, the first tee and basket planned for.
 * @returns undefined when it is absurd (a problem is noted)
 */
export function buildHole(
  { ref, facts, path, tees, baskets, bends, otherLines = [], lineSource }: HoleParts,
  notes: Notes,
): CourseHole | undefined {
  const [tee, basket] = [tees[0]!, baskets[0]!];
  const line = withoutRepeats([tee.position, ...bends, basket.position]);
  const straight_m = groundDistance_m(tee.position, basket.position);
  const length_m = lineLength_m(line);
  if (straight_m < leastHole_m) {
    notes.problems.push({
      path,
      message: `hole ${ref} is ${straight_m.toFixed(2)} m long from tee to basket: move one of them, or draw the line from tee to basket`,
    });
    return undefined;
  }
  if (length_m > mostHole_m) {
    notes.problems.push({
      path,
      message: `hole ${ref} is ${(length_m / 1000).toFixed(1)} km long: check its positions and the refs of its tee and basket`,
    });
    return undefined;
  }
  for (const site of [...tees, ...baskets]) {
    const far_m = Math.min(...line.map(position => groundDistance_m(position, site.position)));
    if (far_m <= mostHole_m) continue;
    notes.problems.push({
      path: `features[${site.featureIndex}]`,
      message: `ref=${ref} lies ${(far_m / 1000).toFixed(1)} km from hole ${ref}: mend its ref or its position`,
    });
  }
  noteLength(ref, path, facts.taggedLength_m, length_m, notes);
  const more = otherLines.length === 0 ? {} : { otherLines: otherLines.map(withoutRepeats) };
  return { ref, ...facts, tee, basket, tees, baskets, line, ...more, lineSource };
}

/** The line without steps that lead nowhere. */
export function withoutRepeats(line: readonly LonLat[]): LonLat[] {
  const basket = line.at(-1)!;
  const kept: LonLat[] = [line[0]!];
  for (const position of line.slice(1, -1)) {
    if (groundDistance_m(kept.at(-1)!, position) > samePlace_m && groundDistance_m(position, basket) > samePlace_m)
      kept.push(position);
  }
  return [...kept, basket];
}

function noteLength(ref: string, path: string, tagged_m: number | undefined, length_m: number, notes: Notes): void {
  if (tagged_m === undefined || Math.abs(tagged_m - length_m) <= Math.max(lengthDoubt_m, lengthDoubt * length_m))
    return;
  const feet =
    Math.abs(tagged_m * 0.3048 - length_m) <= 0.1 * length_m
      ? '; it looks like feet: write the unit, as in "300 ft"'
      : '';
  notes.assumptions.push({
    path,
    message: `hole ${ref}: dist says ${tagged_m.toFixed(0)} m but the map measures ${length_m.toFixed(0)} m; the map is used${feet}`,
  });
}
