/** How far a number may lie from the one expected: a share of it, or an absolute distance. */
export interface Tolerance {
  readonly relative: number;
  readonly absolute: number;
}

/** Spellings of a value that is not there or not finite; all stand for our null. */
const NOT_THERE: ReadonlySet<unknown> = new Set(['NA', 'NaN', 'Inf', '-Inf', null]);

/** Whether a value agrees with the one expected, lists entry by entry. */
export function agrees(got: unknown, expected: unknown, tolerance: Tolerance): boolean {
  if (Array.isArray(expected)) {
    return (
      Array.isArray(got) &&
      got.length === expected.length &&
      expected.every((entry, index) => agrees(got[index], entry, tolerance))
    );
  }
  if (typeof expected === 'number') {
    if (typeof got !== 'number') return false;
    const distance = Math.abs(got - expected);
    return distance <= tolerance.relative * Math.abs(expected) || distance <= tolerance.absolute;
  }
  if (NOT_THERE.has(expected)) return got === null;
  if (typeof expected === 'object' && expected !== null) {
    return Object.entries(expected).every(([key, value]) => agrees(entryOf(got, key), value, tolerance));
  }
  return got === expected;
}

/** The value under a key such as `surv` or, counting from 1, `surv[3]`; undefined where there is none. */
export function entryOf(values: unknown, key: string): unknown {
  if (typeof values !== 'object' || values === null) return undefined;
  const indexed = /^(.+)\[(\d+)\]$/.exec(key);
  if (indexed === null) return Object.entries(values).find(([name]) => name === key)?.[1];
  const list = entryOf(values, indexed[1] ?? '');
  return Array.isArray(list) ? list[Number(indexed[2]) - 1] : undefined;
}
