/**
 * Whether a row, cut at its delimiters, shows a quoted cell that lost the delimiter before it, as `2025-05-01"Name, O13",C`
 * does: a quote stands within a bare cell, neither first nor last in it, and a later bare cell ends in the quote that would
 * close it, none between them closing it sooner. A doubled quote closes nothing, after RFC 4180, section 2, rule 7.
 *
 * The rest of a row never hides what its later cells show by themselves, so that an ending of a row that shows nothing shows
 * nothing behind any other cells either.
 *
 * @param starts where the cells begin within `bytes`, as they stand in the file, their quotes included
 * @param ends where they end, likewise
 * @param quote the byte that quotes cells
 */
export function showsTornQuote(
  bytes: Uint8Array,
  starts: Int32Array,
  ends: Int32Array,
  count: number,
  quote: number,
): boolean {
  /** The first cell whose quote may still be open; -1 for none. */
  let openSince = -1;
  for (let cell = 0; cell < count; cell++) {
    const start = starts[cell]!;
    const end = ends[cell]!;
    const isBare = bytes[start] !== quote;
    let at = start;
    while (at < end) {
      if (bytes[at] !== quote) {
        at++;
        continue;
      }
      const first = at;
      while (at < end && bytes[at] === quote) at++;
      if ((at - first) % 2 === 1) {
        if (at === end && openSince >= 0 && openSince < cell) return true;
        openSince = -1;
      }
      // The last quote of an even run may be the one that opens: 22'6""Name has one of its own.
      if (isBare && at < end && openSince < 0) openSince = cell;
    }
  }
  return false;
}
