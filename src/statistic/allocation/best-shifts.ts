import { choiceOf, type ShiftBlock, type ShiftChoice, type ShiftLimits } from './shift-choice.js';

const impossible = Number.NEGATIVE_INFINITY;

/** A group solved: the best for every sum spent on it, and how many shifts each of its blocks, in turn, then takes. */
interface Stages {
  readonly best: Float64Array;
  /** By block and sum. */
  readonly taken: Uint8Array;
}

/** Blocks of one group one after the other: for every sum, the best with what the blocks before make of the rest. */
function addBlocks(blocks: readonly ShiftBlock[], unit: number, length: number): Stages {
  const best = new Float64Array(length).fill(impossible);
  best[0] = 0;
  const taken = new Uint8Array(blocks.length * length);
  blocks.forEach(({ size, gains }, at) => {
    const cost = size / unit;
    const row = at * length;
    // From the top down, so that what stands below is still without this block.
    for (let sum = length - 1; sum >= cost; sum -= 1) {
      let most = best[sum]!;
      let shifts = 0;
      // What several shifts bring together, the first of them first.
      let brought = 0;
      for (let shift = 1, rest = sum - cost; shift <= gains.length && rest >= 0; shift += 1, rest -= cost) {
        brought += gains[shift - 1]!;
        const value = best[rest]! + brought;
        if (value > most) {
          most = value;
          shifts = shift;
        }
      }
      best[sum] = most;
      taken[row + sum] = shifts;
    }
  });
  return { best, taken };
}

/** The largest whole number by which all sizes can be divided: sums between its multiples cannot be spent. */
function commonUnit(blocks: readonly ShiftBlock[]): number {
  let unit = 0;
  for (const { size } of blocks) for (let rest = size; rest > 0; ) [unit, rest] = [rest, unit % rest];
  return Math.max(1, unit);
}

/** Two parts side by side: for every sum, the best way to split it. Exactly `sum` is spent in both. */
function join(one: Float64Array, other: Float64Array): { best: Float64Array; ofOther: Uint32Array } {
  const best = new Float64Array(one.length).fill(impossible);
  const ofOther = new Uint32Array(one.length);
  for (let part = 0; part < other.length; part += 1) {
    const gain = other[part]!;
    if (gain === impossible) continue;
    for (let sum = part; sum < one.length; sum += 1) {
      const value = one[sum - part]! + gain;
      if (value > best[sum]!) {
        best[sum] = value;
        ofOther[sum] = part;
      }
    }
  }
  return { best, ofOther };
}

/** The groups that have limits of their own, one by one, and all others as one. */
function partsOf({ most: all, groups }: ShiftLimits) {
  const parts = groups.map(({ least, most }, group) => ({ groups: [group], least, most }));
  const free = parts.filter(({ least, most }) => least <= 0 && most >= all);
  const limited = parts.filter((part) => !free.includes(part));
  return [{ groups: free.flatMap((part) => part.groups), least: 0, most: all }, ...limited];
}

/**
 * The whole shifts that bring most within the limits, for every sum up to the most; null where no choice keeps them.
 * Exact, by dynamic programming over the sum spent: Bellman R (1957) Dynamic Programming, chapter 1; groups are solved
 * apart and then joined. Sizes and limits are whole numbers.
 */
export function bestShifts(
  blocks: readonly ShiftBlock[],
  limits: ShiftLimits,
): { readonly at: (most: number) => ShiftChoice | null } {
  const wrong = blocks.find(({ size }) => !(Number.isInteger(size) && size > 0));
  if (wrong !== undefined || !Number.isInteger(limits.most)) throw new RangeError('sizes and limits are whole numbers');
  const tooMany = blocks.find(({ gains }) => gains.length > 255);
  if (tooMany !== undefined) throw new RangeError('a block takes no more than 255 shifts');
  // Sums are counted in the unit that all sizes are multiples of.
  const unit = commonUnit(blocks);
  const whole = Math.floor(limits.most / unit);
  const blocksOf = limits.groups.map((): number[] => []);
  blocks.forEach(({ group }, at) => {
    blocksOf[group]!.push(at);
  });
  const groups = partsOf(limits).map(({ groups: members, least, most }) => {
    const own = members.flatMap((group) => blocksOf[group]!).sort((one, other) => one - other);
    const length = Math.max(0, Math.min(whole, Math.floor(most / unit))) + 1;
    const { best, taken } = addBlocks(
      own.map((at) => blocks[at]!),
      unit,
      length,
    );
    return { own, taken, length, kept: best.map((gain, sum) => (sum * unit >= least ? gain : impossible)) };
  });
  let all: Float64Array = groups[0]!.kept;
  const joins = groups.map(({ kept }, part) => {
    if (part === 0) return null;
    const joined = join(all, kept);
    all = joined.best;
    return joined.ofOther;
  });
  const within = new Uint32Array(whole + 1);
  for (let sum = 1; sum <= whole; sum += 1) within[sum] = all[sum]! > all[within[sum - 1]!]! ? sum : within[sum - 1]!;
  return {
    at: (most) => {
      let sum = within[Math.floor(Math.min(most, limits.most) / unit)]!;
      if (all[sum] === impossible) return null;
      const taken = new Array<number>(blocks.length).fill(0);
      for (let group = groups.length - 1; group >= 0; group -= 1) {
        const part = joins[group]?.[sum] ?? sum;
        let rest = part;
        const { own, taken: takenOf, length } = groups[group]!;
        for (let at = own.length - 1; at >= 0; at -= 1) {
          const shifts = takenOf[at * length + rest]!;
          taken[own[at]!] = shifts;
          rest -= (shifts * blocks[own[at]!]!.size) / unit;
        }
        sum -= part;
      }
      return choiceOf(blocks, taken);
    },
  };
}
