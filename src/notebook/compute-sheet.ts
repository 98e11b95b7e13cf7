import { groupRows } from '../finding/group-rows.js';
import { evaluate } from '../formula/evaluate.js';
import type { Result } from '../formula/result.js';
import { resultOf } from '../formula/result-of.js';
import type { Problem } from '../problem/problem.js';
import type { BookTable } from '../record/book.js';
import { type ComputedSheet, emptySheet, type SheetRows } from './computed-sheet.js';
import type { FormulaRow, SheetDeclaration, SheetMaker } from './document.js';
import type { SheetColumn } from './evaluated.js';
import { fillGroups } from './fill-groups.js';
import { findingSheet } from './finding-sheet.js';
import { cellProblem, checkCell, formulaIn } from './formula-cell.js';
import { formulaKey } from './formula-key.js';
import { keyResult, labelOf } from './key-cell.js';
import { orderRows } from './order-rows.js';
import { sensitivityName, sensitivitySheet } from './sensitivity-sheet.js';
import { checkColumns } from './sheet-columns.js';
import { unknownFields } from './sheet-fields.js';
import type { Knowledge } from './workings.js';

/** A sheet filled once for every group, or by a finding; a sheet with a mistake has no rows and names it. */
export function computeSheet(declared: SheetDeclaration, knowledge: Knowledge): ComputedSheet {
  const { maker } = declared;
  if (maker.kind === 'finding' && maker.finding.text === sensitivityName) {
    return sensitivitySheet(declared, maker, knowledge);
  }
  const rows = rowsOfSheet(declared, knowledge);
  if ('problems' in rows) return emptySheet(declared, rows.problems);
  if (declared.maker.kind === 'finding') {
    return findingSheet(declared, declared.maker, rows, knowledge);
  }
  return eachSheet(declared, declared.maker, rows, knowledge);
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
  return {
    table: knowledge.book.tables.get(value.table)!,
    rows: value.counted.rows,
    decidedBy: value.counted.decidedBy ?? [],
    drawn: value.counted.drawn ?? null,
    key,
  };
}

function eachSheet(
  declared: SheetDeclaration,
  maker: Extract<SheetMaker, { kind: 'each' }>,
  { table, rows, decidedBy, drawn, key: rowsKey }: SheetRows,
  knowledge: Knowledge,
): ComputedSheet {
  const keys = maker.fields.map(({ text }) => text);
  const wrongKeys = unknownFields(knowledge.file, maker.fields, table);
  if (wrongKeys.length > 0) return emptySheet(declared, wrongKeys);
  const { columns, failed, problems } = checkColumns(declared, table, keys, knowledge);
  const groupsKey = knowledge.memory.keyOf('groups', rowsKey, ...keys);
  const { text: sheetName } = declared.name;
  const groups = knowledge.memory.value(`groups of ${sheetName}`, groupsKey, () => groupRows(table, rows, keys));
  // A column that has a problem of its own orders nothing, and nothing more is said.
  const order = failed.includes(declared.order?.column.text ?? '') ? null : declared.order;
  const plan = { name: sheetName, table, keys, columns, failed, order, decidedBy, drawn };
  const { filled, asked } = fillGroups(plan, groups, groupsKey, knowledge);
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
  const ordered = orderRows(shown, sheetColumns, order, knowledge.file);
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
      needs: [],
      ofRows: [],
      keys: ordered.rows.map(({ key }) => key),
      cells: ordered.rows.map(({ cells }) => cells),
    },
    asked,
  };
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
