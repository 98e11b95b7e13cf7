import { AsideTexts, type PackedAsideTexts } from '../aside-texts.js';
import { BytePool } from '../byte-pool.js';
import { met, RecordScanner } from '../record-scanner.js';
import { openSource } from '../source/open-source.js';
import { SourceError, type TextSource } from '../source/text-source.js';
import type { WantedRows } from './wanted-rows.js';

const window = 1 << 16;

/** What was fetched of the rows wanted, as plain values that threads may hand on. */
export interface FetchedRows {
  /** The line at which the file no longer holds what was read before; null where nothing changed. */
  readonly changedAt: number | null;
  /** The cells wanted as a ledger may show them, each up to its end. */
  readonly cells: Uint8Array;
  readonly cellEnds: Uint32Array;
  readonly rows: PackedAsideTexts;
}

/** The rows fetched so far, and what there is of them. */
class Fetched {
  readonly #wanted: WantedRows;
  readonly #cells = new BytePool();
  readonly #cellEnds: Uint32Array;
  readonly #rows = new AsideTexts();

  constructor(wanted: WantedRows) {
    this.#wanted = wanted;
    this.#cellEnds = new Uint32Array(wanted.positions.length);
    this.#rows.expect(wanted.lines.length, wanted.textBytes);
  }

  /** Takes what is wanted of the row that a scanner is at. */
  take(at: number, scanner: RecordScanner): void {
    const { withheld, positions, cellEnds, keepsText } = this.#wanted;
    for (let cell = at === 0 ? 0 : cellEnds[at - 1]!; cell < cellEnds[at]!; cell++) {
      const position = positions[cell]!;
      if (withheld.includes(position)) this.#cells.addText('withheld');
      else this.#cells.add(scanner.cells, scanner.starts[position]!, scanner.ends[position]!);
      this.#cellEnds[cell] = this.#cells.size;
    }
    if (keepsText[at] === 1) scanner.keepRow(this.#rows, withheld);
  }

  pack(changedAt: number | null): FetchedRows {
    return { changedAt, cells: this.#cells.bytes, cellEnds: this.#cellEnds, rows: this.#rows.pack() };
  }
}

/**
 * Fetches rows from their file, where they are found by where they begin, so that all else is passed over. A file that is
 * gone, or can no longer be read, counts as changed.
 */
export async function fetchRows(wanted: WantedRows): Promise<FetchedRows> {
  const fetched = new Fetched(wanted);
  const source = await openSource(wanted.from, wanted.file, wanted.settings, window).catch((error: unknown) => {
    const isGone = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    if (isGone || error instanceof SourceError) return null;
    throw error;
  });
  if (source === null) return fetched.pack(wanted.lines[0]!);
  try {
    return fetched.pack(await fetchFrom(source, wanted, fetched));
  } finally {
    await source.close();
  }
}

/** Gives the line at which the file no longer holds what was read before; null where nothing changed. */
async function fetchFrom(source: TextSource, wanted: WantedRows, fetched: Fetched): Promise<number | null> {
  const { settings, width, lines, nearLines, nearOffsets } = wanted;
  const { dialect } = settings;
  const scanner = new RecordScanner(dialect, window);
  scanner.width = width;
  let filledTo = 0;
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!;
    const nearLine = nearLines[at]!;
    const nearOffset = nearOffsets[at]!;
    const isOnTheWay = at > 0 && scanner.nextLine >= nearLine && scanner.nextLine <= line;
    // A row within the bytes at hand needs no new reading.
    const isAtHand = isOnTheWay || (nearOffset >= scanner.base && nearOffset < filledTo);
    if (!isOnTheWay && !(isAtHand && scanner.goTo(nearOffset, nearLine))) {
      scanner.moveTo(nearOffset, nearLine);
      await source.seek(nearOffset);
      filledTo = nearOffset;
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
    if (state === met.row && dialect.isSheet && scanner.count < width) scanner.padTo(width);
    if (state !== met.row || scanner.count !== width || scanner.line !== line) return line;
    fetched.take(at, scanner);
  }
  return null;
}
