import type { BookTable } from '../record/book.js';
import { type Checking, refuse, suggest } from './checking.js';
import { describeKind } from './kind.js';
import type { Span } from './place.js';
import type { RowsReading } from './rows/rows-reading.js';
import { meaningOf } from './scope.js';

/** Whether a name stands for records: a table or a selection. A sheet is none, so that no field is taken for one. */
export function namesRows({ scope }: Checking): (name: string) => boolean {
  return (name) => {
    const meaning = meaningOf(name, scope);
    return meaning?.means === 'table' || (meaning?.means === 'known' && meaning.kind.kind === 'rows');
  };
}

function baseTable({ base }: RowsReading, span: Span, checking: Checking): BookTable | null {
  const { scope } = checking;
  const { tables } = scope.book;
  if (base === null) {
    if (scope.sheet !== null) return tables.get(scope.sheet.table) ?? null;
    const remedy = 'Name a table or a selection: count(inspections where …).';
    refuse(checking, span, { code: 'no-group', wanted: 'the rows, because outside a sheet there is no group', remedy });
    return null;
  }
  const meaning = meaningOf(base.name, scope);
  if (meaning?.means === 'table') return tables.get(meaning.table)!;
  if (meaning?.means === 'known') {
    if (meaning.kind.kind === 'rows') return tables.get(meaning.kind.table) ?? null;
    if (meaning.kind.kind === 'sheet') return meaning.kind.table;
    if (meaning.kind.kind === 'unknown') return null;
    const wanted = `a table or a selection, not ${describeKind(meaning.kind)}`;
    refuse(checking, base, { code: 'wrong-kind', wanted, remedy: 'Name the rows to count.' });
    return null;
  }
  const selections = [...scope.known].filter(([, kind]) => kind.kind === 'rows').map(([name]) => name);
  const known = [...tables.keys(), ...selections];
  const remedy = suggest(base.name, known, `The tables are ${[...tables.keys()].join(', ')}.`);
  refuse(checking, base, { code: 'unknown-name', wanted: 'a table or a selection', remedy });
  return null;
}

function checkHere(table: BookTable, span: Span, checking: Checking): void {
  const { sheet } = checking.scope;
  if (sheet === null) {
    const remedy = '`here` means the rows that agree with a sheet’s group; leave it out.';
    refuse(checking, span, { code: 'no-group', wanted: 'a sheet around `here`', remedy });
    return;
  }
  for (const key of sheet.keys.filter((name) => !table.fields.has(name))) {
    const remedy = `Group by fields that ${table.name} has too, or count all its rows without \`here\`.`;
    refuse(checking, span, { code: 'unknown-field', wanted: `a table that has the sheet’s key ${key}`, remedy });
  }
}

/** Checks rows and the condition on them; gives their table, or null where it is not known. */
export function checkRows(reading: RowsReading, span: Span, checking: Checking): BookTable | null {
  const table = baseTable(reading, span, checking);
  if (table !== null && reading.here) checkHere(table, reading.base ?? span, checking);
  if (reading.where === null || table === null) return table;
  const kind = checking.kindOf(reading.where, { ...checking, row: table });
  if (kind.kind !== 'truth' && kind.kind !== 'unknown') {
    refuse(checking, reading.where, {
      code: 'wrong-kind',
      wanted: `a condition after \`where\`, not ${describeKind(kind)}`,
      remedy: 'Compare it with a value: where standing_water is "yes".',
    });
  }
  return table;
}
