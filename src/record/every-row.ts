/** The numbers of so many rows, ascending from 0. */
export function everyRowOf(rowCount: number): Uint32Array {
  const rows = new Uint32Array(rowCount);
  for (let row = 0; row < rowCount; row += 1) rows[row] = row;
  return rows;
}
