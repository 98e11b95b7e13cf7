/** What describes a list of numbers at a glance; null where it is not defined. */
export interface Summary {
  readonly n: number;
  readonly mean: number | null;
  /** With n − 1; null under two values. */
  readonly standardDeviation: number | null;
  /** Lag-1 autocorrelation in the order given; null where all values are the same or there is only one. */
  readonly autocorrelation: number | null;
}

/** The sum with the rounding of each step carried along; Neumaier A (1974) Z angew Math Mech 54:39-51. */
export function sumOf(values: ArrayLike<number>): number {
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/**
 * Count, mean, standard deviation and lag-1 autocorrelation. Two passes with the second corrected for the rounding of
 * the mean: Chan TF, Golub GH, LeVeque RJ (1983) The American Statistician 37:242-247, eq. 1.7.
 */
export function summary(values: ArrayLike<number>): Summary {
  const n = values.length;
  if (n === 0) return { n, mean: null, standardDeviation: null, autocorrelation: null };
  const mean = sumOf(values) / n;
  const gaps = Float64Array.from({ length: n }, (_, i) => values[i]! - mean);
  const drift = sumOf(gaps);
  const squares = sumOf(gaps.map((gap) => gap * gap)) - (drift * drift) / n;
  const products = sumOf(gaps.map((gap, i) => (i === 0 ? 0 : gap * gaps[i - 1]!)));
  return {
    n,
    mean: mean + drift / n,
    standardDeviation: n < 2 ? null : Math.sqrt(squares / (n - 1)),
    autocorrelation: squares > 0 ? products / squares : null,
  };
}
