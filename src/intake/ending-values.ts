import type { Cell } from './cell.js';
import { type Fault, fault } from './fault.js';
import { type Growable, grown } from './growing.js';
import type { RecordScanner } from './record-scanner.js';
import type { BlockRows } from './row-block.js';
import type { RowEndings } from './row-endings.js';

const firstEndings = 512;

/** A cell that stands in every ending. */
interface EndingCell {
  readonly cell: Cell;
  /** Where its column stands in the header. */
  readonly position: number;
  /** By the ending's number: what the column holds of it, what was wrong, and where in the ending the cell lies. */
  values: Growable;
  faults: Uint8Array;
  starts: Uint32Array;
  ends: Uint32Array;
}

/** What the cells of each ending say, as they were read in the row that had it first. */
export class EndingValues {
  readonly endings: RowEndings;
  /** By the cell's place among all cells of a row; null for one that stands before the endings. */
  readonly #cells: readonly (EndingCell | null)[];
  /** By the ending's number: whether a cell of it is at fault, and how many rows had it since it is known. */
  #isFaulty = new Uint8Array(firstEndings);
  #times = new Uint32Array(firstEndings);

  /** @param positions where the column of each cell stands in the header */
  constructor(endings: RowEndings, cells: readonly Cell[], positions: Int32Array) {
    this.endings = endings;
    this.#cells = cells.map((cell, index): EndingCell | null => {
      const position = positions[index]!;
      if (position < endings.cellsBefore) return null;
      const none = new Uint32Array(firstEndings);
      const values = grown(cell.column.values.subarray(0, 0), firstEndings);
      return { cell, position, values, faults: new Uint8Array(firstEndings), starts: none, ends: none.slice() };
    });
  }

  /** Learns the ending of the row that a scanner is at, once it was read into the draft with those faults of its cells. */
  learn({ bytes, plainEnd, rawStarts, rawEnds }: RecordScanner, row: number, faults: readonly Fault[]): void {
    if (plainEnd === null) return;
    const start = rawStarts[this.endings.cellsBefore]!;
    const next = this.endings.size;
    if (this.endings.learn(bytes, start, plainEnd) !== next) return;
    if (next === this.#times.length) this.#widen(next * 2);
    for (const [index, known] of this.#cells.entries()) {
      if (known === null) continue;
      known.values[next] = known.cell.column.values[row]!;
      known.faults[next] = faults[index]!;
      known.starts[next] = rawStarts[known.position]! - start;
      known.ends[next] = rawEnds[known.position]! - start;
      if (faults[index] !== fault.none) this.#isFaulty[next] = 1;
    }
  }

  /** Counts the endings of some rows of a block, and marks those at fault. */
  count({ block, from, to }: BlockRows, atFault: Uint8Array): void {
    const { endings } = block;
    const isFaulty = this.#isFaulty;
    const times = this.#times;
    for (let at = from; at < to; at++) {
      const ending = endings[at]!;
      times[ending]!++;
      atFault[at] = isFaulty[ending]!;
    }
  }

  /** Puts what the endings of some rows say of one cell into its column; false for a cell that stands before them. */
  put(index: number, rows: BlockRows): boolean {
    const known = this.#cells[index]!;
    if (known === null) return false;
    const { values } = known.cell.column;
    const said = known.values;
    // One loop for each kind of array: a loop that meets several runs at a third of the speed.
    if (values instanceof Uint8Array) putBytes(said as Uint8Array, rows, values);
    else if (values instanceof Uint32Array) putWhole(said as Uint32Array, rows, values);
    else if (values instanceof Float64Array) putNumbers(said as Float64Array, rows, values);
    else if (values instanceof Int32Array) putDays(said as Int32Array, rows, values);
    else throw new Error('no cells are read into such an array');
    return true;
  }

  /** What is wrong with a cell of an ending. */
  faultOf(index: number, ending: number): Fault {
    return (this.#cells[index]?.faults[ending] ?? fault.none) as Fault;
  }

  /** Tells the cells how often they were missing in rows that only their endings were looked at of. */
  countMissing(): void {
    for (let ending = 1; ending < this.endings.size; ending++) {
      const times = this.#times[ending]!;
      if (times === 0) continue;
      const bytes = this.endings.textBytes(ending);
      for (const known of this.#cells) {
        known?.cell.countMissing(bytes, known.starts[ending]!, known.ends[ending]!, times);
      }
    }
    this.#times.fill(0);
  }

  #widen(length: number): void {
    this.#isFaulty = grown(this.#isFaulty, length);
    this.#times = grown(this.#times, length);
    for (const known of this.#cells) {
      if (known === null) continue;
      known.values = grown(known.values, length);
      known.faults = grown(known.faults, length);
      known.starts = grown(known.starts, length);
      known.ends = grown(known.ends, length);
    }
  }
}

function putBytes(said: Uint8Array, { block: { endings }, from, to, row }: BlockRows, values: Uint8Array): void {
  for (let at = from, put = row; at < to; at++, put++) values[put] = said[endings[at]!]!;
}

function putWhole(said: Uint32Array, { block: { endings }, from, to, row }: BlockRows, values: Uint32Array): void {
  for (let at = from, put = row; at < to; at++, put++) values[put] = said[endings[at]!]!;
}

function putNumbers(said: Float64Array, { block: { endings }, from, to, row }: BlockRows, values: Float64Array): void {
  for (let at = from, put = row; at < to; at++, put++) values[put] = said[endings[at]!]!;
}

function putDays(said: Int32Array, { block: { endings }, from, to, row }: BlockRows, values: Int32Array): void {
  for (let at = from, put = row; at < to; at++, put++) values[put] = said[endings[at]!]!;
}
