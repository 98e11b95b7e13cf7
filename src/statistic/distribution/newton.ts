/** A function's value and slope at one point. */
export interface ValueAndSlope {
  readonly value: number;
  readonly slope: number;
}

/**
 * Where an increasing function is 0, by Newton's steps held inside a bracket that only shrinks. In place of a step that would
 * leave it, or is over 100 times the reach, the bracket is halved or, while it is open, gone to by the reach; which doubles.
 * Written for functions of a logarithm or log odds, where a last step of 1e-10 leaves the result good to the last digits.
 * Throws when 300 steps do not settle.
 */
export function increasingRoot(evaluate: (at: number) => ValueAndSlope, start: number): number {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let at = start;
  let reach = 1;
  for (let steps = 0; steps < 300; steps += 1) {
    const { value, slope } = evaluate(at);
    if (value === 0) return at;
    if (value < 0) low = at;
    else high = at;
    const next = at - value / slope;
    // The step is less than the point can tell, and no bracket must undo what has been reached.
    if (next === at) return at;
    if (next > low && next < high && Math.abs(next - at) <= 100 * reach) {
      if (Math.abs(next - at) <= 1e-10) return next;
      at = next;
    } else {
      const open = low === Number.NEGATIVE_INFINITY || high === Number.POSITIVE_INFINITY;
      at = open ? at - Math.sign(value) * reach : (low + high) / 2;
      if (at === low || at === high) return at;
      reach *= 2;
    }
  }
  throw new Error(`no root found from ${start}`);
}
