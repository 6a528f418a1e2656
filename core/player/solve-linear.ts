/**
 * Solves A·x = b for a small symmetric positive definite A (no pivoting is needed then).
 * @throws {RangeError} when A is not positive definite
 */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let i = 0; i < n; i++) {
    if (!(a[i]![i]! > 0)) throw new RangeError(`matrix must be positive definite, pivot ${i} is ${a[i]![i]}`);
    for (let k = i + 1; k < n; k++) {
      const factor = a[k]![i]! / a[i]![i]!;
      for (let j = i; j <= n; j++) a[k]![j]! -= factor * a[i]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = a[i]![n]!;
    for (let j = i + 1; j < n; j++) sum -= a[i]![j]! * x[j]!;
    x[i] = sum / a[i]![i]!;
  }
  return x;
}

/** Inverse of a small symmetric positive definite matrix, column by column. */
export function invert(matrix: readonly (readonly number[])[]): number[][] {
  const columns = matrix.map((_, i) =>
    solveLinear(
      matrix,
      matrix.map((_, j) => (i === j ? 1 : 0)),
    ),
  );
  return matrix.map((_, i) => columns.map(column => column[i]!));
}
