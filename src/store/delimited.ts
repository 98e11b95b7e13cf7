const needsQuotes = /[",\r\n]/u;
const startsFormula = /^[=+\-@\t\r\n＝＋－＠]/u;
const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/iu;

/**
 * Whether a spreadsheet may take a text for a formula when it opens or pastes it; plain numbers such as -5 are none. After
 * OWASP, "CSV Injection", with the wide forms that East Asian settings read alike.
 */
export function runsAsFormula(text: string): boolean {
  return startsFormula.test(text) && !plainNumber.test(text);
}

/**
 * A text that no spreadsheet runs when the file is opened: an apostrophe goes before what begins as a formula does, plain
 * numbers such as -5 excepted, and before an apostrophe, so that `honestText` gives every text back.
 */
export function inertText(text: string): string {
  return runsAsFormula(text) || text.startsWith("'") ? `'${text}` : text;
}

/** The text that `inertText` made inert. */
export function honestText(inert: string): string {
  const rest = inert.slice(1);
  return inert.startsWith("'") && (startsFormula.test(rest) || rest.startsWith("'")) ? rest : inert;
}

/** One cell of RFC 4180 text, inert. */
export function delimitedCell(cell: string | number): string {
  const text = inertText(String(cell));
  return needsQuotes.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** One row of RFC 4180 text, ended by a line feed, each cell inert. */
export function delimitedRow(cells: readonly (string | number)[]): string {
  return `${cells.map(delimitedCell).join(',')}\n`;
}
