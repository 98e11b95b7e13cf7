/** Throws unless lists that belong together entry by entry are as long as each other: one entry short, every number is wrong. */
export function checkSameLength(lists: Readonly<Record<string, ArrayLike<unknown> | undefined>>): void {
  const named = Object.entries(lists).flatMap(([name, list]) =>
    list === undefined ? [] : [{ name, length: list.length }],
  );
  if (named.some(({ length }) => length !== named[0]!.length)) {
    throw new RangeError(
      `lists of different lengths: ${named.map(({ name, length }) => `${length} ${name}`).join(', ')}`,
    );
  }
}
