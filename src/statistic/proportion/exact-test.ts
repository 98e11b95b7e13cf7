import { binomialCumulative, binomialMass, binomialUpper } from '../distribution/binomial.js';
import { smallestReaching } from '../distribution/whole.js';
import { tieOf } from '../tie.js';
import { checkCounts } from './counts.js';

/**
 * The two-sided exact p-value of x cases in n trials against a stated proportion: the total chance of all counts no
 * likelier than x. Conover WJ (1971) Practical Nonparametric Statistics, p. 97; ties as in R's binom.test.
 */
export function exactTest(x: number, n: number, proportion: number): number {
  checkCounts(x, n);
  if (!(proportion >= 0 && proportion <= 1)) throw new RangeError(`a proportion of ${proportion}`);
  if (proportion === 0) return x === 0 ? 1 : 0;
  if (proportion === 1) return x === n ? 1 : 0;
  const mean = n * proportion;
  if (x === mean) return 1;
  if (x > mean) return exactBelow(n - x, n, 1 - proportion);
  return exactBelow(x, n, proportion);
}

/** The p-value where x lies below the mean: its own tail, and the far tail from the first count no likelier than x. */
function exactBelow(x: number, n: number, proportion: number): number {
  const limit = tieOf(binomialMass(x, n, proportion));
  const from = Math.ceil(n * proportion);
  // Beyond the mean the chances fall, so 'no likelier' stays true once it is.
  const first = smallestReaching(1, 0, n - from + 1, (step) =>
    from + step > n || binomialMass(from + step, n, proportion) <= limit ? 1 : 0,
  );
  return Math.min(1, binomialCumulative(x, n, proportion) + binomialUpper(from + first - 1, n, proportion));
}
