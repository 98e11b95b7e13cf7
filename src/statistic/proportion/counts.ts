/** Throws unless 0 ≤ x ≤ n, both finite: the caller has mixed up its counts. Effective sizes need not be whole. */
export function checkCounts(x: number, n: number): void {
  if (!(x >= 0 && x <= n && Number.isFinite(n))) throw new RangeError(`${x} cases of ${n} trials`);
}
