/** Elements of one kind: the sets that hold them, and how many there are. */
export interface CoveredKind {
  readonly sets: readonly number[];
  readonly count: number;
}

/** The best that k sets can do. */
export interface BestCover {
  /** Elements covered. */
  readonly covered: number;
  /** Positions of the sets, ascending. */
  readonly picks: readonly number[];
}

/** Branches looked at before the search gives up. */
const MOST_BRANCHES = 4000;

/**
 * The most elements that any k of some sets cover, by branch and bound: the best k − i single gains bound what a branch
 * can still add, since gains only shrink. Null where that would take more than 4,000 branches. Among equals the first
 * found stands. Nemhauser GL, Wolsey LA (1981) Studies on Graphs and Discrete Programming, 279-301.
 */
export function exactCover(kinds: readonly CoveredKind[], sets: number, k: number, atLeast = 0): BestCover | null {
  const members = Array.from({ length: sets }, (): number[] => []);
  kinds.forEach(({ sets: own }, kind) => {
    for (const set of own) members[set]!.push(kind);
  });
  const covered = new Uint8Array(kinds.length);
  const gain = (set: number): number => {
    let sum = 0;
    for (const kind of members[set]!) if (covered[kind] === 0) sum += kinds[kind]!.count;
    return sum;
  };
  let best: BestCover = { covered: Math.max(0, atLeast - 1), picks: [] };
  let branches = 0;
  const search = (open: readonly number[], chosen: readonly number[], reached: number): boolean => {
    branches += 1;
    if (branches > MOST_BRANCHES) return false;
    if (reached > best.covered) best = { covered: reached, picks: [...chosen].sort((a, b) => a - b) };
    const left = k - chosen.length;
    if (left === 0) return true;
    const gains = open.map((set) => ({ set, gain: gain(set) })).filter((one) => one.gain > 0);
    gains.sort((a, b) => b.gain - a.gain || a.set - b.set);
    for (let at = 0; at < gains.length; at += 1) {
      let bound = reached;
      for (let i = at; i < Math.min(gains.length, at + left); i += 1) bound += gains[i]!.gain;
      if (bound <= best.covered) return true;
      const { set, gain: added } = gains[at]!;
      const taken = members[set]!.filter((kind) => covered[kind] === 0);
      for (const kind of taken) covered[kind] = 1;
      const rest = gains.slice(at + 1).map((one) => one.set);
      const went = search(rest, [...chosen, set], reached + added);
      for (const kind of taken) covered[kind] = 0;
      if (!went) return false;
    }
    return true;
  };
  const whole = search(
    Array.from({ length: sets }, (_, set) => set),
    [],
    0,
  );
  return whole && best.covered >= atLeast ? best : null;
}
