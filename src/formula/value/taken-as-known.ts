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

/** That something from records decides which rows are counted, in every resample anew, so that its uncertainty is in the interval. */
export function drawnAgain(name: string): string {
  return `${name} decides which rows are counted, anew in every resample`;
}

/** Why a number has no interval whose rows something from records decides in a way that cannot be drawn again. */
export function notDrawnAgain(names: readonly string[], rows = 'rows are counted'): string {
  return `${names.join(' and ')} decides which ${rows}, and they cannot be drawn again with it here`;
}
