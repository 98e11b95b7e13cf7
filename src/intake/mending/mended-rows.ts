import type { Draft } from '../draft.js';
import type { Header } from '../header.js';
import type { RowRequest } from '../read-rows.js';
import { RecordScanner } from '../record-scanner.js';
import { RowReader } from '../row-reader.js';
import { RowRemarks } from '../row-remarks.js';
import { emptied, type MendedRow, withheld } from './mending.js';
import { rowCells, rowOf } from './row-cells.js';

/** Reads mended rows in the place of those that stand in the file. */
export class MendedRows {
  /** The rows that were read so. */
  readonly taken: MendedRow[] = [];
  readonly #rows: ReadonlyMap<number, string>;
  readonly #request: RowRequest;
  readonly #scanner: RecordScanner;
  readonly #header: Header;
  readonly #draft: Draft;
  readonly #private: readonly number[];

  constructor(request: RowRequest, scanner: RecordScanner, header: Header, draft: Draft, isPrivate: readonly number[]) {
    this.#rows = new Map(request.mended.map(({ line, row }) => [line, row]));
    this.#request = request;
    this.#scanner = scanner;
    this.#header = header;
    this.#draft = draft;
    this.#private = isPrivate;
  }

  /** Whether the scanner's row was mended; if so, it is read as mended, and what is still wrong with it is remarked. */
  takes({ remarks, asideTexts }: RowRemarks): boolean {
    const { line, base, recordStart } = this.#scanner;
    const row = this.#rows.get(line);
    const bytes = row === undefined ? null : this.#asInFile(row);
    if (row === undefined || bytes === null) return false;
    const scanner = new RecordScanner(this.#request.rule.dialect, Math.max(1, bytes.length));
    scanner.width = this.#scanner.width;
    scanner.moveTo(base + recordStart, line);
    scanner.room().set(bytes);
    scanner.filled(bytes.length);
    scanner.filled(0);
    scanner.next();
    if (this.#request.rule.dialect.isSheet && scanner.count < scanner.width) scanner.padTo(scanner.width);
    const own = new RowRemarks(scanner, this.#draft, this.#private, this.#scanner.width);
    new RowReader(this.#request, scanner, this.#header, this.#draft, own).read();
    remarks.append(own.remarks.pack(), 0, 0);
    asideTexts.append(own.asideTexts.pack(), 0);
    this.taken.push({ line, row });
    return true;
  }

  /** The mended row with the private cells of the row in the file; null where it cannot be put together. */
  #asInFile(row: string): Buffer | null {
    const { dialect } = this.#request.rule;
    const { width, count, broken } = this.#scanner;
    const cells = rowCells(row, dialect, width);
    if (cells === null) return null;
    if (this.#private.length === 0) return Buffer.from(row, 'utf8');
    if (broken || count !== width || this.#scanner.torn) return null;
    const whole = cells.map((cell, position) => {
      if (!this.#private.includes(position)) return cell;
      return cell.trim() === emptied ? '' : cell.trim() === withheld ? this.#scanner.cellText(position) : cell;
    });
    return Buffer.from(rowOf(whole, dialect), 'utf8');
  }
}
