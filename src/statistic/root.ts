/**
 * Where a function that changes sign once between two points does so, to the last digit a number holds, by halving. The
 * sign at the ends is taken from the upper end; where it does not change, the end nearer to a change comes back.
 */
export function signChange(evaluate: (at: number) => number, low: number, high: number): number {
  const rising = evaluate(high) > 0;
  let below = low;
  let above = high;
  for (let halvings = 0; halvings < 1100; halvings += 1) {
    const middle = below + (above - below) / 2;
    if (middle === below || middle === above) break;
    if (evaluate(middle) > 0 === rising) above = middle;
    else below = middle;
  }
  return below + (above - below) / 2;
}
