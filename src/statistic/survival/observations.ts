/** What was followed: how long, whether it ended then (1) or was still open (0), and how many alike each stands for. */
export interface Observations {
  readonly times: ArrayLike<number>;
  readonly ended: ArrayLike<number>;
  readonly weights?: ArrayLike<number> | undefined;
}

/** Positions of the observations by time, earliest first. Throws on a time that is not finite or below 0. */
export function orderByTime(times: ArrayLike<number>): Uint32Array {
  const order = Uint32Array.from({ length: times.length }, (_, i) => i);
  let sorted = true;
  let before = 0;
  for (let i = 0; i < times.length; i += 1) {
    const time = times[i]!;
    if (!(time >= 0 && time < Number.POSITIVE_INFINITY)) throw new RangeError(`a time of ${time} at position ${i}`);
    if (time < before) sorted = false;
    before = time;
  }
  return sorted ? order : order.sort((a, b) => times[a]! - times[b]! || a - b);
}
