import { type HeldText, textHeld } from './held-text.js';
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

/** The remarks on one file that a ledger shows, in its order: those that set rows aside, or notes on rows that were kept. */
export function remarksFor(reading: FileReading, ledger: 'set aside' | 'notes'): Uint32Array {
  return reading.remarks.inOrder().filter((at) => isIn(reading, ledger, at));
}

function isIn({ remarks, draft }: FileReading, ledger: 'set aside' | 'notes', at: number): boolean {
  if (remarks.setsAside(at)) return ledger === 'set aside';
  const row = remarks.row(at);
  return ledger === 'notes' && row !== null && draft.aside[row] === 0;
}

/** A line of a ledger whose cell was not made a string yet. */
export interface LineInBytes extends Omit<LedgerLine, 'seen'> {
  readonly seen: HeldText;
}

/** A row set aside whose text was not made a string yet. */
export interface RowInBytes extends Omit<SetAsideRow, 'row'> {
  readonly row: HeldText;
}

function* linesOf(reading: FileReading, ledger: 'set aside' | 'notes'): Iterable<LineInBytes> {
  const { remarks, file, headings } = reading;
  for (const at of remarksFor(reading, ledger)) {
    const position = remarks.position(at);
    const column = position === null ? '' : headings[position]!;
    const { code, reason, remedy } = remarks.saying(at);
    yield { file, line: remarks.line(at), column, seen: remarks.seenBytes(at), code, reason, remedy };
  }
}

function* rowsAside({ file, asideTexts }: FileReading): Iterable<RowInBytes> {
  for (const at of asideTexts.inOrder()) yield { file, line: asideTexts.line(at), row: asideTexts.textBytes(at) };
}

/** The ledgers of all files, line by line, each line made when it is asked for. */
export interface LedgerStreams {
  readonly setAside: () => Iterable<LineInBytes>;
  readonly notes: () => Iterable<LineInBytes>;
  readonly setAsideRows: () => Iterable<RowInBytes>;
}

/** The ledgers of files, in their order. A ledger may be longer than the season it tells of, so that no list is made of it. */
export function ledgersOf(readings: readonly FileReading[]): LedgerStreams {
  const each = <Line>(lines: (reading: FileReading) => Iterable<Line>) =>
    function* (): Iterable<Line> {
      for (const reading of readings) yield* lines(reading);
    };
  return {
    setAside: each((reading) => linesOf(reading, 'set aside')),
    notes: each((reading) => linesOf(reading, 'notes')),
    setAsideRows: each(rowsAside),
  };
}

/** Lines of a ledger as a list, their cells as text. */
export function listOfLines(lines: Iterable<LineInBytes>): readonly LedgerLine[] {
  return Array.from(lines, (line) => ({ ...line, seen: textHeld(line.seen) }));
}

/** Rows set aside as a list, as text. */
export function listOfRows(rows: Iterable<RowInBytes>): readonly SetAsideRow[] {
  return Array.from(rows, (line) => ({ ...line, row: textHeld(line.row) }));
}

/** How many lines of a ledger have each code, the codes in order. */
export function countByCode(reading: FileReading, ledger: 'set aside' | 'notes'): Readonly<Record<string, number>> {
  const counts = new Map<string, number>();
  const { remarks } = reading;
  for (let at = 0; at < remarks.size; at++) {
    if (!isIn(reading, ledger, at)) continue;
    const { code } = remarks.saying(at);
    counts.set(code, (counts.get(code) ?? 0) + 1);
  }
  return Object.fromEntries([...counts].sort(([a], [b]) => (a < b ? -1 : 1)));
}
