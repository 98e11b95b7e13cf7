import type { CovariatePattern } from './penalised-likelihood.js';

/**
 * Whether each column of some covariate patterns tells more than those before it; one that they settle cannot have a
 * coefficient of its own. By Cholesky's factors of the cross products, passing over columns without a pivot.
 */
export function independentColumns(patterns: readonly CovariatePattern[], columns: number): readonly boolean[] {
  const products = Array.from({ length: columns }, () => new Float64Array(columns));
  for (const { columns: own, values, trials } of patterns) {
    own.forEach((column, k) => {
      own.forEach((other, l) => {
        products[column]![other]! += trials * values[k]! * values[l]!;
      });
    });
  }
  const factor = products.map(() => new Float64Array(columns));
  const independent: boolean[] = [];
  for (let i = 0; i < columns; i += 1) {
    let pivot = products[i]![i]!;
    for (let j = 0; j < i; j += 1) {
      if (independent[j] !== true) continue;
      let sum = products[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= factor[i]![k]! * factor[j]![k]!;
      factor[i]![j] = sum / factor[j]![j]!;
      pivot -= factor[i]![j]! ** 2;
    }
    const own = pivot > 1e-9 * products[i]![i]!;
    independent.push(own);
    if (own) factor[i]![i] = Math.sqrt(pivot);
  }
  return independent;
}
