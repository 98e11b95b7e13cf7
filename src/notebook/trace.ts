import type { Result } from '../formula/result.js';
import { type Formula, namesIn } from '../formula/tree.js';
import type { CountedRecords } from '../formula/value/account.js';
import { accountOf, type Evaluated } from '../formula/value/evaluated.js';
import type { Book } from '../record/book.js';
import type { EvaluatedInput } from './evaluated.js';
import { rowNamed, rowNames } from './sheet-row.js';
import { type TracedFile, tracedFiles } from './traced-files.js';
import type { NotebookWorkings } from './workings.js';

/** Rows of one file that were set aside on import, and why. */
export interface TracedSetAside {
  readonly file: string;
  readonly rows: number;
  readonly problems: Readonly<Record<string, number>>;
}

/** One count of records under a figure: which were counted, and which were left out and why. */
export interface TracedCount {
  readonly table: string;
  readonly description: string;
  readonly counted: number;
  readonly considered: number;
  /** What makes the number of these rows where it is not just their count or share; null where it is. */
  readonly model: string | null;
  /** Rows that do not meet the conditions; rows for which a condition met a missing value; rows without the value asked for. */
  readonly leftOut: { readonly otherwise: number; readonly unknown: number; readonly missing: number };
  readonly files: readonly TracedFile[];
  readonly setAside: readonly TracedSetAside[];
}

/** A name under a figure, with what it gives. */
export interface TracedName {
  readonly name: string;
  readonly formula: string;
  readonly shownAs: string;
  readonly result: Result;
}

/** All that a figure stands on. */
export interface Trace {
  readonly name: string;
  readonly formula: string;
  readonly shownAs: string;
  readonly result: Result;
  readonly inputs: readonly EvaluatedInput[];
  readonly standsOn: readonly TracedName[];
  readonly counts: readonly TracedCount[];
}

/** The account of a figure: formula, inputs, other figures, and records by file and line; null where there is no such figure. */
export function traceFigure(workings: NotebookWorkings, name: string): Trace | null {
  const figure = workings.notebook.figures.get(name);
  if (figure === undefined) return null;
  const { formula, shownAs, result } = figure;
  const known = workings.names.get(name);
  return traceOf(workings, { name, formula, shownAs, result }, known?.needs ?? [], known?.value ?? null);
}

/**
 * The account of one cell of a sheet; `row` names its row as `rowNamed` reads it. Null where there is no such sheet, column
 * or row.
 */
export function traceCell(
  workings: NotebookWorkings,
  sheetName: string,
  columnName: string,
  row: string,
): Trace | null {
  const sheet = workings.notebook.sheets.get(sheetName);
  const behind = workings.sheets.get(sheetName);
  if (sheet === undefined || behind === undefined) return null;
  const at = rowNamed(sheet, behind, row);
  return at === null ? null : traceCellAt(workings, sheetName, columnName, at);
}

/** The account of the cell of a column in a row by its number, as the sheet shows them; null where there is no such cell. */
export function traceCellAt(
  workings: NotebookWorkings,
  sheetName: string,
  columnName: string,
  row: number,
): Trace | null {
  const sheet = workings.notebook.sheets.get(sheetName);
  const behind = workings.sheets.get(sheetName);
  const at = sheet?.columns.findIndex(({ name, role }) => name === columnName && role === 'value') ?? -1;
  const value = behind?.cells[row]?.get(columnName);
  if (sheet === undefined || behind === undefined || at < 0 || value === undefined) return null;
  const { formula, shownAs } = sheet.columns[at]!;
  const result = sheet.rows[row]!.cells[at]!;
  const name = `${sheetName}.${columnName}[${rowNames(behind)[row]}]`;
  const under = columnsUnder(columnName, behind.formulas);
  const formulas = [columnName, ...under].flatMap((column) => behind.formulas.get(column) ?? []);
  const used = new Set([...behind.ofRows, ...formulas.flatMap(namesIn)]);
  const needs = behind.needs.filter((need) => used.has(need));
  const traced = traceOf(workings, { name, formula: formula || sheet.sentence, shownAs, result }, needs, value);
  const beside = sheet.columns.flatMap((column, place): TracedName[] => {
    if (!under.has(column.name)) return [];
    const cell = sheet.rows[row]!.cells[place]!;
    return [{ name: column.name, formula: column.formula, shownAs: column.shownAs, result: cell }];
  });
  return { ...traced, standsOn: [...beside, ...traced.standsOn] };
}

/** The columns of a sheet that one of its columns is made of. */
function columnsUnder(column: string, formulas: ReadonlyMap<string, Formula>): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (name: string): void => {
    const formula = formulas.get(name);
    for (const need of formula === undefined ? [] : namesIn(formula)) {
      if (!formulas.has(need) || found.has(need)) continue;
      found.add(need);
      visit(need);
    }
  };
  visit(column);
  found.delete(column);
  return found;
}

function traceOf(
  { notebook, book, names, sheets }: NotebookWorkings,
  traced: Pick<Trace, 'name' | 'formula' | 'shownAs' | 'result'>,
  needs: readonly string[],
  value: Evaluated | null,
): Trace {
  const under = namesUnder(needs, (need) => names.get(need)?.needs ?? sheets.get(need)?.needs ?? []);
  return {
    ...traced,
    inputs: under.flatMap((need) => notebook.inputs.get(need) ?? []),
    standsOn: under.flatMap((need): TracedName[] => {
      const other = notebook.figures.get(need);
      if (other !== undefined) {
        return [{ name: need, formula: other.formula, shownAs: other.shownAs, result: other.result }];
      }
      const sheet = notebook.sheets.get(need);
      if (sheet !== undefined) {
        const text = `a sheet of ${sheet.rows.length} rows`;
        return [{ name: need, formula: sheet.sentence, shownAs: '', result: { kind: 'text', text } }];
      }
      const selection = notebook.selections.get(need);
      if (selection === undefined) return [];
      const { formula, rows, table } = selection;
      return [{ name: need, formula, shownAs: '', result: { kind: 'text', text: `${rows} rows of ${table}` } }];
    }),
    counts: value === null ? [] : countsUnder(value, book),
  };
}

/** Everything under a name, nearest first, each once. */
function namesUnder(first: readonly string[], needsOf: (name: string) => readonly string[]): readonly string[] {
  const found = new Set(first);
  for (const name of found) for (const need of needsOf(name)) found.add(need);
  return [...found];
}

/** The record counts under a value, each with its files and lines. */
export function countsUnder(value: Evaluated, book: Book): readonly TracedCount[] {
  return joinAlike(accountOf(value)).map((counted) => tracedCount(counted, book));
}

/** Records that are told in the same words, as those under a sum over a sheet's column may be, told together. */
function joinAlike(accounts: readonly CountedRecords[]): readonly CountedRecords[] {
  const alike = new Map<string, CountedRecords[]>();
  for (const account of accounts) {
    const { table, description, considered, unknown, skippedMissing, model } = account;
    const key = JSON.stringify([table, description, considered, unknown, skippedMissing, model]);
    // What was left out for want of a value cannot be told apart, and is told of each by itself.
    const own = unknown + skippedMissing > 0 ? `${key} ${alike.size}` : key;
    alike.set(own, [...(alike.get(own) ?? []), account]);
  }
  return [...alike.values()].map((some) => {
    const [first] = some as [CountedRecords];
    if (some.length === 1) return first;
    return { ...first, rows: Uint32Array.from(new Set(some.flatMap(({ rows }) => [...rows]))).sort() };
  });
}

/** What makes a number of its records where it is not just their count or share, each once. */
export function modelsOf(counts: readonly TracedCount[]): readonly string[] {
  return [...new Set(counts.flatMap(({ model }) => model ?? []))];
}

/** Counts already told, by their book: many cells stand on the same records. */
const told = new WeakMap<Book, WeakMap<CountedRecords, TracedCount>>();

function tracedCount(counted: CountedRecords, book: Book): TracedCount {
  const ofBook = told.get(book) ?? new WeakMap<CountedRecords, TracedCount>();
  told.set(book, ofBook);
  const known = ofBook.get(counted) ?? tellCount(counted, book);
  ofBook.set(counted, known);
  return known;
}

function tellCount(counted: CountedRecords, book: Book): TracedCount {
  const { table, description, rows, considered, unknown, skippedMissing, model = null } = counted;
  const files = book.sum.files.filter((file) => file.table === table && file.setAside > 0);
  return {
    table,
    description,
    counted: rows.length,
    considered,
    model,
    leftOut: { otherwise: considered - rows.length - unknown - skippedMissing, unknown, missing: skippedMissing },
    files: tracedFiles(counted, book),
    setAside: files.map(({ file, setAside, problems }) => ({ file, rows: setAside, problems })),
  };
}
