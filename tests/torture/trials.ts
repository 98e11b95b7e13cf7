import { randomFrom } from '../../src/statistic/random.js';
import type { Kind } from './trial.js';

/** What the trials of one kind gave. */
export interface Tally {
  readonly kind: string;
  readonly tried: number;
  readonly takenIn: number;
  readonly refused: number;
  readonly accounted: number;
  /** The trials that failed: their seeds, and what was lost, leaked or broken. */
  readonly failures: readonly { readonly seed: number; readonly what: string }[];
}

/** Runs trials of a kind with seeds from `first` on, each told before it begins; a failed one does not end the others. */
export async function runTrials(
  kind: Kind,
  first: number,
  count: number,
  begin: (seed: number) => Promise<void> = async () => {},
): Promise<Tally> {
  const failures: { seed: number; what: string }[] = [];
  const counts = { 'taken in': 0, refused: 0 };
  let accounted = 0;
  for (let seed = first; seed < first + count; seed++) {
    await begin(seed);
    try {
      const outcome = await kind.run(randomFrom(seed));
      counts[outcome.ended] += 1;
      accounted += outcome.accounted;
    } catch (mistake) {
      failures.push({ seed, what: mistake instanceof Error ? (mistake.stack ?? mistake.message) : String(mistake) });
    }
  }
  return { kind: kind.name, tried: count, takenIn: counts['taken in'], refused: counts.refused, accounted, failures };
}
