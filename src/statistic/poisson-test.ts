import { poissonCumulative, poissonMass, poissonUpper } from './distribution/poisson.js';
import { smallestReaching } from './distribution/whole.js';
import { tieOf } from './tie.js';

/**
 * The two-sided exact p-value of a count of events where `mean`, above 0, are expected: the total chance of all counts
 * no likelier than the one seen. Ties as in R's poisson.test; the rule is that of Conover WJ (1971), p. 97, for
 * binomials.
 */
export function poissonTest(events: number, mean: number): number {
  if (!(mean > 0 && Number.isInteger(events) && events >= 0)) throw new RangeError(`${events} events against ${mean}`);
  if (events === mean) return 1;
  const limit = tieOf(poissonMass(events, mean));
  const asRare = (count: number) => (poissonMass(count, mean) <= limit ? 1 : 0);
  if (events < mean) {
    const from = Math.ceil(mean);
    const first = smallestReaching(1, mean - events, Number.MAX_SAFE_INTEGER, (step) => asRare(from + step));
    return Math.min(1, poissonCumulative(events, mean) + poissonUpper(from + first - 1, mean));
  }
  const from = Math.floor(mean);
  const first = smallestReaching(1, events - mean, from + 1, (step) => (step > from ? 1 : asRare(from - step)));
  return Math.min(1, poissonCumulative(from - first, mean) + poissonUpper(events - 1, mean));
}
