/** The cells of RFC 4180 text as a spreadsheet takes them in. */
export function cellsOf(text: string): string[] {
  return [...text.matchAll(/("(?:[^"]|"")*"|[^,\r\n"]*)(?:,|\r?\n|$)/g)].map(([, cell]) =>
    cell!.startsWith('"') ? cell!.slice(1, -1).replaceAll('""', '"') : cell!,
  );
}

/** Whether a spreadsheet would run a cell: OWASP, "CSV Injection". */
export function isRun(cell: string): boolean {
  return /^[=+\-@\t\r＝＋－＠]/.test(cell) && !/^[+-]?[\d.]+$/.test(cell);
}

/** The cells of a text that a spreadsheet would run. */
export function cellsThatRun(text: string): readonly string[] {
  return cellsOf(text).filter(isRun);
}
