import type { Evaluated, SheetValue } from '../value/evaluated.js';
import { type SheetColumnValues, type SheetKeys, sheetTable } from './sheet-table.js';

/** A sheet as formulas ask it: its keys and columns with a value a row, and the order in which its rows are shown. */
export function sheetValue(
  name: string,
  keys: SheetKeys,
  columns: ReadonlyMap<string, SheetColumnValues>,
  order: Uint32Array | null = null,
): SheetValue {
  const rows = Uint32Array.from(keys.rows, (_, row) => row);
  return {
    kind: 'sheet',
    name,
    keys: keys.fields.map((field) => field.name),
    columns: new Map([...columns].map(([column, { kind }]) => [column, kind])),
    table: sheetTable(name, keys, columns),
    rowKeys: keys.rows,
    cells: new Map([...columns].map(([column, { cells }]) => [column, cells])),
    rows,
    order: order ?? rows,
    accounts: [],
  };
}

/** The numbers of the rows that have those keys: one in a sheet of groups, perhaps several in a finding's. */
export function rowsOfKeys({ rowKeys }: SheetValue, keys: readonly (string | number | null)[]): readonly number[] {
  const has = (own: readonly (string | number | null)[]) => own.every((key, at) => key === keys[at]);
  return rowKeys.flatMap((own, row) => (own.length === keys.length && has(own) ? [row] : []));
}

/** The value of a column in a row; throws where the sheet has no such column or row, which checking has ruled out. */
export function cellOf({ name, cells }: SheetValue, column: string, row: number): Evaluated {
  const cell = cells.get(column)?.[row];
  if (cell === undefined) throw new Error(`the sheet ${name} has no ${column} in row ${row}`);
  return cell;
}
