const ending = ', and is taken as known';

/** The caution that something from records decides which rows are counted: its own uncertainty is not in the interval. */
export function takenAsKnown(name: string, rows = 'rows are counted'): string {
  return `${name} decides which ${rows}${ending}`;
}

/** The caution that an argument of a function comes from records itself: its own uncertainty is not in the interval. */
export function argumentTakenAsKnown(name: string): string {
  return `the ${name} comes from records${ending}`;
}

/** Whether a caution is one of those, which must stand where its number stands. */
export function saysTakenAsKnown(caution: string): boolean {
  return caution.endsWith(ending);
}
