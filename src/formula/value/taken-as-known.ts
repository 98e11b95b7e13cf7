const ending = ', and is taken as known';

/** The caution that something from records decides which rows are counted: its own uncertainty is not in the interval. */
export function takenAsKnown(name: string, rows = 'rows are counted'): string {
  return `${name} decides which ${rows}${ending}`;
}

/** Whether a caution is that one, which must stand where its number stands. */
export function saysTakenAsKnown(caution: string): boolean {
  return caution.endsWith(ending);
}
