import type { FileReading } from '../read-file.js';
import type { SourceSettings } from '../source/open-source.js';

/** Rows of a file that are to be fetched from it once more, in order of line, as plain values that threads may hand on. */
export interface WantedRows {
  /** The folder of exports, the file's path below it, and how it becomes text. */
  readonly from: string;
  readonly file: string;
  readonly settings: SourceSettings;
  /** How many cells a row has. */
  readonly width: number;
  /** Where private columns stand, in order. */
  readonly withheld: readonly number[];
  readonly lines: Uint32Array;
  /** For each row a place at or before it, from which it is reached line by line: the line, and where it begins. */
  readonly nearLines: Uint32Array;
  readonly nearOffsets: Float64Array;
  /** 1 where the whole text of the row is wanted. */
  readonly keepsText: Uint8Array;
  /** About how many bytes those texts have. */
  readonly textBytes: number;
  /** The columns of the cells wanted, row by row; `cellEnds` says for each row where they end. */
  readonly positions: Int32Array;
  readonly cellEnds: Uint32Array;
}

/** What is to be fetched, and the remark that each cell wanted is for. */
export interface Lacking {
  readonly wanted: WantedRows;
  readonly remarkOf: Uint32Array;
}

/**
 * What the ledgers will show of rows that were found at fault only after their file was read: the cells remarked on, and the
 * text of each row set aside. Null where nothing is lacking.
 */
export function lackingOf(from: string, reading: FileReading): Lacking | null {
  const { draft, rule, headings, header, remarks } = reading;
  const { rows, keepsText, remarkOf, cellEnds } = rowsToComplete(reading);
  if (rows.length === 0) return null;
  const count = rows.length;
  const lines = new Uint32Array(count);
  const nearLines = new Uint32Array(count);
  const nearOffsets = new Float64Array(count);
  for (let at = 0; at < count; at++) {
    const row = rows[at]!;
    const near = draft.places.placeBefore(row);
    lines[at] = draft.places.lineOf(row);
    nearLines[at] = near.line;
    nearOffsets[at] = near.offset;
  }
  const positions = new Int32Array(remarkOf.length);
  for (let cell = 0; cell < positions.length; cell++) positions[cell] = remarks.position(remarkOf[cell]!)!;
  const texts = keepsText.reduce((sum, keeps) => sum + keeps, 0);
  const wanted = {
    from,
    file: reading.file,
    settings: { dialect: rule.dialect, decimalByte: rule.decimalByte },
    width: headings.length,
    withheld: [...rule.privateColumns].map((name) => header.get(name)!).sort((a, b) => a - b),
    lines,
    nearLines,
    nearOffsets,
    keepsText,
    // Rows are as long as those of their file are one with another.
    textBytes: Math.ceil((1.05 * texts * draft.places.lastOffset) / draft.rowCount),
    positions,
    cellEnds,
  };
  return { wanted, remarkOf };
}

interface RowsToComplete {
  readonly rows: Uint32Array;
  readonly keepsText: Uint8Array;
  /** The remarks whose cells are lacking, row by row, and where those of each row end. */
  readonly remarkOf: Uint32Array;
  readonly cellEnds: Uint32Array;
}

function rowsToComplete({ remarks, asideTexts }: FileReading): RowsToComplete {
  const known = asideTexts.inOrder();
  const order = remarks.inOrder();
  const rows = new Uint32Array(order.length);
  const keepsText = new Uint8Array(order.length);
  const cellEnds = new Uint32Array(order.length);
  const remarkOf = new Uint32Array(order.length);
  let count = 0;
  let cells = 0;
  let next = 0;
  for (const at of order) {
    const row = remarks.row(at);
    if (row === null) continue;
    const line = remarks.line(at);
    while (next < known.length && asideTexts.line(known[next]!) < line) next++;
    const isKnown = next < known.length && asideTexts.line(known[next]!) === line;
    const lacksText = remarks.setsAside(at) && !isKnown;
    const lacksSeen = remarks.lacksSeen(at);
    if (!lacksText && !lacksSeen) continue;
    if (count === 0 || rows[count - 1] !== row) rows[count++] = row;
    if (lacksText) keepsText[count - 1] = 1;
    if (lacksSeen) remarkOf[cells++] = at;
    cellEnds[count - 1] = cells;
  }
  return {
    rows: rows.subarray(0, count),
    keepsText: keepsText.slice(0, count),
    remarkOf: remarkOf.slice(0, cells),
    cellEnds: cellEnds.slice(0, count),
  };
}
