const needsQuotes = /[",\r\n]/u;

/** One row of RFC 4180 text, ended by a line feed; a cell keeps its text whatever it begins with. */
export function delimitedRow(cells: readonly (string | number)[]): string {
  const written = cells.map((cell) => {
    const text = String(cell);
    return needsQuotes.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  });
  return `${written.join(',')}\n`;
}
