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
  const { draft, rule, headings, remarks, asideTexts } = reading;
  const wanted = rowsWanted(reading);
  if (wanted.length === 0) return null;
  const withheld = [...rule.privateColumns].map((name) => reading.header.get(name)!).sort((a, b) => a - b);
  const scanner = new RecordScanner(rule.dialect, window);
  const width = headings.length;
  scanner.width = width;
  const firstLine = draft.lines[wanted[0]!.row]!;
  const source = await openSource(from, reading.file, rule, window).catch((error: unknown) => {
    if (error instanceof SourceError) return null;
    throw error;
  });
  if (source === null) return firstLine;
  try {
    let filledTo = 0;
    for (const { row, remarks: places, isText } of wanted) {
      const offset = draft.offsets[row]!;
      const line = draft.lines[row]!;
      // A row within the bytes at hand needs no new reading.
      if (offset < scanner.base || offset >= filledTo || !scanner.goTo(offset, line)) {
        scanner.moveTo(offset, line);
        await source.seek(offset);
        filledTo = offset;
      }
      let state = scanner.next();
      while (state === met.more) {
        const count = await source.read(scanner.room());
        scanner.filled(count);
        filledTo += count;
        state = scanner.next();
      }
      if (state === met.row && rule.dialect.isSheet && scanner.count < width) scanner.padTo(width);
      if (state !== met.row || scanner.count !== width || scanner.line !== line) return line;
      for (const at of places) {
        const position = remarks.position(at)!;
        remarks.putSeen(at, withheld.includes(position) ? 'withheld' : scanner.cellText(position));
      }
      if (isText) scanner.keepRow(asideTexts, withheld);
    }
  } finally {
    await source.close();
  }
  return null;
}

/** A row to be fetched: for the cells of some remarks, for its whole text, or for both. */
interface WantedRow {
  readonly row: number;
  readonly remarks: number[];
  isText: boolean;
}

/** The rows to be fetched, in order of line. */
function rowsWanted({ remarks, asideTexts }: FileReading): readonly WantedRow[] {
  const known = asideTexts.inOrder();
  const wanted: WantedRow[] = [];
  let next = 0;
  for (const at of remarks.inOrder()) {
    const row = remarks.row(at);
    if (row === null) continue;
    const line = remarks.line(at);
    while (next < known.length && asideTexts.line(known[next]!) < line) next++;
    const isKnown = next < known.length && asideTexts.line(known[next]!) === line;
    const isText = remarks.setsAside(at) && !isKnown;
    if (!isText && !remarks.lacksSeen(at)) continue;
    let last = wanted.at(-1);
    if (last?.row !== row) {
      last = { row, remarks: [], isText: false };
      wanted.push(last);
    }
    if (isText) last.isText = true;
    if (remarks.lacksSeen(at)) last.remarks.push(at);
  }
  return wanted;
}
