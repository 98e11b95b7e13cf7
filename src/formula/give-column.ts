import type { Evaluation } from './context.js';
import type { ColumnGiven } from './functions/declaration.js';
import { conditionsOf } from './rows/evaluate-rows.js';
import type { RowsReading } from './rows/rows-reading.js';
import { selectedRows } from './rows/select-rows.js';
import { rowsOfKeys } from './sheet/sheet-value.js';
import { type Node, parts } from './tree.js';
import type { SheetValue } from './value/evaluated.js';
import { takenAsKnown } from './value/taken-as-known.js';

/** The columns that a condition asks about and that other records could have made otherwise. */
function estimatesIn(node: Node | null, sheet: SheetValue): readonly string[] {
  if (node === null) return [];
  if (node.kind !== 'name') return parts(node).flatMap((part) => estimatesIn(part, sheet));
  const cells = sheet.cells.get(node.name) ?? [];
  return cells.some((cell) => cell.kind === 'number' && cell.draws !== null) ? [node.name] : [];
}

/** The rows of a sheet that a part of a formula speaks of, and what its column holds in them. */
export function giveColumn(reading: RowsReading, sheet: SheetValue, evaluation: Evaluation): ColumnGiven {
  const { environment, formula } = evaluation;
  const { group } = environment;
  const { rows, decidedBy = [] } = selectedRows(reading, formula, environment, conditionsOf(evaluation)).account;
  const column = reading.field?.kind === 'name' ? reading.field.name : null;
  const cells = column === null ? [] : sheet.cells.get(column)!;
  const kind = column === null ? undefined : sheet.columns.get(column);
  const deciding = [...new Set(estimatesIn(reading.where, sheet))];
  return {
    sheet,
    rows,
    values: column === null ? [] : Array.from(rows, (row) => cells[row]!),
    unit: kind?.kind === 'number' ? kind.unit : [],
    own: group?.sheet === sheet.name ? (rowsOfKeys(sheet, [...group.keys.values()])[0] ?? null) : null,
    within: [],
    decidedBy: [...deciding, ...decidedBy],
    cautions: [...deciding, ...decidedBy].map((name) => takenAsKnown(name, `rows of ${sheet.name} are taken`)),
  };
}
