import { groupRows, type RowGroup } from '../finding/group-rows.js';
import type { Group } from '../formula/environment.js';
import { evaluate } from '../formula/evaluate.js';
import { resultOf } from '../formula/result-of.js';
import type { SheetColumnValues } from '../formula/sheet/sheet-table.js';
import { sheetValue } from '../formula/sheet/sheet-value.js';
import { namesIn } from '../formula/tree.js';
import { type DrawnRows, drawnAmong } from '../formula/value/account.js';
import type { Evaluated, SheetValue } from '../formula/value/evaluated.js';
import type { BookTable } from '../record/book.js';
import type { ComputedSheet } from './computed-sheet.js';
import type { SheetOrder } from './document.js';
import { formulaKey } from './formula-key.js';
import { keyResult } from './key-cell.js';
import { orderRows } from './order-rows.js';
import type { CheckedColumn } from './sheet-columns.js';
import type { Knowledge } from './workings.js';

/** What a sheet is filled with: its table, its keys, and its sound columns in the order in which they are computed. */
export interface SheetPlan {
  readonly name: string;
  readonly table: BookTable;
  readonly keys: readonly string[];
  readonly columns: readonly CheckedColumn[];
  /** The columns that have a problem, which nothing can be built on. */
  readonly failed: readonly string[];
  readonly order: SheetOrder | null;
  /** What decided which rows the sheet is of and comes from records itself. */
  readonly decidedBy: readonly string[];
  /** How that decides them in every resample; null where nothing does, or it cannot be told. */
  readonly drawn: DrawnRows | null;
}

/** One group with the values of its columns by name. */
export interface FilledGroup {
  readonly key: RowGroup['key'];
  readonly cells: ReadonlyMap<string, Evaluated>;
}

/** The drawn rows of each group, by its key; those that are in no group as it is known are in none here. */
function drawnGroups({ table, keys, drawn }: SheetPlan): (key: RowGroup['key']) => DrawnRows | null {
  if (drawn === null) return () => null;
  const groups = new Map(groupRows(table, drawn.rows, keys).map(({ key, rows }) => [JSON.stringify(key), rows]));
  return (key) => drawnAmong(drawn, groups.get(JSON.stringify(key)) ?? new Uint32Array());
}

/** Rows in the order in which the sheet shows them, as far as the column that orders them has been computed. */
function shownOrder({ name, table, keys, order }: SheetPlan, value: SheetValue): Uint32Array | null {
  if (order === null) return null;
  const { text } = order.column;
  const key = keys.indexOf(text);
  const cells = value.cells.get(text);
  if (key < 0 && cells === undefined) return null;
  const rows = Array.from(value.rows, (row) => {
    const cell = cells?.[row];
    const own = () => keyResult(table.fields.get(text)!, value.rowKeys[row]?.[key] ?? null);
    return { row, results: [cell === undefined ? own() : resultOf(cell)] };
  });
  const column = { name: text, label: '', role: 'value' as const, formula: '', shownAs: '', meaning: '' };
  const ordered = orderRows(rows, [column], { ...order, most: null }, name);
  return Uint32Array.from(ordered.rows, ({ row }) => row);
}

function decided(decidedBy: readonly string[], drawn: DrawnRows | null): Pick<Group, 'decidedBy' | 'drawn'> {
  return { decidedBy, ...(drawn === null ? {} : { drawn }) };
}

/**
 * The cells of every group, column by column, so that a column whose formula stayed the same is not computed again and a
 * column may ask about the other rows; with the sheet as other formulas ask it.
 */
export function fillGroups(
  plan: SheetPlan,
  groups: readonly RowGroup[],
  groupsKey: string,
  knowledge: Knowledge,
): { readonly filled: readonly FilledGroup[]; readonly asked: ComputedSheet['asked'] } {
  const { name: sheet, table, keys, columns, order, decidedBy } = plan;
  const { memory, environment } = knowledge;
  const orderKey = order === null ? '' : `${order.from} ${order.column.text}`;
  const columnKeys = new Map<string, string>([[sheet, memory.keyOf('rows of', groupsKey, orderKey)]]);
  const drawnOf = drawnGroups(plan);
  const filled = groups.map((group) => ({
    key: group.key,
    cells: new Map<string, Evaluated>(),
    known: new Map(knowledge.values),
    group: {
      sheet,
      table: table.name,
      rows: group.rows,
      ...(decidedBy.length === 0 ? {} : decided(decidedBy, drawnOf(group.key))),
      keys: new Map(keys.map((key, at) => [key, group.key[at] ?? null])),
    },
  }));
  const sheetKeys = { fields: keys.map((key) => table.fields.get(key)!), rows: groups.map(({ key }) => key) };
  const values = new Map<string, SheetColumnValues>();
  const soFar = (): SheetValue => {
    const value = sheetValue(sheet, sheetKeys, values);
    return sheetValue(sheet, sheetKeys, values, shownOrder(plan, value));
  };
  for (const { row, formula, kind } of columns) {
    const { text: name } = row.name;
    const asksItself = namesIn(formula).includes(sheet);
    if (asksItself) {
      const own = soFar();
      for (const { known } of filled) known.set(sheet, own);
    }
    // What is asked of other rows may rest on any column before this one.
    const before = asksItself ? [...columnKeys.values()].join(' ') : '';
    const key = formulaKey(formula, knowledge, columnKeys, `${groupsKey} ${before}`);
    columnKeys.set(name, key);
    const cells = memory.value(`${sheet}.${name}`, key, () =>
      filled.map(({ known, group }) => evaluate(formula, { ...environment, known, group })),
    );
    values.set(name, { kind, cells });
    filled.forEach(({ cells: own, known }, at) => {
      own.set(name, cells[at]!);
      known.set(name, cells[at]!);
    });
  }
  for (const name of plan.failed) values.set(name, { kind: { kind: 'unknown' }, cells: [] });
  const key = memory.keyOf('sheet', groupsKey, ...[...columnKeys].flat());
  return { filled, asked: { value: soFar(), key } };
}
