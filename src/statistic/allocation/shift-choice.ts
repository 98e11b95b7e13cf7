/** Further shifts that one block can take: each brings less than the one before it, or as much. */
export interface ShiftBlock {
  /** The group whose limits it counts toward, such as its station. */
  readonly group: number;
  /** What one shift costs: a whole number above 0. */
  readonly size: number;
  /** What the first, second … shift brings, falling and never below 0. */
  readonly gains: readonly number[];
}

/** How much may be spent, in all and on each group. */
export interface ShiftLimits {
  /** The most in all: a whole number. */
  readonly most: number;
  /** The least and the most on each group; whole numbers. */
  readonly groups: readonly { readonly least: number; readonly most: number }[];
}

/** How many shifts each block takes, and what they bring together. */
export interface ShiftChoice {
  readonly taken: readonly number[];
  readonly spent: number;
  readonly gain: number;
}

/** What taken shifts bring and cost. */
export function choiceOf(blocks: readonly ShiftBlock[], taken: readonly number[]): ShiftChoice {
  let spent = 0;
  let gain = 0;
  blocks.forEach(({ size, gains }, at) => {
    for (let shift = 0; shift < taken[at]!; shift += 1) {
      spent += size;
      gain += gains[shift]!;
    }
  });
  return { taken, spent, gain };
}
