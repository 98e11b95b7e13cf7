/** Steps from the largest p-value down, keeping the least seen so far. */
function stepUp(p: readonly number[], factor: (rank: number) => number): readonly number[] {
  const order = p.map((_, i) => i).sort((i, j) => p[j]! - p[i]!);
  const adjusted = p.map(() => 1);
  let least = 1;
  order.forEach((index, step) => {
    least = Math.min(least, p[index]! * factor(p.length - step));
    adjusted[index] = least;
  });
  return adjusted;
}

/** Every p-value times their number, at most 1. */
export function bonferroni(p: readonly number[]): readonly number[] {
  return p.map((value) => Math.min(1, value * p.length));
}

/** Adjusted p-values for planned comparisons, in the order given. Holm S (1979) Scand J Statist 6:65-70. */
export function holm(p: readonly number[]): readonly number[] {
  const order = p.map((_, i) => i).sort((i, j) => p[i]! - p[j]!);
  const adjusted = p.map(() => 0);
  let most = 0;
  order.forEach((index, step) => {
    most = Math.max(most, Math.min(1, p[index]! * (p.length - step)));
    adjusted[index] = most;
  });
  return adjusted;
}

/** Adjusted p-values in the order given. Hochberg Y (1988) Biometrika 75:800-802. */
export function hochberg(p: readonly number[]): readonly number[] {
  return stepUp(p, (rank) => p.length - rank + 1);
}

/** Adjusted p-values for screening, in the order given. Benjamini Y, Hochberg Y (1995) JRSS B 57:289-300. */
export function benjaminiHochberg(p: readonly number[]): readonly number[] {
  return stepUp(p, (rank) => p.length / rank);
}
