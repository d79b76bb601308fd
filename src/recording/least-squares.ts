/**
 * Linear least squares by the normal equations: small systems of at most a dozen unknowns, well scaled.
 */
export interface Row {
  /** One number for each unknown. */
  readonly terms: readonly number[];
  readonly value: number;
  readonly weight: number;
}

/** The unknowns for which the weighted squares of `terms . unknowns - value` have the least sum; undefined where the rows leave one open. */
export function solvedLeastSquares(rows: readonly Row[], unknowns: number): readonly number[] | undefined {
  const matrix = Array.from({ length: unknowns }, () => new Float64Array(unknowns + 1));
  for (const { terms, value, weight } of rows) {
    for (let row = 0; row < unknowns; row++) {
      const factor = weight * terms[row]!;
      if (factor === 0) continue;
      const line = matrix[row]!;
      for (let column = 0; column < unknowns; column++) line[column]! += factor * terms[column]!;
      line[unknowns]! += factor * value;
    }
  }
  return eliminated(matrix, unknowns);
}

/** Gauss's elimination with the largest pivot; `matrix`: the square and, as its last column, the right side. */
function eliminated(matrix: readonly Float64Array[], unknowns: number): readonly number[] | undefined {
  const lines = [...matrix];
  const largest = Math.max(...lines.map((line, index) => Math.abs(line[index]!)), 1e-300);
  for (let column = 0; column < unknowns; column++) {
    let pivot = column;
    for (let row = column + 1; row < unknowns; row++)
      if (Math.abs(lines[row]![column]!) > Math.abs(lines[pivot]![column]!)) pivot = row;
    [lines[column], lines[pivot]] = [lines[pivot]!, lines[column]!];
    const top = lines[column]!;
    if (Math.abs(top[column]!) < 1e-12 * largest) return undefined;
    for (let row = column + 1; row < unknowns; row++) {
      const factor = lines[row]![column]! / top[column]!;
      if (factor === 0) continue;
      for (let index = column; index <= unknowns; index++) lines[row]![index]! -= factor * top[index]!;
    }
  }
  const found = new Array<number>(unknowns).fill(0);
  for (let row = unknowns - 1; row >= 0; row--) {
    let rest = lines[row]![unknowns]!;
    for (let column = row + 1; column < unknowns; column++) rest -= lines[row]![column]! * found[column]!;
    found[row] = rest / lines[row]![row]!;
  }
  return found;
}
