import type { FileReading } from '../read-file.js';
import { addText } from '../recall/recall-reading.js';
import { rowCells } from './row-cells.js';

/** Fills in what the ledgers will show of mended rows that are still at fault, or follow another: they stand in no file. */
export function completeMended({ mended, rule, headings, remarks, draft, asideTexts }: FileReading): void {
  if (mended.length === 0) return;
  const rows = new Map(mended.map(({ line, row }) => [line, row]));
  const known = new Set(asideTexts.lines());
  for (let at = 0; at < remarks.size; at++) {
    const line = remarks.line(at);
    const text = rows.get(line);
    const row = remarks.row(at);
    if (text === undefined || row === null) continue;
    if (remarks.lacksSeen(at)) {
      const cells = rowCells(text, rule.dialect, headings.length);
      remarks.putSeen(at, cells?.[remarks.position(at)!] ?? '');
    }
    if (draft.aside[row] === 0 || known.has(line)) continue;
    addText(asideTexts, line, text);
    known.add(line);
  }
}
