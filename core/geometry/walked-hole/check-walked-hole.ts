import { leastHole_m, limits, mostHole_m } from '../../course/limits.ts';
import type { Problem } from '../../units/result.ts';
import { metresPerDistance, metresPerSize, type WalkedHole } from './walked-hole-input.ts';

/** The narrowest and widest gap the course reader takes. */
const GAP_m = { least: 0.21, most: 100 } as const;

/** What does not fit together in the numbers of a walk; paths as in the input. */
export function checkWalkedHole(hole: WalkedHole): Problem[] {
  const problems: Problem[] = [];
  const add = (path: string, message: string) => problems.push({ path, message });
  const length_m = hole.length * metresPerDistance(hole.distances);
  const size_m = (value: number) => value * metresPerSize(hole.sizes);
  if (length_m < Math.max(5, leastHole_m) || length_m > mostHole_m)
    add(
      'length',
      `the hole would be ${length_m.toFixed(1)} m long: expected 5 to ${mostHole_m} m; check the number and its unit`,
    );
  const onLine = (path: string, at: number | undefined, isEnd = false) => {
    if (at !== undefined && (at > hole.length || (at === 0 && isEnd)))
      add(path, `${at} lies off the hole: it is ${hole.length} long, counted from the tee`);
  };
  const believable = (path: string, value: number | undefined, range: Readonly<{ least: number; most: number }>) => {
    if (value !== undefined && (size_m(value) < range.least || size_m(value) > range.most))
      add(path, `${value} ${hole.sizes} is not believable: expected ${range.least} to ${range.most} m`);
  };
  const above = (path: string, high: number | undefined, low: number | undefined, what: string) => {
    if (high !== undefined && low !== undefined && high <= low) add(path, `${high} is not above ${low}: ${what}`);
  };
  for (const [i, { at }] of hole.bends.entries()) {
    const path = `bends[${i}].at`;
    if (at <= 0 || at >= hole.length)
      add(path, `a bend lies between the tee and the basket: between 0 and ${hole.length}`);
    const before = hole.bends[i - 1];
    if (before !== undefined && at <= before.at)
      add(path, `comes before the bend at ${before.at}: list bends from the tee on`);
  }
  for (const [i, { at, clearance, top, deep }] of hole.ceilings.entries()) {
    onLine(`ceilings[${i}].at`, at, true);
    believable(`ceilings[${i}].clearance`, clearance, limits.clearance_m);
    believable(`ceilings[${i}].top`, top, limits.height_m);
    believable(`ceilings[${i}].deep`, deep, { least: 0.1, most: 200 });
    above(`ceilings[${i}].top`, top, clearance, 'the top lies over the free height');
  }
  for (const [i, { at, width, low, high }] of hole.gaps.entries()) {
    onLine(`gaps[${i}].at`, at, true);
    believable(`gaps[${i}].width`, width, GAP_m);
    believable(`gaps[${i}].high`, high, limits.height_m);
    above(`gaps[${i}].high`, high, low, 'the upper edge lies over the lower one');
  }
  for (const [i, { at, height, crown, branches }] of hole.trees.entries()) {
    onLine(`trees[${i}].at`, at);
    believable(`trees[${i}].height`, height, limits.height_m);
    believable(`trees[${i}].crown`, crown, limits.crownDiameter_m);
    above(`trees[${i}].height`, height, branches, 'a tree ends over its lowest branches');
  }
  for (const [i, { side, from, to, away }] of hole.out.entries()) {
    const path = `out[${i}]`;
    if (side === 'beyond') {
      if (away === undefined) add(`${path}.away`, 'is missing: how far behind the basket it begins');
      continue;
    }
    if (from === undefined) add(`${path}.from`, 'is missing: where it begins, from the tee');
    if (to === undefined) add(`${path}.to`, 'is missing: where it ends, from the tee');
    if (side !== 'across' && away === undefined)
      add(`${path}.away`, 'is missing: how far from the line of play its edge runs');
    onLine(`${path}.from`, from);
    onLine(`${path}.to`, to);
    above(`${path}.to`, to, from, 'it ends farther from the tee than it begins');
  }
  return problems;
}
