/**
 * The most that a chance may be and still count as no larger than the one seen: chances alike but for rounding are ties, so that
 * an exact test does not split a pair. The ratio is that of R's binom.test, poisson.test and fisher.test.
 */
export function tieOf(chance: number): number {
  return chance * (1 + 1e-7);
}
