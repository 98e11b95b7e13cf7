/** Lines of a file as stretches without a gap, each from its first line to its last. */
export interface LineStretches {
  readonly from: Uint32Array;
  readonly to: Uint32Array;
}

/** Line numbers as stretches, ascending. The numbers may come in any order, and some of them twice. */
export function lineStretches(lines: Uint32Array): LineStretches {
  const sorted = isAscending(lines) ? lines : lines.slice().sort();
  const from = new Uint32Array(sorted.length);
  const to = new Uint32Array(sorted.length);
  let count = 0;
  for (let at = 0; at < sorted.length; at++) {
    const line = sorted[at]!;
    if (count === 0 || line - to[count - 1]! > 1) from[count++] = line;
    to[count - 1] = line;
  }
  return { from: from.slice(0, count), to: to.slice(0, count) };
}

function isAscending(lines: Uint32Array): boolean {
  for (let at = 1; at < lines.length; at++) if (lines[at]! < lines[at - 1]!) return false;
  return true;
}

/** Stretches in words, all or the first of them: 2, 3, 4, 9 are `2-4` and `9`. */
export function stretchWords({ from, to }: LineStretches, most = from.length): string[] {
  return Array.from(from.subarray(0, most), (first, at) => (first === to[at] ? `${first}` : `${first}-${to[at]}`));
}
