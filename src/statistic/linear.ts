/**
 * The lower factor of a symmetric positive definite matrix, row by row, by Cholesky; null where a pivot is no more than
 * `least` of its place on the diagonal: the matrix is not positive definite to working precision. Golub GH, Van Loan CF (1996)
 * Matrix Computations, algorithm 4.2.1.
 */
export function lowerFactor(matrix: readonly ArrayLike<number>[], least: number): readonly Float64Array[] | null {
  const factor = matrix.map(() => new Float64Array(matrix.length));
  for (let i = 0; i < matrix.length; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= factor[i]![k]! * factor[j]![k]!;
      if (i === j && !(sum > least * matrix[i]![i]!)) return null;
      factor[i]![j] = i === j ? Math.sqrt(sum) : sum / factor[j]![j]!;
    }
  }
  return factor;
}

/** The solution of a symmetric positive definite system; null where the matrix is not positive definite. */
export function solveSymmetric(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | null {
  const n = right.length;
  const factor = lowerFactor(matrix, 1e-14);
  if (factor === null) return null;
  const solution = [...right];
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) solution[i]! -= factor[i]![k]! * solution[k]!;
    solution[i]! /= factor[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) solution[i]! -= factor[k]![i]! * solution[k]!;
    solution[i]! /= factor[i]![i]!;
  }
  return solution;
}
