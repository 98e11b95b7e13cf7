/**
 * The smallest whole number from 0 to `largest` whose cumulative chance reaches the chance wanted, searched outwards
 * from `start`. A shortfall of one part in 1e13 is rounding, not a reason to go one further.
 */
export function smallestReaching(
  wanted: number,
  start: number,
  largest: number,
  cumulative: (whole: number) => number,
): number {
  const enough = wanted * (1 - 1e-13);
  let short = -1;
  let reached = Math.min(largest, Math.max(0, Math.floor(start)));
  for (let stride = 1; reached < largest && cumulative(reached) < enough; stride *= 2) {
    short = reached;
    reached = Math.min(largest, reached + stride);
  }
  while (reached - short > 1) {
    const middle = short + Math.floor((reached - short) / 2);
    if (cumulative(middle) < enough) short = middle;
    else reached = middle;
  }
  return reached;
}
