/** One of the nine definitions of Hyndman & Fan. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** The position among 1 … n at which each continuous type reads, by the parameters a and b of Hyndman & Fan, eq. 3. */
const CONTINUOUS: Readonly<Record<4 | 5 | 6 | 7 | 8 | 9, readonly [number, number]>> = {
  4: [0, 1],
  5: [0.5, 0.5],
  6: [0, 0],
  7: [1, 1],
  8: [1 / 3, 1 / 3],
  9: [3 / 8, 3 / 8],
};

/** Whole positions that miss by rounding alone count as whole, as in R's quantile. */
const ROUNDING = 4 * Number.EPSILON;

/**
 * The p-quantile, p in [0, 1], of values sorted upwards; null where there are none. Type 7 unless said otherwise.
 * Hyndman RJ, Fan Y (1996) The American Statistician 50:361-365.
 */
export function quantile(sorted: ArrayLike<number>, p: number, type: QuantileType = 7): number | null {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a quantile's chance lies in [0, 1], not ${p}`);
  const n = sorted.length;
  if (n === 0) return null;
  const at = (position: number) => sorted[Math.min(n, Math.max(1, position)) - 1] ?? null;
  const position = positionOf(n, p, type);
  const whole = Math.floor(position + ROUNDING * Math.max(1, Math.abs(position)));
  const part = Math.abs(position - whole) <= ROUNDING * Math.max(1, Math.abs(position)) ? 0 : position - whole;
  const below = at(whole);
  const above = at(whole + 1);
  const share = shareOfNext(type, whole, part);
  if (below === null || above === null) return null;
  return share === 0 ? below : share === 1 ? above : below + share * (above - below);
}

function positionOf(n: number, p: number, type: QuantileType): number {
  if (type === 1 || type === 2) return n * p;
  if (type === 3) return n * p - 0.5;
  const [a, b] = CONTINUOUS[type];
  return a + p * (n + 1 - a - b);
}

/** How much of the next value enters: the γ of Hyndman & Fan, section 2. */
function shareOfNext(type: QuantileType, whole: number, part: number): number {
  if (type === 1) return part > 0 ? 1 : 0;
  if (type === 2) return part > 0 ? 1 : 0.5;
  if (type === 3) return part > 0 || whole % 2 !== 0 ? 1 : 0;
  return part;
}
