/**
 * The places of numbers in ascending order, equals in the order in which they stand. Stretches that ascend already are merged
 * two by two, so that a list made of a few of them is put in order in as few passes.
 */
export function orderOf(numbers: ArrayLike<number>): Uint32Array {
  const { length } = numbers;
  let order = new Uint32Array(length);
  for (let place = 0; place < length; place++) order[place] = place;
  let merged: Uint32Array = new Uint32Array(0);
  let starts = [0];
  for (let at = 1; at < length; at++) if (numbers[at]! < numbers[at - 1]!) starts.push(at);
  while (starts.length > 1) {
    if (merged.length === 0) merged = new Uint32Array(length);
    const left: number[] = [];
    for (let run = 0; run < starts.length; run += 2) {
      const start = starts[run]!;
      left.push(start);
      merge(numbers, order, merged, start, starts[run + 1] ?? length, starts[run + 2] ?? length);
    }
    [order, merged] = [merged as typeof order, order];
    starts = left;
  }
  return order;
}

/** Merges the places from `start` to `middle` with those from there to `end`. */
function merge(
  numbers: ArrayLike<number>,
  order: Uint32Array,
  merged: Uint32Array,
  start: number,
  middle: number,
  end: number,
): void {
  let left = start;
  let right = middle;
  for (let at = start; at < end; at++) {
    const takesLeft = left < middle && (right >= end || numbers[order[left]!]! <= numbers[order[right]!]!);
    merged[at] = takesLeft ? order[left++]! : order[right++]!;
  }
}
