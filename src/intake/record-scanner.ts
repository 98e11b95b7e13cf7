import type { AsideTexts } from './aside-texts.js';
import type { Dialect } from './crosswalk.js';
import type { RowBlock } from './row-block.js';
import type { RowEndings } from './row-endings.js';
import { showsTornQuote } from './torn-quote.js';

/** What `next` met: a row, bytes that end before the row does, or the end of the file. */
export const met = { more: 0, row: 1, end: 2, tooLong: 3 } as const;

const ordinary = 0;
const delimiterClass = 1;
const lineFeedClass = 2;
const carriageReturnClass = 3;
const quoteClass = 4;
const highClass = 5;

const lineFeed = 10;
const carriageReturn = 13;

/** A quoted cell that runs over lines for longer than this is taken for a quote that nobody closed. */
const longestQuoted = 1 << 20;
/** A row longer than this is none: the file is no delimited text. */
const longestRow = 1 << 24;
const mostCells = 1 << 16;
/** How many bytes more are at hand than may be filled. */
const spare = 4;

/**
 * Cuts bytes into rows and cells, as RFC 4180 does, with any of LF, CR and CRLF ending a line, in whatever chunks the bytes
 * arrive. After `next` met a row, `starts` and `ends` bound its `count` cells within `cells`, already without quotes, and
 * `rawStarts` and `rawEnds` bound them within `bytes`, as they stand in the file.
 *
 * A quoted row takes a slower path. A quote that is never closed costs only its own first line: the row is `broken`, and
 * the next one begins on the next line. Two signs tell that a quote was not closed: something other than a delimiter
 * follows the closing one, or the quoted cell holds a line with as many delimiters as a row. Where rows have but one or two
 * cells, too many or too few of them tell it too. Elsewhere such a row stays one row, with all its lines: its later lines,
 * read as rows of their own, could pass for sound ones whose cells have moved, private ones among them.
 *
 * Long because the plain and the quoted path share one place in one buffer, and must agree on where a row ends.
 */
export class RecordScanner {
  bytes: Uint8Array;
  cells: Uint8Array;
  starts: Int32Array = new Int32Array(256);
  ends: Int32Array = new Int32Array(256);
  rawStarts = this.starts;
  rawEnds = this.ends;
  count = 0;
  /** The row's first physical line, from 1. */
  line = 0;
  recordStart = 0;
  /** Where the row ends, its line end left off. */
  recordEnd = 0;
  /** Whether the row holds a quote that does not end. */
  broken = false;
  /** Whether the row holds bytes beyond ASCII. */
  high = false;
  /** Whether a cell that is not quoted holds a quote. */
  quoteWithin = false;
  /** How many cells a row should have; 0 while that is unknown. */
  width = 0;
  /** Where in the file `bytes` begins. */
  base = 0;
  /** Rows that begin at or behind this place of the file are left alone. */
  until = Number.POSITIVE_INFINITY;

  readonly #dialect: Dialect;
  readonly #classes = new Uint8Array(256);
  readonly #classesUnquoted: Uint8Array;
  #plainStarts = this.starts;
  #plainEnds = this.ends;
  #quotedStarts: Int32Array = new Int32Array(64);
  #quotedEnds: Int32Array = new Int32Array(64);
  #quotedRawStarts: Int32Array = new Int32Array(64);
  #quotedRawEnds: Int32Array = new Int32Array(64);
  #scratch = new Uint8Array(0);
  #limit = 0;
  #ended = false;
  #position = 0;
  #nextLine = 1;

  constructor(dialect: Dialect, chunk: number) {
    this.#dialect = dialect;
    // A line feed stands behind the last byte, so that the loop need not watch the limit, and bytes to be read with it behind that.
    this.bytes = new Uint8Array(chunk + spare);
    this.cells = this.bytes;
    this.#classes.fill(highClass, 128);
    this.#classes[dialect.delimiter] = delimiterClass;
    this.#classes[lineFeed] = lineFeedClass;
    this.#classes[carriageReturn] = carriageReturnClass;
    this.#classesUnquoted = this.#classes.slice();
    if (dialect.quote !== null) this.#classes[dialect.quote] = quoteClass;
  }

  /** Where the caller shall put at least one more byte; what was read of an unfinished row moves to the front. */
  room(): Uint8Array {
    const rest = this.#limit - this.#position;
    const most = this.bytes.length - spare;
    const wide = rest * 2 >= most ? new Uint8Array(most * 2 + spare) : this.bytes;
    wide.set(this.bytes.subarray(this.#position, this.#limit));
    this.bytes = wide;
    this.base += this.#position;
    this.#limit = rest;
    this.#position = 0;
    return this.bytes.subarray(rest, this.bytes.length - spare);
  }

  /** Says how many bytes were put there; none means that the file ends. */
  filled(count: number): void {
    this.#limit += count;
    this.bytes[this.#limit] = lineFeed;
    if (count === 0) this.#ended = true;
  }

  /** Begins over at a place of the file whose line is known; the bytes come afterwards. */
  moveTo(base: number, line: number): void {
    this.base = base;
    this.#nextLine = line;
    this.#position = 0;
    this.#limit = 0;
    this.#ended = false;
  }

  /** Goes to a place among the bytes at hand; false where it lies outside them. */
  goTo(offset: number, line: number): boolean {
    const position = offset - this.base;
    if (position < 0 || position > this.#limit) return false;
    this.#position = position;
    this.#nextLine = line;
    return true;
  }

  /** Where in the file the next row begins, or blank lines before it. */
  get offset(): number {
    return this.base + this.#position;
  }

  /** The physical line that begins there. */
  get nextLine(): number {
    return this.#nextLine;
  }

  /** Skips a byte order mark at the place now reached. */
  skip(bytes: number): void {
    this.#position += bytes;
  }

  /** The bytes that wait to be read. */
  waiting(): Uint8Array {
    return this.bytes.subarray(this.#position, this.#limit);
  }

  /** Goes on to the next row; blank lines are passed over. */
  next(): number {
    for (;;) {
      if (this.base + this.#position >= this.until) return met.end;
      if (this.#position === this.#limit) return this.#ended ? met.end : met.more;
      this.line = this.#nextLine;
      this.recordStart = this.#position;
      this.broken = false;
      this.high = false;
      this.quoteWithin = false;
      let state = this.#plain(this.#classes);
      if (state === quotedRow) state = this.#quoted();
      if (state !== met.row) {
        return state === met.more && this.#limit - this.#position > longestRow ? met.tooLong : state;
      }
      if (!this.#isBlank()) return met.row;
    }
  }

  /** Adds the row as it stands in the file to others, the cells at the positions given withheld. */
  keepRow(rows: AsideTexts, withheld: readonly number[]): void {
    const cells: (readonly [start: number, end: number])[] = [];
    for (const position of withheld) {
      if (position < this.count) cells.push([this.rawStarts[position]!, this.rawEnds[position]!]);
    }
    rows.add(this.line, this.bytes, this.recordStart, this.recordEnd, cells);
  }

  /**
   * Takes as many of the next rows into a block as it has room for, up to the first that is not whole at hand, of another
   * width, blank, quoted, or beyond ASCII: that one is left to `next`.
   */
  takeBlock(block: RowBlock): void {
    const { bytes } = this;
    const { width, most, starts, ends } = block;
    const classes = this.#classes;
    const limit = this.#limit;
    const last = Math.min(limit, this.until - this.base);
    let position = this.#position;
    let line = this.#nextLine;
    let count = 0;
    rows: while (count < most && position < last) {
      let at = position;
      let cellStart = at;
      let slot = count * width;
      const end = slot + width;
      for (;;) {
        const kind = classes[bytes[at]!]!;
        if (kind === ordinary) {
          at++;
          continue;
        }
        if (kind > carriageReturnClass || at >= limit) break rows;
        if (kind === carriageReturnClass && at + 1 >= limit) break rows;
        if (slot === end) break rows;
        starts[slot] = cellStart;
        ends[slot] = at;
        slot++;
        if (kind !== delimiterClass) {
          if (slot !== end) break rows;
          block.from[count] = position;
          block.to[count] = at;
          block.lines[count] = line;
          position = kind === carriageReturnClass && bytes[at + 1] === lineFeed ? at + 2 : at + 1;
          line++;
          count++;
          continue rows;
        }
        at++;
        cellStart = at;
      }
    }
    block.bytes = bytes;
    block.count = count;
    this.#position = position;
    this.#nextLine = line;
  }

  /**
   * Takes rows whose endings are known as `takeBlock` does, up to the first whose ending is not. Where a row begins with the
   * same cells as the one above it, both have the bounds of those above.
   */
  takeEnded(block: RowBlock, known: RowEndings): void {
    const { bytes } = this;
    const { width, most, starts, ends, endings } = block;
    const classes = this.#classes;
    const limit = this.#limit;
    const last = Math.min(limit, this.until - this.base);
    let position = this.#position;
    let line = this.#nextLine;
    let count = 0;
    let headLength = 0;
    rows: while (count < most && position < last) {
      const first = count * width;
      let at = position;
      if (headLength > 0 && known.alike(at, block.from[count - 1]!, headLength)) {
        for (let slot = first; slot < first + width; slot++) {
          starts[slot] = starts[slot - width]!;
          ends[slot] = ends[slot - width]!;
        }
        at += headLength;
      } else {
        for (let slot = first; slot < first + width; slot++) {
          starts[slot] = at;
          while (classes[bytes[at]!] === ordinary) at++;
          if (classes[bytes[at]!] !== delimiterClass || at >= limit) break rows;
          ends[slot] = at;
          at++;
        }
        headLength = at - position;
      }
      const ending = known.find(bytes, at, limit);
      if (ending === 0) break;
      endings[count] = ending;
      block.from[count] = position;
      block.to[count] = known.end - (bytes[known.end - 1] === carriageReturn ? 1 : 0);
      block.lines[count] = line;
      position = known.end + 1;
      line++;
      count++;
    }
    block.bytes = bytes;
    block.count = count;
    this.#position = position;
    this.#nextLine = line;
  }

  /** Goes back to a row of a block that was just taken, as if `next` had met it. */
  show(block: RowBlock, row: number): void {
    if (block.endings[row] !== 0) {
      this.#showAgain(block.from[row]!, block.lines[row]!);
      return;
    }
    const first = row * block.width;
    this.cells = this.bytes;
    this.starts = this.rawStarts = block.starts.subarray(first, first + block.width);
    this.ends = this.rawEnds = block.ends.subarray(first, first + block.width);
    this.count = block.width;
    this.line = block.lines[row]!;
    this.recordStart = block.from[row]!;
    this.recordEnd = block.to[row]!;
    this.broken = false;
    this.high = false;
    this.quoteWithin = false;
  }

  /** Cuts a row at hand once more, and stays where the reading is. */
  #showAgain(from: number, line: number): void {
    const [position, nextLine] = [this.#position, this.#nextLine];
    this.#position = from;
    this.#nextLine = line;
    this.next();
    this.#position = position;
    this.#nextLine = nextLine;
  }

  /** Where the line feed stands that ends the row, where the row is cut by delimiters and line ends alone; null elsewhere. */
  get plainEnd(): number | null {
    const { bytes, recordEnd } = this;
    if (this.cells !== bytes || this.high || this.broken) return null;
    if (bytes[recordEnd] === lineFeed) return recordEnd;
    return bytes[recordEnd] === carriageReturn && bytes[recordEnd + 1] === lineFeed ? recordEnd + 1 : null;
  }

  /** Whether the row, which has as many cells as it should, shows a quoted cell that lost the delimiter before it. */
  get torn(): boolean {
    const { quote } = this.#dialect;
    if (!this.quoteWithin || quote === null) return false;
    return showsTornQuote(this.bytes, this.rawStarts, this.rawEnds, this.count, quote);
  }

  /** The text of one of the row's cells, without quotes. */
  cellText(position: number): string {
    const { cells } = this;
    const buffer = Buffer.from(cells.buffer, cells.byteOffset, cells.length);
    return buffer.toString('utf8', this.starts[position]!, this.ends[position]!);
  }

  /** Adds blank cells at the end of a row that has fewer: a sheet keeps none behind the last that is filled. */
  padTo(width: number): void {
    const bounds = [this.starts, this.ends, this.rawStarts, this.rawEnds].map((from) => {
      const to = new Int32Array(width);
      to.set(from.subarray(0, this.count));
      return to;
    }) as [Int32Array, Int32Array, Int32Array, Int32Array];
    for (const [index, to] of bounds.entries()) to.fill(index < 2 ? 0 : this.recordEnd, this.count);
    [this.starts, this.ends, this.rawStarts, this.rawEnds] = bounds;
    this.count = width;
  }

  /** Whether nothing stands on the line; a pair of quotes is something, and in a file of one column so are blanks. */
  #isBlank(): boolean {
    if (this.count !== 1 || this.broken) return false;
    for (let at = this.rawStarts[0]!; at < this.rawEnds[0]!; at++) {
      if (this.bytes[at] !== 32 && this.bytes[at] !== 9) return false;
    }
    return this.width !== 1 || this.rawStarts[0] === this.rawEnds[0];
  }

  /** Reads a row by delimiters and line ends alone; gives way where a cell begins with a quote. */
  #plain(classes: Uint8Array): number {
    const { bytes } = this;
    let starts = this.#plainStarts;
    let ends = this.#plainEnds;
    let at = this.#position;
    let cellStart = at;
    let count = 0;
    let high = false;
    for (;;) {
      const kind = classes[bytes[at]!]!;
      if (kind === ordinary) {
        at++;
        continue;
      }
      if (kind === highClass) {
        high = true;
        at++;
        continue;
      }
      if (kind === quoteClass) {
        if (at === cellStart) return quotedRow;
        this.quoteWithin = true;
        at++;
        continue;
      }
      const last = at >= this.#limit;
      if (last && !this.#ended) return met.more;
      if (kind === carriageReturnClass && at + 1 === this.#limit && !this.#ended) return met.more;
      if (count < starts.length) {
        starts[count] = cellStart;
        ends[count] = at;
      } else if (count < mostCells) {
        starts = this.#plainStarts = widened(starts);
        ends = this.#plainEnds = widened(ends);
        starts[count] = cellStart;
        ends[count] = at;
      }
      count++;
      if (kind === delimiterClass) {
        at++;
        cellStart = at;
        continue;
      }
      this.cells = bytes;
      this.starts = this.rawStarts = starts;
      this.ends = this.rawEnds = ends;
      this.count = count;
      this.high = high;
      this.recordEnd = at;
      this.#nextLine++;
      if (last) this.#position = this.#limit;
      else if (kind === carriageReturnClass && bytes[at + 1] === lineFeed && at + 1 < this.#limit)
        this.#position = at + 2;
      else this.#position = at + 1;
      return met.row;
    }
  }

  #quoted(): number {
    const { bytes, width } = this;
    const { delimiter, isSheet } = this.#dialect;
    const quote = this.#dialect.quote!;
    const limit = this.#limit;
    const start = this.#position;
    if (this.#scratch.length < bytes.length) this.#scratch = new Uint8Array(bytes.length);
    const scratch = this.#scratch;
    let at = start;
    let out = 0;
    let count = 0;
    let lines = 0;
    this.high = false;
    for (;;) {
      if (count === this.#quotedStarts.length && count < mostCells) this.#widenQuoted();
      const cellStart = out;
      const rawStart = at;
      if (at < limit && bytes[at] === quote) {
        at++;
        let delimiters = -1;
        for (;;) {
          if (at >= limit) return this.#ended ? this.#breakRow() : met.more;
          const byte = bytes[at]!;
          if (byte === quote) {
            if (at + 1 >= limit && !this.#ended) return met.more;
            if (at + 1 >= limit || bytes[at + 1] !== quote) break;
            at++;
          } else if (byte === delimiter) {
            if (delimiters >= 0) delimiters++;
          } else if (byte === lineFeed || byte === carriageReturn) {
            if (at + 1 >= limit && !this.#ended) return met.more;
            if (!isSheet && ((width > 2 && delimiters === width - 1) || at - start > longestQuoted)) {
              return this.#breakRow();
            }
            delimiters = 0;
            lines++;
            if (byte === carriageReturn && at + 1 < limit && bytes[at + 1] === lineFeed) {
              scratch[out++] = byte;
              at++;
            }
          }
          if (bytes[at]! > 127) this.high = true;
          scratch[out++] = bytes[at]!;
          at++;
        }
        at++;
        if (at >= limit && !this.#ended) return met.more;
        if (at < limit && bytes[at] !== delimiter && bytes[at] !== lineFeed && bytes[at] !== carriageReturn) {
          return this.#breakRow();
        }
      } else {
        while (at < limit && bytes[at] !== delimiter && bytes[at] !== lineFeed && bytes[at] !== carriageReturn) {
          if (bytes[at]! > 127) this.high = true;
          else if (bytes[at] === quote) this.quoteWithin = true;
          scratch[out++] = bytes[at++]!;
        }
        if (at >= limit && !this.#ended) return met.more;
      }
      if (count < this.#quotedStarts.length) {
        this.#quotedStarts[count] = cellStart;
        this.#quotedEnds[count] = out;
        this.#quotedRawStarts[count] = rawStart;
        this.#quotedRawEnds[count] = at;
      }
      count++;
      if (at < limit && bytes[at] === delimiter) at++;
      else break;
    }
    if (at < limit && bytes[at] === carriageReturn && at + 1 === limit && !this.#ended) return met.more;
    if (!isSheet && lines > 0 && width > 0 && width <= 2 && count !== width) return this.#breakRow();
    this.starts = this.#quotedStarts;
    this.ends = this.#quotedEnds;
    this.rawStarts = this.#quotedRawStarts;
    this.rawEnds = this.#quotedRawEnds;
    this.cells = scratch;
    this.count = count;
    this.recordEnd = at;
    this.#nextLine += isSheet ? 1 : lines + 1;
    if (at < limit) at += bytes[at] === carriageReturn && bytes[at + 1] === lineFeed && at + 1 < limit ? 2 : 1;
    this.#position = at;
    return met.row;
  }

  #widenQuoted(): void {
    this.#quotedStarts = widened(this.#quotedStarts);
    this.#quotedEnds = widened(this.#quotedEnds);
    this.#quotedRawStarts = widened(this.#quotedRawStarts);
    this.#quotedRawEnds = widened(this.#quotedRawEnds);
  }

  /** Takes the first line alone, without regard to quotes. */
  #breakRow(): number {
    this.broken = true;
    return this.#plain(this.#classesUnquoted);
  }
}

/** The plain path's sign that a cell begins with a quote. */
const quotedRow = 4;

function widened(old: Int32Array): Int32Array {
  const wide = new Int32Array(Math.max(64, old.length * 2));
  wide.set(old);
  return wide;
}
