import type { ValueField } from './value-field.ts';

/**
 * Gives the cells of a grid where no lie can be the mean of their valued neighbours, ring by ring outwards from the lies: for
 * interpolation only. Changes `grid`.
 * @param added - what each ring adds (leaving the hole costs)
 */
export function fillFromLies(field: ValueField, grid: Float64Array, added: number): void {
  const { columns, rows, isLie } = field;
  const known = Uint8Array.from(isLie);
  let frontier: number[] = [];
  for (let i = 0; i < grid.length; i++) if (!known[i] && touchesKnown(i)) frontier.push(i);
  while (frontier.length > 0) {
    const filled = frontier.map(meanOfKnown);
    const next = new Set<number>();
    frontier.forEach((i, k) => {
      grid[i] = filled[k] + added;
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

  function meanOfKnown(i: number): number {
    let sum = 0;
    let count = 0;
    visit(i, n => {
      if (!known[n]) return;
      sum += grid[n];
      count++;
    });
    return sum / count;
  }
}
