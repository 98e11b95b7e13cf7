import type { DoubleEntry } from '../intake/check-double-entries.js';
import type { LedgerLine, LineInBytes, RowInBytes, SetAsideRow } from '../intake/ledger.js';
import type { PastReading } from '../intake/recall/past-import.js';
import type { UnmatchedWater } from '../intake/waters/alias.js';
import { delimitedRow } from './delimited.js';
import { DelimitedBytes } from './delimited-bytes.js';

const piece = 1 << 18;

/** The headings of `set-aside.csv` and `notes.csv`. */
export const ledgerColumns = ['file', 'line', 'column', 'seen', 'code', 'reason', 'remedy'] as const;

/** The headings of `set-aside-rows.csv`. */
export const asideColumns = ['file', 'line', 'row'] as const;

/** The headings of `double-entries.csv`. */
export const doubleEntryColumns = ['file', 'line', 'later_file', 'later_line', 'alike', 'keep'] as const;

/** The headings of `unmatched.csv`; its first three are those of a file of aliases. */
export const unmatchedColumns = ['name', 'region', 'waterbody', 'times', 'nearest', 'why'] as const;

/** The headings of `left-out.csv`. */
export const leftOutColumns = ['file', 'line', 'because'] as const;

function* inPieces(texts: Iterable<string>): Iterable<string> {
  let waiting = '';
  for (const text of texts) {
    waiting += text;
    if (waiting.length < piece) continue;
    yield waiting;
    waiting = '';
  }
  yield waiting;
}

/** Rows as CSV text, in pieces of some size. */
function delimited(rows: Iterable<readonly (string | number)[]>): Iterable<string> {
  function* texts(): Iterable<string> {
    for (const row of rows) yield delimitedRow(row);
  }
  return inPieces(texts());
}

/**
 * The text of `set-aside.csv` or `notes.csv` in pieces, each of which holds until the next is asked for. A cell may be told
 * as text, or by its bytes.
 */
export function* ledgerRows(lines: Iterable<LedgerLine | LineInBytes>): Iterable<string | Uint8Array> {
  yield delimitedRow(ledgerColumns);
  const rows = new DelimitedBytes(piece);
  for (const { file, line, column, seen, code, reason, remedy } of lines) {
    rows.repeated(file);
    rows.next();
    rows.whole(line);
    rows.next();
    rows.repeated(column);
    rows.next();
    if (typeof seen === 'string') rows.cell(seen);
    else rows.cellOf(seen);
    for (const text of [code, reason, remedy]) {
      rows.next();
      rows.repeated(text);
    }
    rows.endRow();
    if (rows.size >= piece) yield rows.take();
  }
  yield rows.take();
}

/** The text of `set-aside-rows.csv` in pieces, each of which holds until the next is asked for. */
export function* asideRows(lines: Iterable<SetAsideRow | RowInBytes>): Iterable<string | Uint8Array> {
  yield delimitedRow(asideColumns);
  const rows = new DelimitedBytes(piece);
  for (const { file, line, row } of lines) {
    rows.repeated(file);
    rows.next();
    rows.whole(line);
    rows.next();
    if (typeof row === 'string') rows.cell(row);
    else rows.cellOf(row);
    rows.endRow();
    if (rows.size >= piece) yield rows.take();
  }
  yield rows.take();
}

/** The text of `double-entries.csv`, in pieces: one line a pair of rows that record one event, with both places. */
export function doubleEntryRows(pairs: readonly DoubleEntry[]): Iterable<string> {
  function* rows(): Iterable<readonly (string | number)[]> {
    yield doubleEntryColumns;
    for (const { file, line, laterFile, laterLine, alike, keep } of pairs) {
      yield [file, line, laterFile, laterLine, alike.join(' '), keep];
    }
  }
  return delimited(rows());
}

/** The text of `unmatched.csv`, in pieces: one line a name that matched no water, ready to be filled in as an alias. */
export function unmatchedRows(names: readonly UnmatchedWater[]): Iterable<string> {
  function* rows(): Iterable<readonly (string | number)[]> {
    yield unmatchedColumns;
    for (const { name, region, times, nearest, why } of names) yield [name, region, '', times, nearest, why];
  }
  return delimited(rows());
}

/** The text of `left-out.csv`, in pieces: the rows that rules of the crosswalks left out. */
export function leftOutRows(readings: readonly PastReading[]): Iterable<string> {
  function* rows(): Iterable<readonly (string | number)[]> {
    yield leftOutColumns;
    for (const { file, leftOut = [] } of readings) for (const { line, because } of leftOut) yield [file, line, because];
  }
  return delimited(rows());
}
