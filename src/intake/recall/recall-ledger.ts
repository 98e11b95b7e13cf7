import type { LedgerLine } from '../ledger.js';
import { rowCells } from '../mending/row-cells.js';
import type { FileReading } from '../read-file.js';
import type { PastImport } from './past-import.js';
import { addText } from './recall-reading.js';

/** What the ledgers of an earlier import hold of its files: cells as they were shown, and rows set aside. */
export class LedgerRecall {
  readonly #cells = new Map<string, string>();
  readonly #rows = new Map<string, string>();

  constructor(past: PastImport) {
    for (const line of [...past.setAside, ...past.notes]) this.#cells.set(cellName(line), line.seen);
    for (const { file, line, row } of past.setAsideRows) this.#rows.set(`${file}\n${line}`, row);
  }

  /**
   * Fills in what the ledgers will show of a recalled reading. False where a row is at fault that was not before: its text
   * stands in the file alone, which must be read again.
   */
  complete(reading: FileReading): boolean {
    const { file, headings, remarks, draft, asideTexts } = reading;
    const known = new Set(asideTexts.lines());
    for (let at = 0; at < remarks.size; at++) {
      const line = remarks.line(at);
      if (remarks.lacksSeen(at)) {
        const position = remarks.position(at)!;
        const name = cellName({ file, line, column: headings[position]! });
        const seen = this.#cells.get(name) ?? this.#cellOfRow(reading, line, position);
        if (seen === null) return false;
        remarks.putSeen(at, seen);
      }
      const row = remarks.row(at);
      if (row === null || draft.aside[row] === 0 || known.has(line)) continue;
      const text = this.#rows.get(`${file}\n${line}`);
      if (text === undefined) return false;
      addText(asideTexts, line, text);
      known.add(line);
    }
    return true;
  }

  /** A cell of a row that was set aside, whose text is known; null where it is not. */
  #cellOfRow({ file, rule, headings }: FileReading, line: number, position: number): string | null {
    const text = this.#rows.get(`${file}\n${line}`);
    const cells = text === undefined ? null : rowCells(text, rule.dialect, headings.length);
    return cells?.[position] ?? null;
  }
}

function cellName({ file, line, column }: Pick<LedgerLine, 'file' | 'line' | 'column'>): string {
  return `${file}\n${line}\n${column}`;
}
