import type { RowPlaces } from './row-places.js';

/** Where the rows of one file stood, and which of them are set aside. */
export interface PlacedRows {
  readonly places: RowPlaces;
  readonly rowCount: number;
  readonly aside: Uint8Array;
  /** How many records each row gives. */
  readonly width: number;
}

/** The line of each record of a table, file after file. */
export function keptLines(files: readonly PlacedRows[], recordCount: number): Uint32Array {
  const lines = new Uint32Array(recordCount);
  let at = 0;
  for (const { places, rowCount, aside, width } of files) {
    places.eachStretch(rowCount, (first, end, firstLine) => {
      for (let row = first, line = firstLine; row < end; row++, line++) {
        if (aside[row] === 1) continue;
        for (let record = 0; record < width; record++) lines[at++] = line;
      }
    });
  }
  return lines;
}
