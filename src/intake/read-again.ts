import { open } from 'node:fs/promises';
import { join } from 'node:path';
import type { AsideText, FileReading } from './read-file.js';
import { met, RecordScanner } from './record-scanner.js';

const window = 1 << 16;

/**
 * Fetches from a file the rows that were found at fault only after it was read: the cells remarked on, and the text of each
 * row set aside. Rows are found by where they begin, so that all else is passed over. Gives the line at which the file no
 * longer holds what was read before; null where nothing changed.
 */
export async function readAgain(from: string, reading: FileReading): Promise<number | null> {
  const { draft, rule, header } = reading;
  const known = new Set(reading.asideTexts.map(({ line }) => line));
  const wanted = new Set<number>();
  for (const { row, seen } of reading.remarks) if (row !== null && seen === null) wanted.add(row);
  for (const { row, severity } of reading.remarks) {
    if (row !== null && severity === 'sets aside' && !known.has(draft.lines[row]!)) wanted.add(row);
  }
  if (wanted.size === 0) return null;
  const rows = [...wanted].sort((a, b) => a - b);
  const withheld = [...rule.privateColumns].map((name) => header.get(name)!).sort((a, b) => a - b);
  const scanner = new RecordScanner(rule.dialect, window);
  scanner.width = header.size;
  const byRow = new Map<number, typeof reading.remarks>();
  for (const remark of reading.remarks) {
    if (remark.row === null || remark.seen !== null) continue;
    const earlier = byRow.get(remark.row);
    if (earlier === undefined) byRow.set(remark.row, [remark]);
    else earlier.push(remark);
  }
  const fetched: AsideText[] = [];
  const handle = await open(join(from, reading.file), 'r');
  try {
    let filledTo = 0;
    const start = (offset: number, line: number) => {
      // A row within the bytes at hand needs no new reading.
      if (offset >= scanner.base && offset < filledTo && scanner.goTo(offset, line)) return;
      scanner.moveTo(offset, line);
      filledTo = offset;
    };
    for (const row of rows) {
      start(draft.offsets[row]!, draft.lines[row]!);
      let state = scanner.next();
      while (state === met.more) {
        const room = scanner.room();
        const { bytesRead } = await handle.read(room, 0, Math.min(room.length, window), filledTo);
        scanner.filled(bytesRead);
        filledTo += bytesRead;
        state = scanner.next();
      }
      if (state !== met.row || scanner.count !== header.size || scanner.line !== draft.lines[row])
        return draft.lines[row]!;
      for (const remark of byRow.get(row) ?? []) {
        const position = remark.position!;
        remark.seen = withheld.includes(position) ? 'withheld' : scanner.cellText(position);
      }
      if (draft.aside[row] === 1 && !known.has(scanner.line)) {
        fetched.push({ line: scanner.line, row: scanner.rowText(withheld) });
      }
    }
  } finally {
    await handle.close();
  }
  for (const text of fetched) reading.asideTexts.push(text);
  reading.asideTexts.sort((a, b) => a.line - b.line);
  return null;
}
