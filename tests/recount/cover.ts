/** One step of a greedy choice of parts. */
export interface Step {
  readonly part: string;
  readonly newly: number;
  readonly caught: number;
}

/**
 * Parts one by one, always the one fouled on most craft not yet caught, and of equals the first of the catalogue, until every
 * craft is caught. Nemhauser GL, Wolsey LA, Fisher ML (1978) Mathematical Programming 14:265-294.
 */
export function greedySteps(craft: readonly (readonly string[])[], catalogue: readonly string[]): readonly Step[] {
  const steps: Step[] = [];
  let left = craft;
  while (left.length > 0) {
    const counts = catalogue.map((part) => left.filter((parts) => parts.includes(part)).length);
    const newly = Math.max(...counts);
    const part = catalogue[counts.indexOf(newly)]!;
    left = left.filter((parts) => !parts.includes(part));
    steps.push({ part, newly, caught: craft.length - left.length });
  }
  return steps;
}

/** The most craft that any set of so many parts catches, by trying every set. */
export function bestCaught(craft: readonly (readonly string[])[], catalogue: readonly string[], size: number): number {
  const caughtBy = catalogue.map((part) => craft.map((parts) => parts.includes(part)));
  const tried = (from: number, still: number, caught: readonly boolean[]): number => {
    if (still === 0) return caught.filter((isCaught) => isCaught).length;
    let best = 0;
    for (let at = from; at <= catalogue.length - still; at++) {
      best = Math.max(
        best,
        tried(
          at + 1,
          still - 1,
          caught.map((isCaught, one) => isCaught || caughtBy[at]![one]!),
        ),
      );
    }
    return best;
  };
  return tried(
    0,
    size,
    craft.map(() => false),
  );
}
