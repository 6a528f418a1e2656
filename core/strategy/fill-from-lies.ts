import type { ValueField } from './value-field.ts';

/** Throws that each ring of cells away from the lies costs: assumed, a throw wins back about 40 m. */
const M_PER_THROW = 40;

/**
 * Gives the cells of a field where no lie can be the mean of their valued neighbours, ring by ring outwards, each ring a little
 * dearer (leaving the hole costs): for interpolation only. Changes `grid`.
 */
export function fillValues(field: ValueField, grid: Float64Array): void {
  const added = field.cell_m / M_PER_THROW;
  fillFromLies(field, mean => mean(grid) + added, grid);
}

/** The same for chances to hole out in n throws: each ring looks a share of a throw back, to the layer of n − 1. Changes `layer`. */
export function fillChances(field: ValueField, layer: Float64Array, before: Float64Array): void {
  const share = field.cell_m / M_PER_THROW;
  fillFromLies(field, mean => (1 - share) * mean(layer) + share * mean(before), layer);
}

function fillFromLies(
  field: ValueField,
  valued: (meanOfNeighbours: (grid: Float64Array) => number) => number,
  grid: Float64Array,
): void {
  const { columns, rows, isLie } = field;
  const known = Uint8Array.from(isLie);
  let frontier: number[] = [];
  for (let i = 0; i < grid.length; i++) if (!known[i] && touchesKnown(i)) frontier.push(i);
  while (frontier.length > 0) {
    const filled = frontier.map(i => valued(of => meanOfKnown(of, i)));
    const next = new Set<number>();
    frontier.forEach((i, k) => {
      grid[i] = filled[k];
    });
    for (const i of frontier) known[i] = 1;
    for (const i of frontier) visit(i, n => !known[n] && next.add(n));
    frontier = [...next];
  }

  function visit(i: number, see: (neighbour: number) => void): void {
    const column = i % columns;
    const row = Math.floor(i / columns);
    for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) see(r * columns + c);
    }
  }

  function touchesKnown(i: number): boolean {
    let found = false;
    visit(i, n => {
      if (known[n]) found = true;
    });
    return found;
  }

  function meanOfKnown(of: Float64Array, i: number): number {
    let sum = 0;
    let count = 0;
    visit(i, n => {
      if (!known[n]) return;
      sum += of[n];
      count++;
    });
    return sum / count;
  }
}
