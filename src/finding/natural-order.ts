const runs = /\d+|\D+/g;

/**
 * Compares texts as a person would list them: runs of digits by their number, all else by UTF-16 code unit, so that `ramp 9`
 * comes before `ramp 10`. The same on every machine, whatever its locale.
 */
export function byNaturalOrder(one: string, other: string): number {
  const oneRuns = one.match(runs) ?? [];
  const otherRuns = other.match(runs) ?? [];
  for (let at = 0; at < oneRuns.length && at < otherRuns.length; at++) {
    const [a, b] = [oneRuns[at]!, otherRuns[at]!];
    const byNumber = Number(a) - Number(b);
    if (byNumber < 0 || byNumber > 0) return byNumber;
    if (Number.isNaN(byNumber) && a !== b) return a < b ? -1 : 1;
  }
  return oneRuns.length - otherRuns.length || (one < other ? -1 : one > other ? 1 : 0);
}
