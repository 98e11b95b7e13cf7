import type { Cell } from './cell.js';
import type { Fault } from './fault.js';

/** About how many cells a block takes: as many as the nearest memory holds with their bytes. */
const cellsOfBlock = 8192;
const mostRows = 2048;

/**
 * Rows that need no care, one behind the other in one buffer: where they and their cells lie. Where the ending of each row is
 * known by its number, only the cells before it are cut.
 */
export class RowBlock {
  /** How many cells are cut of each row. */
  readonly width: number;
  /** How many rows it takes at most. */
  readonly most: number;
  count = 0;
  bytes: Uint8Array = new Uint8Array(0);
  /** Where the cells of each row lie: `width` of them a row. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Where each row lies, and on which line it begins. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly lines: Uint32Array;
  /** The number of each row's ending; 0 where all its cells are cut. */
  readonly endings: Uint16Array;

  constructor(width: number) {
    this.width = width;
    this.most = Math.min(mostRows, Math.max(16, Math.floor(cellsOfBlock / width)));
    this.starts = new Int32Array(this.most * width);
    this.ends = new Int32Array(this.most * width);
    this.from = new Int32Array(this.most);
    this.to = new Int32Array(this.most);
    this.lines = new Uint32Array(this.most);
    this.endings = new Uint16Array(this.most);
  }
}

/** Some rows of a block, and where the first of them goes in the draft. */
export interface BlockRows {
  readonly block: RowBlock;
  /** From this row of the block up to but without that one. */
  readonly from: number;
  readonly to: number;
  readonly row: number;
}

/** Reads one cell of each row by a cell's own `read`, and takes down what was wrong; false where nothing was. */
export function readEach(
  cell: Cell,
  position: number,
  { block, from, to, row }: BlockRows,
  faults: Uint8Array,
): boolean {
  const { bytes, width, starts, ends } = block;
  let anyFault = 0;
  for (let at = from; at < to; at++) {
    const place = at * width + position;
    const found: Fault = cell.read(bytes, starts[place]!, ends[place]!, row + at - from);
    faults[at] = found;
    anyFault |= found;
  }
  return anyFault !== 0;
}
