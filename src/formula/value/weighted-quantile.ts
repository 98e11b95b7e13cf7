/**
 * The p-quantile of type 7 of sorted numbers, each standing for a whole number of numbers alike; NaN where all stand for
 * none. Hyndman RJ, Fan Y (1996) The American Statistician 50:361-365.
 */
export function weightedQuantile(
  sorted: Float64Array,
  weightAt: (position: number) => number,
  total: number,
  p: number,
): number {
  if (total === 0) return Number.NaN;
  const place = p * (total - 1);
  const lower = Math.floor(place);
  const part = place - lower;
  let passed = 0;
  let below = Number.NaN;
  for (let at = 0; at < sorted.length; at += 1) {
    passed += weightAt(at);
    if (passed > lower && Number.isNaN(below)) {
      below = sorted[at]!;
      if (part === 0) return below;
    }
    if (passed > lower + 1) return below + part * (sorted[at]! - below);
  }
  return below;
}
