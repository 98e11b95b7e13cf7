import type { FileReading } from './read-file.js';
import { met, RecordScanner } from './record-scanner.js';
import { openSource } from './source/open-source.js';
import { SourceError } from './source/text-source.js';

const window = 1 << 16;

/**
 * Fetches from a file the rows that were found at fault only after it was read: the cells remarked on, and the text of each
 * row set aside. Rows are found by where they begin, so that all else is passed over. Gives the line at which the file no
 * longer holds what was read before; null where nothing changed.
 */
export async function readAgain(from: string, reading: FileReading): Promise<number | null> {
  const { draft, rule, header, remarks, asideTexts } = reading;
  const known = asideTexts.lines();
  const byRow = new Map<number, number[]>();
  for (let at = 0; at < remarks.size; at++) {
    const row = remarks.row(at);
    if (row === null) continue;
    const lacksSeen = remarks.lacksSeen(at);
    if (!lacksSeen && (!remarks.setsAside(at) || known.has(draft.lines[row]!))) continue;
    const earlier = byRow.get(row);
    if (earlier === undefined) byRow.set(row, lacksSeen ? [at] : []);
    else if (lacksSeen) earlier.push(at);
  }
  if (byRow.size === 0) return null;
  const rows = Uint32Array.from(byRow.keys()).sort();
  const withheld = [...rule.privateColumns].map((name) => header.get(name)!).sort((a, b) => a - b);
  const scanner = new RecordScanner(rule.dialect, window);
  scanner.width = header.size;
  const source = await openSource(from, reading.file, rule, window).catch((error: unknown) => {
    if (error instanceof SourceError) return null;
    throw error;
  });
  if (source === null) return draft.lines[rows[0]!]!;
  try {
    let filledTo = 0;
    const start = async (offset: number, line: number) => {
      // A row within the bytes at hand needs no new reading.
      if (offset >= scanner.base && offset < filledTo && scanner.goTo(offset, line)) return;
      scanner.moveTo(offset, line);
      await source.seek(offset);
      filledTo = offset;
    };
    for (const row of rows) {
      await start(draft.offsets[row]!, draft.lines[row]!);
      let state = scanner.next();
      while (state === met.more) {
        const count = await source.read(scanner.room());
        scanner.filled(count);
        filledTo += count;
        state = scanner.next();
      }
      if (state === met.row && rule.dialect.isSheet && scanner.count < header.size) scanner.padTo(header.size);
      if (state !== met.row || scanner.count !== header.size || scanner.line !== draft.lines[row])
        return draft.lines[row]!;
      for (const at of byRow.get(row)!) {
        const position = remarks.position(at)!;
        remarks.putSeen(at, withheld.includes(position) ? 'withheld' : scanner.cellText(position));
      }
      if (draft.aside[row] === 1 && !known.has(scanner.line)) scanner.keepRow(asideTexts, withheld);
    }
  } finally {
    await source.close();
  }
  return null;
}
