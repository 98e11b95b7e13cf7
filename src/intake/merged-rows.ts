import type { FileRule } from './crosswalk.js';
import type { Header } from './header.js';
import type { RecordScanner } from './record-scanner.js';
import type { MergedCells } from './source/sheet-rows.js';

/** Merged cells whose rows are being read, and whether there is a text in them at all. */
interface Met {
  readonly area: MergedCells;
  readonly hasText: boolean;
}

/** Finds the rows of a sheet in which a cell that is read has its text elsewhere, since it is merged with another. */
export class MergedRows {
  /** The last first: in the order in which they are taken off. */
  readonly #ahead: MergedCells[];
  /** The columns that are read, in order. */
  readonly #used: readonly number[];
  readonly #spreads: boolean;
  #met: Met[] = [];

  constructor(merged: readonly MergedCells[], rule: FileRule, header: Header) {
    this.#ahead = [...merged].sort((a, b) => b.fromRow - a.fromRow);
    const columns = [
      ...rule.fields.flatMap((field) => field.columns),
      ...(rule.fold?.columns ?? []).map((one) => one.column),
    ];
    const positions = columns.flatMap((column) => header.get(column) ?? []);
    this.#used = [...new Set(positions)].sort((a, b) => a - b);
    this.#spreads = rule.dialect.spreadsMerged;
  }

  /** The first such cell of the row that a scanner is at; null for none. Rows are given in order. */
  coveredIn(scanner: RecordScanner): number | null {
    const { line } = scanner;
    for (let next = this.#ahead.at(-1); next !== undefined && next.fromRow <= line; next = this.#ahead.at(-1)) {
      this.#ahead.pop();
      // The row with the text may be above the header, and then belongs to it.
      const { fromRow, fromColumn } = next;
      const hasText = fromRow < line || (fromColumn < scanner.count && scanner.cellText(fromColumn).trim() !== '');
      this.#met.push({ area: next, hasText });
    }
    if (this.#met.length === 0) return null;
    this.#met = this.#met.filter(({ area }) => area.toRow >= line);
    const areas = this.#met.filter(({ hasText }) => hasText).map(({ area }) => area);
    const isCovered = (column: number) =>
      areas.some(({ fromRow, fromColumn, toColumn }) => {
        if (column === fromColumn) return !this.#spreads && line > fromRow;
        return column > fromColumn && column <= toColumn;
      });
    return this.#used.find(isCovered) ?? null;
  }
}
