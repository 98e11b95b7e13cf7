import type { Random } from '../../src/statistic/random.js';

/** How a trial ended where nothing was wrong: the input was taken in, or refused with problems that say why. */
export interface Outcome {
  readonly ended: 'taken in' | 'refused';
  /** Rows whose fate was accounted for, values that were checked, or bytes that were read back. */
  readonly accounted: number;
}

/** One way to torture the program. A trial throws where something was lost, leaked or broken. */
export interface Kind {
  readonly name: string;
  /** What the accounted are: `rows`, `values`. */
  readonly counted: string;
  /** Seconds after which a single trial counts as hanging. */
  readonly patience: number;
  /** About how many trials fit into a second; a run of so many trials is spread over the kinds by it. */
  readonly pace: number;
  readonly run: (random: Random) => Promise<Outcome>;
}

/** Throws unless something holds, and says what does not. */
export function hold(holds: boolean, what: () => string): void {
  if (!holds) throw new Error(what());
}

/** One of several, by chance. */
export function oneOf<T>(random: Random, some: readonly T[]): T {
  return some[random.below(some.length)]!;
}
