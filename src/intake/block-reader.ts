import type { Cell } from './cell.js';
import type { Draft, DraftColumn } from './draft.js';
import type { EndingValues } from './ending-values.js';
import { type Fault, fault } from './fault.js';
import type { RowBlock } from './row-block.js';
import type { RowRule } from './row-rules.js';

/** A field that is the same in every row of the file. */
export interface Constant {
  readonly column: DraftColumn;
  readonly value: number;
}

/** What the rows of one file are read by. */
export interface RowParts {
  readonly cells: readonly Cell[];
  /** Where the column of each cell stands in the header. */
  readonly positions: Int32Array;
  readonly constants: readonly Constant[];
  readonly rules: readonly RowRule[];
}

/** Takes rows of blocks into a draft, column by column, and tells which of them must be remarked on. */
export class BlockReader {
  readonly #draft: Draft;
  readonly #parts: RowParts;
  /** By cell: the fault of each row of the block. */
  readonly #faults: readonly Uint8Array[];
  readonly #isFaulty: boolean[] = [];
  /** What the endings of the rows say; null where all cells of a row are cut. */
  readonly #endings: EndingValues | null;
  readonly #remarked: Uint8Array;

  constructor(draft: Draft, parts: RowParts, endings: EndingValues | null, most: number) {
    this.#draft = draft;
    this.#parts = parts;
    this.#faults = parts.cells.map(() => new Uint8Array(most));
    this.#remarked = new Uint8Array(most);
    this.#endings = endings;
  }

  /** Takes rows of a block; `remarkOn` is called for each at fault, with its place in the block and in the draft. */
  read(block: RowBlock, from: number, to: number, base: number, remarkOn: (at: number, row: number) => void): void {
    const draft = this.#draft;
    const { cells, positions, constants, rules } = this.#parts;
    const count = to - from;
    draft.makeRoom(count);
    const row = draft.rowCount;
    draft.rowCount += count;
    draft.aside.fill(0, row, row + count);
    draft.places.addLines(row, block.lines[from]!, block.from, from, to, base);
    for (const { column, value } of constants) column.values.fill(value, row, row + count);
    const remarked = this.#remarked;
    const rows = { block, from, to, row };
    if (this.#endings === null) remarked.fill(0, from, to);
    else this.#endings.count(rows, remarked);
    for (const [index, cell] of cells.entries()) {
      if (this.#endings?.put(index, rows) === true) continue;
      const faults = this.#faults[index]!;
      const isFaulty = cell.readMany(positions[index]!, rows, faults);
      this.#isFaulty[index] = isFaulty;
      if (isFaulty) for (let at = from; at < to; at++) if (faults[at] !== fault.none) remarked[at] = 1;
    }
    for (const rule of rules) {
      for (let at = from; at < to; at++) if (rule.isBroken(row + at - from)) remarked[at] = 1;
    }
    for (let at = from; at < to; at++) if (remarked[at] === 1) remarkOn(at, row + at - from);
  }

  /** What was wrong with a cell of a row of the block read last. */
  faultOf(cell: number, { endings }: RowBlock, at: number): Fault {
    const found = this.#endings?.faultOf(cell, endings[at]!) ?? fault.none;
    if (found !== fault.none) return found;
    return this.#isFaulty[cell] === true ? (this.#faults[cell]![at]! as Fault) : fault.none;
  }
}
