import { choiceOf, type ShiftBlock, type ShiftChoice, type ShiftLimits } from './shift-choice.js';

/** The best of each group for every sum spent, and how many shifts its last block then takes. */
interface Stage {
  readonly best: Float64Array;
  readonly taken: Uint16Array;
}

const impossible = Number.NEGATIVE_INFINITY;

/** One block more: for every sum, the best with what the blocks before it make of the rest. */
function addBlock(before: Float64Array, { size, gains }: ShiftBlock): Stage {
  const best = before.slice();
  const taken = new Uint16Array(before.length);
  let brought = 0;
  gains.forEach((gain, shift) => {
    brought += gain;
    const cost = size * (shift + 1);
    for (let sum = cost; sum < best.length; sum += 1) {
      const value = before[sum - cost]! + brought;
      if (value > best[sum]!) {
        best[sum] = value;
        taken[sum] = shift + 1;
      }
    }
  });
  return { best, taken };
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
  const length = limits.most + 1;
  const start = new Float64Array(length).fill(impossible);
  start[0] = 0;
  const groups = partsOf(limits).map(({ groups: members, least, most }) => {
    const own = blocks.flatMap((block, at) => (members.includes(block.group) ? [at] : []));
    const stages: Stage[] = [];
    let best: Float64Array = start;
    for (const at of own) {
      const stage = addBlock(best, blocks[at]!);
      stages.push(stage);
      best = stage.best;
    }
    const kept = best.map((gain, sum) => (sum >= least && sum <= most ? gain : impossible));
    return { own, stages, kept };
  });
  let all: Float64Array = start;
  const joins = groups.map(({ kept }, part) => {
    if (part === 0) {
      all = kept;
      return null;
    }
    const joined = join(all, kept);
    all = joined.best;
    return joined.ofOther;
  });
  const within = new Uint32Array(length);
  for (let sum = 1; sum < length; sum += 1) within[sum] = all[sum]! > all[within[sum - 1]!]! ? sum : within[sum - 1]!;
  return {
    at: (most) => {
      let sum = within[Math.min(most, limits.most)]!;
      if (all[sum] === impossible) return null;
      const taken = new Array<number>(blocks.length).fill(0);
      for (let group = groups.length - 1; group >= 0; group -= 1) {
        const part = joins[group]?.[sum] ?? sum;
        let rest = part;
        const { own, stages } = groups[group]!;
        for (let at = own.length - 1; at >= 0; at -= 1) {
          const shifts = stages[at]!.taken[rest]!;
          taken[own[at]!] = shifts;
          rest -= shifts * blocks[own[at]!]!.size;
        }
        sum -= part;
      }
      return choiceOf(blocks, taken);
    },
  };
}
