import type { Table, TableCell } from 'mdast';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import type { Cell, FormulaRow, InputRow, SelectionRow } from './document.js';

/** A pipe table that is alive, by the word at its head. */
export type LiveTable =
  | { readonly kind: 'inputs'; readonly rows: readonly InputRow[] }
  | { readonly kind: 'selections'; readonly rows: readonly SelectionRow[] }
  | { readonly kind: 'figures'; readonly rows: readonly FormulaRow[] }
  | { readonly kind: 'columns'; readonly rows: readonly FormulaRow[] };

/** The heads of each live table, the first of which makes it one; those behind the bar may be left out. */
const heads: ReadonlyMap<string, { readonly must: readonly string[]; readonly may: readonly string[] }> = new Map([
  ['input', { must: ['input', 'value'], may: ['low', 'high', 'unit', 'source'] }],
  ['selection', { must: ['selection', 'rows'], may: [] }],
  ['figure', { must: ['figure', 'formula'], may: ['shown as'] }],
  ['column', { must: ['column', 'formula'], may: ['shown as'] }],
]);

/** The live table that a pipe table declares, or null where its first head is not one of ours; its mistakes are added. */
export function readLiveTable(file: string, text: string, table: Table, problems: Problem[]): LiveTable | null {
  const [headRow, ...bodyRows] = tableCells(text, table);
  const first = headRow?.[0]?.text ?? '';
  const expected = heads.get(first);
  if (headRow === undefined || expected === undefined) return null;
  const placeOf = new Map<string, number>();
  headRow.forEach((head, at) => {
    if (!expected.must.includes(head.text) && !expected.may.includes(head.text)) {
      const known = [...expected.must, ...expected.may];
      const nearest = nearestName(head.text, known);
      problems.push(badName(file, head, 'unknown-head', `one of the heads ${known.join(', ')}`, nearest));
    } else placeOf.set(head.text, at);
  });
  const missing = expected.must.filter((name) => !placeOf.has(name));
  if (missing.length > 0) {
    problems.push(badName(file, headRow[0]!, 'missing-head', `also a head "${missing.join('" and "')}"`, null));
    return { kind: 'inputs', rows: [] };
  }
  const at = (row: readonly Cell[], head: string): Cell => row[placeOf.get(head) ?? -1] ?? nothing(row[0]!);
  const rows = bodyRows.filter((row) => {
    const name = row[0]?.text ?? '';
    if (/^[a-z][a-z0-9_]*$/.test(name)) return true;
    const wanted = 'a name of small letters, digits and underscores, beginning with a letter';
    problems.push(badName(file, row[0] ?? headRow[0]!, 'bad-name', wanted, null));
    return false;
  });
  const formulas = (): FormulaRow[] =>
    rows.map((row) => ({
      name: row[0]!,
      formula: at(row, 'formula'),
      shownAs: at(row, 'shown as'),
    }));
  if (first === 'input') {
    return {
      kind: 'inputs',
      rows: rows.map((row) => ({
        name: row[0]!,
        value: at(row, 'value'),
        unit: at(row, 'unit'),
        source: at(row, 'source'),
        low: at(row, 'low'),
        high: at(row, 'high'),
      })),
    };
  }
  if (first === 'selection') {
    return {
      kind: 'selections',
      rows: rows.map((row) => ({ name: row[0]!, rows: at(row, 'rows') })),
    };
  }
  return { kind: first === 'figure' ? 'figures' : 'columns', rows: formulas() };
}

/** Every cell of a pipe table as it stands, a list a row, its heads first. */
export function tableCells(text: string, table: Table): readonly (readonly Cell[])[] {
  return table.children.map((row) => row.children.map((cell) => cellOf(text, cell)));
}

/** A cell's text as it stands between its bars, so that no mark of a formula is taken for emphasis. */
function cellOf(text: string, cell: TableCell): Cell {
  const { start, end } = cell.position!;
  const raw = text.slice(start.offset, end.offset);
  const lead = /^\s*\|?\s*/.exec(raw)![0].length;
  const inner = raw.slice(lead).replace(/\s*\|?\s*$/, '');
  return { text: inner, line: start.line, column: start.column + lead };
}

function nothing(beside: Cell): Cell {
  return { text: '', line: beside.line, column: beside.column };
}

function badName(file: string, cell: Cell, code: string, wanted: string, nearest: string | null): Problem {
  return {
    code,
    severity: 'sets aside',
    place: inDocument(file, cell.line, cell.column),
    seen: cell.text,
    wanted,
    remedy: nearest === null ? 'Change the word in this cell.' : `Did you mean "${nearest}"?`,
  };
}
