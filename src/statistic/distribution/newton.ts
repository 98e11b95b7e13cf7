/** A function's value and slope at one point. */
export interface ValueAndSlope {
  readonly value: number;
  readonly slope: number;
}

/**
 * Where an increasing function is 0, by Newton's steps held inside a bracket that only shrinks; a step that would leave
 * it is halved or, where the bracket is still open, doubled. Written for functions of a logarithm or log odds, where a
 * last step of 1e-10 leaves the result good to the last digits. Throws when 300 steps do not settle.
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
    let next = at - value / slope;
    const tooFar = Math.abs(next - at) > 100 * reach;
    if (!(next > low && next < high) || tooFar) {
      const open = low === Number.NEGATIVE_INFINITY || high === Number.POSITIVE_INFINITY;
      next = open ? at - Math.sign(value) * reach : (low + high) / 2;
      reach *= 2;
    }
    if (Math.abs(next - at) <= 1e-10 || next === low || next === high) return next;
    at = next;
  }
  throw new Error(`no root found from ${start}`);
}
