/** Line numbers as ranges: 2, 3, 4, 9 becomes `2-4` and `9`. The numbers may come in any order. */
export function lineRanges(lines: readonly number[]): readonly string[] {
  const sorted = Uint32Array.from(lines).sort();
  const ranges: string[] = [];
  for (let at = 0; at < sorted.length; ) {
    let end = at;
    while (end + 1 < sorted.length && sorted[end + 1]! - sorted[end]! <= 1) end++;
    ranges.push(sorted[at] === sorted[end] ? `${sorted[at]}` : `${sorted[at]}-${sorted[end]}`);
    at = end + 1;
  }
  return ranges;
}
