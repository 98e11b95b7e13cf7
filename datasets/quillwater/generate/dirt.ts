import type { ExportFile } from './export-file.js';
import { type Random, randomStream } from './random.js';

/** A spoilt or contradictory place in the exports, as the import's ledgers should list it. */
export interface Dirt {
  readonly file: string;
  readonly line: number;
  /** The file's own column name; empty where the whole row is at fault. */
  readonly column: string;
  readonly code: string;
}

/** One way to spoil a row of a file: gives the spoilt cells, raw text, or null where this row cannot be spoilt so. */
export interface Spoiling<Row> {
  readonly code: string;
  readonly column: string;
  readonly spoil: (cells: string[], row: Row, file: ExportFile) => string[] | string | null;
}

/** Spoils a column by putting another text in it; rows for which `fits` says no stay as they are. */
export function spoiltCell<Row>(
  code: string,
  column: string,
  text: string | ((cell: string, row: Row) => string),
  fits: (row: Row, cell: string) => boolean = () => true,
): Spoiling<Row> {
  return {
    code,
    column,
    spoil: (cells, row, file) => {
      const at = file.at(column);
      const cell = cells[at]!;
      if (cell === '' || !fits(row, cell)) return null;
      return cells.with(at, typeof text === 'string' ? text : text(cell, row));
    },
  };
}

/** A row that has lost its last two fields, and a row that has one too many. */
export function raggedRows<Row>(fits: (row: Row) => boolean = () => true): readonly Spoiling<Row>[] {
  return [
    { code: 'ragged-row', column: '', spoil: (cells, row) => (fits(row) ? cells.slice(0, -2) : null) },
    { code: 'ragged-row', column: '', spoil: (cells, row) => (fits(row) ? [...cells, 'see back'] : null) },
  ];
}

/** A row whose last cell opens a quote that nobody closes. */
export function brokenQuote<Row>(fits: (row: Row) => boolean): Spoiling<Row> {
  return {
    code: 'unterminated-quote',
    column: '',
    spoil: (cells, row, file) =>
      fits(row) &&
      !cells.some((cell) => cell.includes('"') || cell.includes('\n') || cell.includes(file.dialect.delimiter))
        ? [...cells.slice(0, -1), '"gate code on file'].join(file.dialect.delimiter)
        : null,
  };
}

/** What was spoilt, and what contradicts itself, in the order of writing. */
export class DirtBook {
  readonly setAside: Dirt[] = [];
  readonly notes: Dirt[] = [];
  readonly #random: Random;
  readonly #uses = new Map<Spoiling<never>, number>();

  /** A clean book spoils nothing. */
  readonly clean: boolean;

  constructor(seed: number, clean: boolean) {
    this.clean = clean;
    this.#random = randomStream(seed, 'dirt');
  }

  /**
   * Writes a row, spoilt with that probability in the next way that fits it; each way gets its turn.
   * Says whether the row is sound.
   */
  write<Row>(file: ExportFile, cells: string[], row: Row, rate: number, ways: readonly Spoiling<Row>[]): boolean {
    if (!this.clean && this.#random.chance(rate)) {
      // The way used least so far comes first, so that ways which seldom fit a row still occur.
      const byUse = ways.toSorted((a, b) => this.#usesOf(a) - this.#usesOf(b));
      for (const way of byUse) {
        const spoilt = way.spoil(cells, row, file);
        if (spoilt === null) continue;
        this.#uses.set(way, this.#usesOf(way) + 1);
        const line = typeof spoilt === 'string' ? file.raw(spoilt) : file.row(spoilt);
        this.setAside.push({ file: file.file, line, column: way.column, code: way.code });
        return false;
      }
    }
    file.row(cells);
    return true;
  }

  #usesOf(way: Spoiling<never>): number {
    return this.#uses.get(way) ?? 0;
  }

  /** Writes a row that is at fault for what stands elsewhere, such as a repeated key; a clean book leaves it out. */
  writeFaulty(file: ExportFile, cells: readonly string[], column: string, code: string): void {
    if (this.clean) return;
    this.setAside.push({ file: file.file, line: file.row(cells), column, code });
  }

  /** Notes a contradiction in the row written last, which is kept all the same. */
  note(file: ExportFile, column: string, code: string): void {
    this.notes.push({ file: file.file, line: file.lastLine, column, code });
  }
}
