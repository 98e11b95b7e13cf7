import type { ShiftBlock, ShiftLimits } from './shift-choice.js';

/** What could be had if shifts could be divided, and what a little more would bring there. */
export interface DividedShifts {
  /** An upper bound on what whole shifts can bring. */
  readonly gain: number;
  /** The shadow price: what one more unit of the sum would bring, 0 where nothing is left to buy. */
  readonly price: number;
}

interface Piece {
  readonly group: number;
  readonly size: number;
  readonly density: number;
}

/**
 * The linear relaxation, in which shifts can be divided: pieces by what they bring per unit, each group first to its
 * least, then all of them to the most in all; null where the least cannot be kept. Dantzig GB (1957) Operations Research
 * 5:266-277; limits on groups that lie within one limit on all keep the order of pieces optimal (Edmonds 1970).
 */
export function dividedShifts(blocks: readonly ShiftBlock[], limits: ShiftLimits): DividedShifts | null {
  const pieces = blocks
    .flatMap(({ group, size, gains }) => gains.map((gain): Piece => ({ group, size, density: gain / size })))
    .sort((one, other) => other.density - one.density);
  const left = pieces.map(({ size }) => size);
  const spent = limits.groups.map(() => 0);
  let rest = limits.most;
  let gain = 0;
  const take = (at: number, most: number): void => {
    const { group, density } = pieces[at]!;
    const amount = Math.min(left[at]!, most);
    left[at]! -= amount;
    spent[group]! += amount;
    rest -= amount;
    gain += amount * density;
  };
  pieces.forEach(({ group }, at) => {
    const short = limits.groups[group]!.least - spent[group]!;
    if (short > 0) take(at, short);
  });
  if (rest < 0 || limits.groups.some(({ least }, group) => spent[group]! < least)) return null;
  for (let at = 0; at < pieces.length; at += 1) {
    const { group, density } = pieces[at]!;
    const room = limits.groups[group]!.most - spent[group]!;
    if (left[at] === 0 || room <= 0) continue;
    const wanted = Math.min(left[at]!, room);
    // What the next unit would buy is this piece's, also where the sum ends just before it.
    if (rest < wanted || rest === 0) {
      take(at, rest);
      return { gain, price: density };
    }
    take(at, wanted);
  }
  return { gain, price: 0 };
}
