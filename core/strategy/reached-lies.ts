import type { LieSearch } from './lie-search.ts';
import type { Lie } from './march.ts';
import type { Policy } from './policy.ts';
import type { ShotMarcher } from './shot-marcher.ts';
import type { ValueField } from './value-field.ts';

/** Chance to lie in a cell at some time of the hole from which on its value is worth finding out on its own. */
const WORTH_VALUING = 0.0015;
/** Throws looked ahead. */
const THROWS_AHEAD = 4;
/** Lines off the tee that are followed, the best first, and the samples of each. */
const LINES = 40;

/**
 * Where rounds really go: lies that a good line off the tee, or the throws that follow it under the policy so far, come to with a
 * chance worth counting. The chance is a mean over many good lines, so it is low for those of a single one.
 * @returns 1 for such lies, as a grid like the field's
 */
export function reachedLies(
  field: ValueField,
  policy: Policy,
  searching: LieSearch,
  marcher: ShotMarcher,
  samples: number,
  tee: Lie,
): Uint8Array {
  const reached = new Uint8Array(field.value.length);
  const total = new Float64Array(field.value.length);
  let now = new Float64Array(field.value.length);
  const lines = searching.shortlist(tee).slice(0, LINES);
  const { ends } = marcher;
  const weight = 1 / (lines.length * (samples - 1));
  for (const { shot, aim_deg } of lines) {
    for (let k = 1; k < samples; k++) {
      marcher.trace(shot, k, tee, aim_deg);
      for (let i = 0; i < ends.count; i++) deposit(now, ends.x[i], ends.y[i], ends.weight[i] * weight);
    }
  }
  for (let ahead = 0; ahead < THROWS_AHEAD; ahead++) {
    const later = new Float64Array(field.value.length);
    for (let node = 0; node < now.length; node++) {
      if (now[node] === 0) continue;
      total[node] += now[node];
      policy.follow(node, now[node], (x, y, w) => deposit(later, x, y, w));
    }
    now = later;
  }
  for (let node = 0; node < total.length; node++)
    if (field.isLie[node] && total[node] > WORTH_VALUING) reached[node] = 1;
  return reached;

  /** Spreads a chance over the four cells round a point, as values are read. */
  function deposit(grid: Float64Array, x: number, y: number, w: number): void {
    if (Number.isNaN(x)) return;
    const column = (x - field.x0_m) / field.cell_m;
    const row = (y - field.y0_m) / field.cell_m;
    if (!(column >= 0 && row >= 0 && column < field.columns - 1 && row < field.rows - 1)) return;
    const c = Math.floor(column);
    const r = Math.floor(row);
    const fc = column - c;
    const fr = row - r;
    const at = r * field.columns + c;
    grid[at] += w * (1 - fc) * (1 - fr);
    grid[at + 1] += w * fc * (1 - fr);
    grid[at + field.columns] += w * (1 - fc) * fr;
    grid[at + field.columns + 1] += w * fc * fr;
  }
}
