import { gammaCumulative, gammaQuantile, gammaUpper } from './gamma.js';

/** The chance that a chi-squared variable with df degrees of freedom is at most x. */
export function chiSquaredCumulative(x: number, df: number): number {
  return gammaCumulative(x / 2, df / 2);
}

/** The chance that a chi-squared variable with df degrees of freedom is above x: the p-value of a test. */
export function chiSquaredUpper(x: number, df: number): number {
  return gammaUpper(x / 2, df / 2);
}

/** The x below which a chi-squared variable with df degrees of freedom falls with this chance. */
export function chiSquaredQuantile(chance: number, df: number): number {
  return 2 * gammaQuantile(chance, df / 2);
}
