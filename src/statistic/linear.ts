/**
 * The solution of a symmetric positive definite system, by Cholesky's factors; null where the matrix is not positive
 * definite to working precision. Golub GH, Van Loan CF (1996) Matrix Computations, algorithm 4.2.1.
 */
export function solveSymmetric(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | null {
  const n = right.length;
  const factor = matrix.map((row) => [...row]);
  const at = (i: number, j: number) => factor[i]?.[j] ?? 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]?.[j] ?? 0;
      for (let k = 0; k < j; k += 1) sum -= at(i, k) * at(j, k);
      if (i === j && !(sum > 1e-14 * (matrix[i]?.[i] ?? 0))) return null;
      factor[i]![j] = i === j ? Math.sqrt(sum) : sum / at(j, j);
    }
  }
  const forward: number[] = [];
  for (let i = 0; i < n; i += 1) {
    let sum = right[i] ?? 0;
    for (let k = 0; k < i; k += 1) sum -= at(i, k) * (forward[k] ?? 0);
    forward.push(sum / at(i, i));
  }
  const solution = [...forward];
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = forward[i] ?? 0;
    for (let k = i + 1; k < n; k += 1) sum -= at(k, i) * (solution[k] ?? 0);
    solution[i] = sum / at(i, i);
  }
  return solution;
}
