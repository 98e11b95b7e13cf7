import type { FileReading } from './read-file.js';

/** A line of `set-aside.csv` or `notes.csv`: one problem of one row. */
export interface LedgerLine {
  readonly file: string;
  readonly line: number;
  /** The column's heading; empty for the row as a whole. */
  readonly column: string;
  /** The cell as it stands in the file; `withheld` for a private one. */
  readonly seen: string;
  readonly code: string;
  readonly reason: string;
  readonly remedy: string;
}

/** A line of `set-aside-rows.csv`: the text of a row that was set aside, private cells withheld. */
export interface SetAsideRow {
  readonly file: string;
  readonly line: number;
  readonly row: string;
}

/** The problems of one file's rows: those that set rows aside, and notes on rows that were kept. */
export function ledgerOf(reading: FileReading): {
  readonly setAside: readonly LedgerLine[];
  readonly notes: readonly LedgerLine[];
} {
  const names = [...reading.header.keys()];
  const setAside: LedgerLine[] = [];
  const notes: LedgerLine[] = [];
  const ordered = [...reading.remarks].sort((a, b) => a.line - b.line || (a.position ?? -1) - (b.position ?? -1));
  for (const { severity, line, row, position, seen, code, reason, remedy } of ordered) {
    const column = position === null ? '' : names[position]!;
    const entry = { file: reading.file, line, column, seen: seen ?? '', code, reason, remedy };
    if (severity === 'sets aside') setAside.push(entry);
    else if (row !== null && reading.draft.aside[row] === 0) notes.push(entry);
  }
  return { setAside, notes };
}

/** How many lines of a ledger have each code, the codes in order. */
export function countByCode(lines: readonly LedgerLine[]): Readonly<Record<string, number>> {
  const counts = new Map<string, number>();
  for (const { code } of lines) counts.set(code, (counts.get(code) ?? 0) + 1);
  return Object.fromEntries([...counts].sort(([a], [b]) => (a < b ? -1 : 1)));
}
