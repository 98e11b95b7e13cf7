import type { FormulaKind } from '../formula/kind.js';
import { sheetValue } from '../formula/sheet/sheet-value.js';
import type { Formula } from '../formula/tree.js';
import { kindOfValue } from '../formula/value/kind-of-value.js';
import type { Problem } from '../problem/problem.js';
import type { BookTable } from '../record/book.js';
import { declaredTables } from './declared-tables.js';
import type { FormulaRow, SheetDeclaration } from './document.js';
import { cellProblem, checkCell, checkShownAs, formulaIn } from './formula-cell.js';
import { neededNames, ownColumns, sumsDown } from './needed-names.js';
import { orderByNeed } from './order.js';
import type { Knowledge } from './workings.js';

/** A column of a sheet, read and sound. */
export interface CheckedColumn {
  readonly row: FormulaRow;
  readonly formula: Formula;
  readonly kind: FormulaKind;
}

/** The sound columns of a sheet in the order in which they are computed, the names of the others, and what is wrong with them. */
export interface CheckedColumns {
  readonly columns: readonly CheckedColumn[];
  readonly failed: readonly string[];
  readonly problems: readonly Problem[];
}

interface ReadColumn {
  readonly row: FormulaRow;
  readonly formula: Formula;
}

function readColumns(
  { columns }: SheetDeclaration,
  keys: readonly string[],
  { file }: Knowledge,
): {
  readonly read: ReadonlyMap<string, ReadColumn>;
  readonly failed: readonly string[];
  readonly problems: Problem[];
} {
  const problems: Problem[] = [];
  const failed: string[] = [];
  const read = new Map<string, ReadColumn>();
  for (const row of columns) {
    const name = row.name.text;
    if (read.has(name) || keys.includes(name)) {
      const wanted = 'a name that no other column or key of this sheet has';
      problems.push(cellProblem(file, row.name, 'name-taken', wanted, 'Choose another name.'));
      continue;
    }
    const formula = formulaIn(file, row.formula);
    if ('tree' in formula) read.set(name, { row, formula: formula.tree });
    else {
      problems.push(...formula.problems);
      failed.push(name);
    }
  }
  return { read, failed, problems };
}

/** What must be computed before a column: the columns in it, those it asks about in other rows, and the order it sums down. */
function needsOf(
  name: string,
  formula: Formula,
  declared: SheetDeclaration,
  table: BookTable,
  { book, kinds }: Knowledge,
): readonly string[] {
  const sheet = declared.name.text;
  const tables = declaredTables(
    new Map([[sheet, { kind: 'sheet', name: declared.name, sheet: declared }]]),
    book,
    table,
  );
  // What is known by now tells the tables of selections and of sheets above.
  const tableOf = (base: string | null): BookTable | null => {
    const kind = base === null ? undefined : kinds.get(base);
    if (kind?.kind === 'rows') return book.tables.get(kind.table) ?? null;
    return kind?.kind === 'sheet' ? kind.table : tables(base);
  };
  const order = sumsDown(formula) && declared.order !== null ? [declared.order.column.text] : [];
  const isSheet = (other: string) => other === sheet || kinds.get(other)?.kind === 'sheet';
  return [...neededNames(name, formula, book, tableOf, isSheet), ...ownColumns(sheet, formula), ...order];
}

/** The columns of a sheet checked one after the other, each knowing those before it. */
export function checkColumns(
  declared: SheetDeclaration,
  table: BookTable,
  keys: readonly string[],
  knowledge: Knowledge,
): CheckedColumns {
  const { file } = knowledge;
  const { read, failed: unread, problems } = readColumns(declared, keys, knowledge);
  const needing = [...read].map(([name, { formula }]) => ({
    name,
    needs: needsOf(name, formula, declared, table, knowledge).filter((need) => read.has(need)),
  }));
  const { names, loops } = orderByNeed(needing);
  for (const loop of loops) {
    const { row } = read.get(loop[0]!)!;
    const wanted = 'columns that do not need each other in a circle';
    const remedy = `The circle is ${loop.join(' → ')}: take one of them out of another’s formula.`;
    problems.push(cellProblem(file, row.formula, 'loop', wanted, remedy));
  }
  const unknown: FormulaKind = { kind: 'unknown' };
  const kinds = new Map<string, FormulaKind>([...unread, ...loops.flat()].map((name) => [name, unknown]));
  const columns: CheckedColumn[] = [];
  const fields = keys.map((key) => table.fields.get(key)!);
  const sheet = { name: declared.name.text, table: table.name, keys };
  for (const name of names) {
    const { row, formula } = read.get(name)!;
    const soFar = new Map([...kinds].map(([column, kind]) => [column, { kind, cells: [] }]));
    const own = kindOfValue(sheetValue(sheet.name, { fields, rows: [] }, soFar));
    const checked = checkCell(formula, knowledge, sheet, new Map([...kinds, [sheet.name, own]]));
    const wrong = [...checked.problems, ...checkShownAs(file, row.shownAs, checked.kind)];
    problems.push(...wrong);
    const sound = wrong.length === 0 && checked.kind.kind !== 'unknown';
    kinds.set(name, sound ? checked.kind : unknown);
    if (sound) columns.push({ row, formula, kind: checked.kind });
  }
  const failed = [...kinds].filter(([, kind]) => kind.kind === 'unknown').map(([name]) => name);
  return { columns, failed, problems };
}
