import { sumOf } from './summary.js';

/** How unevenly a total is spread over groups. */
export interface Concentration {
  /** 0 where all have the same, near 1 where one has all; null where the total is 0. */
  readonly gini: number | null;
  /** Times n / (n − 1); null under two groups too. */
  readonly giniUnbiased: number | null;
  /** The share of the total held by the smallest 0, 1, …, n groups; empty where the total is 0. */
  readonly lorenz: readonly number[];
}

/** Gini C (1912) Variabilità e mutabilità; Dixon PM et al. (1987) Ecology 68:1548-1551. Amounts of at least 0. */
export function concentration(amounts: readonly number[]): Concentration {
  if (amounts.some((amount) => !(amount >= 0))) throw new RangeError('an amount is below 0');
  const sorted = [...amounts].sort((a, b) => a - b);
  const n = sorted.length;
  const total = sumOf(sorted);
  if (total === 0) return { gini: null, giniUnbiased: null, lorenz: [] };
  const gini = sumOf(sorted.map((amount, i) => (2 * (i + 1) - n - 1) * amount)) / (n * total);
  let running = 0;
  const shares = sorted.map((amount) => {
    running += amount;
    return running / total;
  });
  return { gini, giniUnbiased: n < 2 ? null : (gini * n) / (n - 1), lorenz: [0, ...shares] };
}

/** How few of the largest groups hold at least this share of the total; null where the total is 0. */
export function groupsHolding(amounts: readonly number[], share: number): number | null {
  const sorted = [...amounts].sort((a, b) => b - a);
  const total = sumOf(sorted);
  if (total === 0) return null;
  let running = 0;
  // Rounding of the running sum must not ask for one group more.
  const enough = sorted.findIndex((amount) => {
    running += amount;
    return running >= share * total * (1 - 1e-12);
  });
  return enough + 1;
}
