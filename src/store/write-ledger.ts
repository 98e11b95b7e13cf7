import type { LedgerLine, SetAsideRow } from '../intake/ledger.js';
import { delimitedRow } from './delimited.js';

const piece = 1 << 16;

/** The headings of `set-aside.csv` and `notes.csv`. */
export const ledgerColumns = ['file', 'line', 'column', 'seen', 'code', 'reason', 'remedy'] as const;

/** The headings of `set-aside-rows.csv`. */
export const asideColumns = ['file', 'line', 'row'] as const;

/** Rows as CSV text, in pieces of some size. */
function* delimited(rows: Iterable<readonly (string | number)[]>): Iterable<string> {
  let text = '';
  for (const row of rows) {
    text += delimitedRow(row);
    if (text.length < piece) continue;
    yield text;
    text = '';
  }
  yield text;
}

/** The text of `set-aside.csv` or `notes.csv`, in pieces. */
export function ledgerRows(lines: readonly LedgerLine[]): Iterable<string> {
  function* rows(): Iterable<readonly (string | number)[]> {
    yield ledgerColumns;
    for (const line of lines) yield ledgerColumns.map((name) => line[name]);
  }
  return delimited(rows());
}

/** The text of `set-aside-rows.csv`, in pieces. */
export function asideRows(lines: readonly SetAsideRow[]): Iterable<string> {
  function* rows(): Iterable<readonly (string | number)[]> {
    yield asideColumns;
    for (const line of lines) yield asideColumns.map((name) => line[name]);
  }
  return delimited(rows());
}
