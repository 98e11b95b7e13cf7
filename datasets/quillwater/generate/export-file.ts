import { createHash } from 'node:crypto';
import { closeSync, mkdirSync, openSync, renameSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { threadId } from 'node:worker_threads';

/** How a format writes its tables. */
export interface Dialect {
  readonly delimiter: ',' | ';';
  readonly newline: '\n' | '\r\n';
  readonly byteOrderMark: boolean;
}

/** A finished file, as the manifest lists it. */
export interface WrittenFile {
  /** The path below the folder of exports. */
  readonly file: string;
  /** Record rows, spoilt ones among them; header and blank lines are none. */
  readonly rows: number;
  readonly bytes: number;
  readonly sha256: string;
}

/** A table being written: beside its place first, renamed when it is whole. */
export class ExportFile {
  readonly file: string;
  readonly header: readonly string[];
  readonly dialect: Dialect;
  readonly #path: string;
  readonly #beside: string;
  readonly #descriptor: number;
  readonly #hash = createHash('sha256');
  #waiting: string[] = [];
  #waitingLength = 0;
  #line = 1;
  #lastLine = 0;
  #rows = 0;
  #bytes = 0;

  constructor(folder: string, file: string, header: readonly string[], dialect: Dialect) {
    this.file = file;
    this.header = header;
    this.dialect = dialect;
    this.#path = join(folder, file);
    // Two runs at once write the same bytes, but must not take each other's unfinished file away.
    this.#beside = `${this.#path}.writing-${process.pid}-${threadId}`;
    mkdirSync(dirname(this.#path), { recursive: true });
    this.#descriptor = openSync(this.#beside, 'w');
    if (dialect.byteOrderMark) this.#put('\uFEFF');
    this.unread(header.join(dialect.delimiter));
  }

  /** Writes a row; gives the physical line on which it starts. */
  row(cells: readonly string[]): number {
    return this.raw(cells.map((cell) => this.#quoted(cell)).join(this.dialect.delimiter));
  }

  /** Writes a row as it stands, without quoting; gives the physical line on which it starts. */
  raw(text: string): number {
    this.#rows++;
    return this.unread(text);
  }

  /** Writes a line that is no record row: a header, or nothing at all. */
  unread(text: string): number {
    const line = this.#line;
    this.#lastLine = line;
    this.#put(text + this.dialect.newline);
    this.#line++;
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) this.#line++;
    return line;
  }

  /** The physical line on which the row written last starts. */
  get lastLine(): number {
    return this.#lastLine;
  }

  /** The place of a column in a row. */
  at(column: string): number {
    const index = this.header.indexOf(column);
    if (index < 0) throw new Error(`${this.file} has no column ${column}`);
    return index;
  }

  /** Puts the whole file in its place. */
  close(): WrittenFile {
    this.#flush();
    closeSync(this.#descriptor);
    renameSync(this.#beside, this.#path);
    return { file: this.file, rows: this.#rows, bytes: this.#bytes, sha256: this.#hash.digest('hex') };
  }

  #quoted(cell: string): string {
    const plain = !cell.includes(this.dialect.delimiter) && !cell.includes('"') && !/[\r\n]/.test(cell);
    return plain ? cell : `"${cell.replaceAll('"', '""')}"`;
  }

  #put(text: string): void {
    this.#waiting.push(text);
    this.#waitingLength += text.length;
    if (this.#waitingLength > 1 << 19) this.#flush();
  }

  #flush(): void {
    const bytes = Buffer.from(this.#waiting.join(''));
    this.#waiting = [];
    this.#waitingLength = 0;
    this.#hash.update(bytes);
    this.#bytes += bytes.length;
    writeSync(this.#descriptor, bytes);
  }
}
