import { groupRows, type RowGroup } from '../finding/group-rows.js';
import { evaluate } from '../formula/evaluate.js';
import type { FormulaKind } from '../formula/kind.js';
import type { Result } from '../formula/result.js';
import { resultOf } from '../formula/result-of.js';
import type { Formula } from '../formula/tree.js';
import type { Evaluated } from '../formula/value/evaluated.js';
import type { Problem } from '../problem/problem.js';
import type { BookTable } from '../record/book.js';
import { type ComputedSheet, emptySheet } from './computed-sheet.js';
import type { FormulaRow, SheetDeclaration, SheetMaker } from './document.js';
import type { SheetColumn } from './evaluated.js';
import { findingSheet } from './finding-sheet.js';
import { cellProblem, checkCell, checkShownAs, formulaIn } from './formula-cell.js';
import { formulaKey } from './formula-key.js';
import { keyResult, labelOf } from './key-cell.js';
import { neededNames } from './needed-names.js';
import { orderByNeed } from './order.js';
import { orderRows } from './order-rows.js';
import { unknownFields } from './sheet-fields.js';
import type { Knowledge } from './workings.js';

interface Column {
  readonly row: FormulaRow;
  readonly formula: Formula;
  readonly kind: FormulaKind;
}

/** A sheet filled once for every group, or by a finding; a sheet with a mistake has no rows and names it. */
export function computeSheet(declared: SheetDeclaration, knowledge: Knowledge): ComputedSheet {
  const rows = rowsOfSheet(declared, knowledge);
  if ('problems' in rows) return emptySheet(declared, rows.problems);
  if (declared.maker.kind === 'finding') {
    return findingSheet(declared, declared.maker, rows.table, rows.rows, rows.key, knowledge);
  }
  return eachSheet(declared, declared.maker, rows, knowledge);
}

interface SheetRows {
  readonly table: BookTable;
  readonly rows: Uint32Array;
  /** The rows' key in the memory. */
  readonly key: string;
}

type RowsFound = SheetRows | { readonly problems: readonly Problem[] };

function rowsOfSheet({ name, maker }: SheetDeclaration, knowledge: Knowledge): RowsFound {
  const read = formulaIn(knowledge.file, maker.rows);
  if ('problems' in read) return read;
  const { kind, problems } = checkCell(read.tree, knowledge, null);
  if (problems.length > 0) return { problems };
  if (kind.kind !== 'rows') {
    const remedy = 'Name a table or a selection, with a condition behind `where` if wished.';
    return kind.kind === 'unknown'
      ? { problems: [] }
      : { problems: [cellProblem(knowledge.file, maker.rows, 'not-rows', 'rows of a table', remedy)] };
  }
  const key = formulaKey(read.tree, knowledge);
  const value = knowledge.memory.value(`rows of ${name.text}`, key, () => evaluate(read.tree, knowledge.environment));
  if (value.kind !== 'rows') return { problems: [] };
  return { table: knowledge.book.tables.get(value.table)!, rows: value.counted.rows, key };
}

function eachSheet(
  declared: SheetDeclaration,
  maker: Extract<SheetMaker, { kind: 'each' }>,
  { table, rows, key: rowsKey }: SheetRows,
  knowledge: Knowledge,
): ComputedSheet {
  const keys = maker.fields.map(({ text }) => text);
  const wrongKeys = unknownFields(knowledge.file, maker.fields, table);
  if (wrongKeys.length > 0) return emptySheet(declared, wrongKeys);
  const { columns, problems } = checkColumns(declared, table, keys, knowledge);
  const groupsKey = knowledge.memory.keyOf('groups', rowsKey, ...keys);
  const { text: sheetName } = declared.name;
  const groups = knowledge.memory.value(`groups of ${sheetName}`, groupsKey, () => groupRows(table, rows, keys));
  const filled = fillGroups(sheetName, groups, groupsKey, { table, keys, columns }, knowledge);
  const inOrder = declared.columns.flatMap(({ name }) => columns.filter(({ row }) => row.name.text === name.text));
  const shown = filled.map(({ key, cells }) => ({
    key,
    cells,
    results: [
      ...key.map((value, at): Result => keyResult(table.fields.get(keys[at]!)!, value)),
      ...inOrder.map(({ row }): Result => resultOf(cells.get(row.name.text)!)),
    ],
  }));
  const sheetColumns: SheetColumn[] = [
    ...keys.map((key): SheetColumn => keyColumn(table, key)),
    ...inOrder.map(({ row }): SheetColumn => valueColumn(row)),
  ];
  const ordered = orderRows(shown, sheetColumns, declared.order, knowledge.file);
  return {
    sheet: {
      name: declared.name.text,
      sentence: declared.sentence,
      columns: sheetColumns,
      rows: ordered.rows.map(({ results }) => ({ cells: results })),
      notes: ordered.note === null ? [] : [ordered.note],
      problems: [...problems, ...ordered.problems],
      line: declared.name.line,
    },
    workings: {
      formulas: new Map(columns.map(({ row, formula }) => [row.name.text, formula])),
      keys: ordered.rows.map(({ key }) => key),
      cells: ordered.rows.map(({ cells }) => cells),
    },
  };
}

/** The cells of every group, column by column, so that a column whose formula stayed the same is not computed again. */
function fillGroups(
  sheetName: string,
  groups: readonly RowGroup[],
  groupsKey: string,
  {
    table,
    keys,
    columns,
  }: { readonly table: BookTable; readonly keys: readonly string[]; readonly columns: readonly Column[] },
  knowledge: Knowledge,
): readonly { readonly key: RowGroup['key']; readonly cells: ReadonlyMap<string, Evaluated> }[] {
  const columnKeys = new Map<string, string>();
  const filled = groups.map((group) => ({
    key: group.key,
    cells: new Map<string, Evaluated>(),
    known: new Map(knowledge.values),
    group: { table: table.name, rows: group.rows, keys: new Map(keys.map((key, at) => [key, group.key[at] ?? null])) },
  }));
  for (const { row, formula } of columns) {
    const { text: name } = row.name;
    const key = formulaKey(formula, knowledge, columnKeys, groupsKey);
    columnKeys.set(name, key);
    const values = knowledge.memory.value(`${sheetName}.${name}`, key, () =>
      filled.map(({ known, group }) => evaluate(formula, { ...knowledge.environment, known, group })),
    );
    filled.forEach(({ cells, known }, at) => {
      cells.set(name, values[at]!);
      known.set(name, values[at]!);
    });
  }
  return filled;
}

function keyColumn(table: BookTable, key: string): SheetColumn {
  const field = table.fields.get(key)!;
  return { name: key, label: labelOf(key), role: 'key', formula: '', shownAs: '', meaning: field.meaning };
}

function valueColumn({ name, formula, shownAs }: FormulaRow): SheetColumn {
  return {
    name: name.text,
    label: labelOf(name.text),
    role: 'value',
    formula: formula.text,
    shownAs: shownAs.text,
    meaning: '',
  };
}

/** The sound columns in the order in which they are computed, and what is wrong with the others. */
function checkColumns(
  declared: SheetDeclaration,
  table: BookTable,
  keys: readonly string[],
  knowledge: Knowledge,
): { columns: readonly Column[]; problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const read = new Map<string, { row: FormulaRow; formula: Formula }>();
  for (const row of declared.columns) {
    const name = row.name.text;
    if (read.has(name) || keys.includes(name)) {
      const wanted = 'a name that no other column or key of this sheet has';
      problems.push(cellProblem(knowledge.file, row.name, 'name-taken', wanted, 'Choose another name.'));
      continue;
    }
    const formula = formulaIn(knowledge.file, row.formula);
    if ('problems' in formula) problems.push(...formula.problems);
    else read.set(name, { row, formula: formula.tree });
  }
  const needing = [...read].map(([name, { formula }]) => ({
    name,
    needs: neededNames(name, formula, knowledge.book).filter((need) => read.has(need)),
  }));
  const { names, loops } = orderByNeed(needing);
  for (const loop of loops) {
    const { row } = read.get(loop[0]!)!;
    const wanted = 'columns that do not need each other in a circle';
    const remedy = `The circle is ${loop.join(' → ')}: take one of them out of another’s formula.`;
    problems.push(cellProblem(knowledge.file, row.formula, 'loop', wanted, remedy));
  }
  const kinds = new Map<string, FormulaKind>();
  const columns: Column[] = [];
  for (const name of names) {
    const { row, formula } = read.get(name)!;
    const checked = checkCell(formula, knowledge, { table: table.name, keys }, kinds);
    const wrong = [...checked.problems, ...checkShownAs(knowledge.file, row.shownAs, checked.kind)];
    problems.push(...wrong);
    kinds.set(name, wrong.length > 0 ? { kind: 'unknown' } : checked.kind);
    if (wrong.length === 0 && checked.kind.kind !== 'unknown') columns.push({ row, formula, kind: checked.kind });
  }
  return { columns, problems };
}
