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
  const { wanted, isText } = remarksToComplete(reading);
  if (wanted.length === 0) return null;
  const withheld = [...rule.privateColumns].map((name) => reading.header.get(name)!).sort((a, b) => a - b);
  const scanner = new RecordScanner(rule.dialect, window);
  const width = headings.length;
  scanner.width = width;
  const firstLine = remarks.line(wanted[0]!);
  const source = await openSource(from, reading.file, rule, window).catch((error: unknown) => {
    if (error instanceof SourceError) return null;
    throw error;
  });
  if (source === null) return firstLine;
  try {
    let filledTo = 0;
    for (let first = 0, next = 0; first < wanted.length; first = next) {
      const row = remarks.row(wanted[first]!)!;
      const line = draft.places.lineOf(row);
      const near = draft.places.placeBefore(row);
      const isOnTheWay = first > 0 && scanner.nextLine >= near.line && scanner.nextLine <= line;
      // A row within the bytes at hand needs no new reading.
      const isAtHand = isOnTheWay || (near.offset >= scanner.base && near.offset < filledTo);
      if (!isOnTheWay && !(isAtHand && scanner.goTo(near.offset, near.line))) {
        scanner.moveTo(near.offset, near.line);
        await source.seek(near.offset);
        filledTo = near.offset;
      }
      let state = scanner.next();
      while (state === met.more || (state === met.row && scanner.line < line)) {
        if (state === met.more) {
          const count = await source.read(scanner.room());
          scanner.filled(count);
          filledTo += count;
        }
        state = scanner.next();
      }
      if (state === met.row && rule.dialect.isSheet && scanner.count < width) scanner.padTo(width);
      if (state !== met.row || scanner.count !== width || scanner.line !== line) return line;
      let keepsText = false;
      for (next = first; next < wanted.length && remarks.row(wanted[next]!) === row; next++) {
        const at = wanted[next]!;
        keepsText ||= isText[next] === 1;
        if (!remarks.lacksSeen(at)) continue;
        const position = remarks.position(at)!;
        if (withheld.includes(position)) remarks.putSeen(at, 'withheld');
        else remarks.putSeenBytes(at, scanner.cells, scanner.starts[position]!, scanner.ends[position]!);
      }
      if (keepsText) scanner.keepRow(asideTexts, withheld);
    }
  } finally {
    await source.close();
  }
  return null;
}

/** The remarks whose rows must be fetched, in order of line, and for each whether the row's whole text is lacking. */
function remarksToComplete({ remarks, asideTexts }: FileReading): {
  readonly wanted: Uint32Array;
  readonly isText: Uint8Array;
} {
  const known = asideTexts.inOrder();
  const order = remarks.inOrder();
  const wanted = new Uint32Array(order.length);
  const isText = new Uint8Array(order.length);
  let count = 0;
  let next = 0;
  for (const at of order) {
    if (remarks.row(at) === null) continue;
    const line = remarks.line(at);
    while (next < known.length && asideTexts.line(known[next]!) < line) next++;
    const isKnown = next < known.length && asideTexts.line(known[next]!) === line;
    const lacksText = remarks.setsAside(at) && !isKnown;
    if (!lacksText && !remarks.lacksSeen(at)) continue;
    wanted[count] = at;
    isText[count] = lacksText ? 1 : 0;
    count++;
  }
  return { wanted: wanted.subarray(0, count), isText };
}
