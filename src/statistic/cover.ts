import { raisedTo } from './raised-to.js';

/** Sets picked one after another, each for what it adds. */
export interface GreedyCover {
  /** Positions among the sets given, in order of picking; a tie goes to the earlier set. */
  readonly picks: readonly number[];
  /** Elements covered after each pick. */
  readonly covered: readonly number[];
  /** The least share of the best possible cover that k greedy picks reach: 1 − (1 − 1/k)ᵏ. */
  readonly bound: number;
  /** The same for any k: 1 − 1/e. */
  readonly boundAnyNumber: number;
}

/**
 * The greedy cover of elements, such as fouled craft, by at most k sets, such as components; stops when nothing is left
 * to add. Nemhauser GL, Wolsey LA, Fisher ML (1978) Mathematical Programming 14:265-294.
 */
export function greedyCover(sets: readonly (readonly number[])[], k: number): GreedyCover {
  const remaining = sets.map((set) => new Set(set));
  const picks: number[] = [];
  const covered: number[] = [];
  let count = 0;
  while (picks.length < k) {
    let best = -1;
    let most = 0;
    remaining.forEach((set, index) => {
      if (set.size <= most) return;
      best = index;
      most = set.size;
    });
    if (best < 0) break;
    picks.push(best);
    count += most;
    covered.push(count);
    const taken = [...(remaining[best] ?? [])];
    for (const set of remaining) for (const element of taken) set.delete(element);
  }
  return { picks, covered, bound: k > 0 ? 1 - raisedTo(1 - 1 / k, k) : 0, boundAnyNumber: -Math.expm1(-1) };
}
