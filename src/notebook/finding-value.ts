import { once } from '../finding/book/once.js';
import type { FindingCell, FindingColumn, FindingTable, RowsBehind } from '../finding/finding.js';
import type { FormulaKind } from '../formula/kind.js';
import { sheetValue } from '../formula/sheet/sheet-value.js';
import { recordedUnit } from '../formula/unit/read-unit.js';
import type { CountedRecords } from '../formula/value/account.js';
import type { Evaluated, SheetValue } from '../formula/value/evaluated.js';
import { givenNumber } from '../formula/value/number.js';
import type { BookField, BookTable } from '../record/book.js';
import type { SheetColumn } from './evaluated.js';
import { type AskedRecords, accountsOf, exactAccounts } from './finding-accounts.js';

type Key = readonly (string | number | null)[];

const barred = 'a finding’s number is in it, which cannot be resampled here';

function cellValue(
  cell: FindingCell,
  { unit, whereNone = 'not recorded' }: FindingColumn,
  account: CountedRecords,
  asked: AskedRecords,
  behind: () => RowsBehind | null,
): Evaluated {
  if (typeof cell === 'string') return { kind: 'text', text: cell, accounts: [account] };
  const accounts = once(() => exactAccounts(account, asked, behind()));
  const words = recordedUnit(unit);
  const none = { interval: null, why: barred, cautions: [] };
  if (cell === null || typeof cell === 'number') {
    const given = givenNumber(cell, words, cell === null ? whereNone : null);
    return {
      ...given,
      standing: 'estimate',
      barred,
      interval: () => none,
      get accounts() {
        return accounts();
      },
    };
  }
  const { value, numerator, denominator, interval, why, cautions } = cell;
  const found = { interval, why, cautions: [] };
  return {
    ...givenNumber(value, words, value === null ? why : null),
    standing: 'estimate',
    numerator,
    denominator,
    ownInterval: interval === null ? null : () => found,
    barred,
    cautions,
    interval: () => found,
    // The rows are looked up when somebody asks for them.
    get accounts() {
      return accounts();
    },
  };
}

function keyField(column: SheetColumn, finding: FindingColumn, table: BookTable): BookField {
  const known = table.fields.get(column.name);
  if (known !== undefined) return known;
  const kind = finding.kind === 'text' ? 'text' : 'number';
  return { name: column.name, kind, unit: finding.unit, codes: null, labels: null, meaning: finding.meaning };
}

/** A finding says names where a field has them; formulas and records know the codes. */
function recordedKeys(field: BookField | undefined): (cell: FindingCell) => FindingCell {
  const codes = new Map([...(field?.labels ?? [])].map(([code, label]) => [label, code]));
  return (cell) => (typeof cell === 'string' ? (codes.get(cell) ?? cell) : cell);
}

/** A finding's answer as formulas and traces ask it; its numbers keep their intervals, and stand on the records asked of. */
export function findingValue(
  name: string,
  answer: FindingTable,
  columns: readonly SheetColumn[],
  asked: AskedRecords,
): SheetValue {
  const accountOfKey = accountsOf(asked);
  const recorded = answer.columns.map((column) => recordedKeys(asked.table.fields.get(column.name)));
  const accounts = answer.rows.map((cells) =>
    accountOfKey(new Map(answer.columns.map((column, at) => [column.name, recorded[at]!(cells[at]!)]))),
  );
  const keysAt = columns.flatMap(({ role }, at) => (role === 'key' ? [at] : []));
  const rows = answer.rows.map((cells): Key => {
    return keysAt.map((at) => {
      const cell = recorded[at]!(cells[at]!);
      return typeof cell === 'object' ? null : cell;
    });
  });
  const values = columns.flatMap((column, at) => {
    if (column.role === 'key') return [];
    const made = answer.columns[at]!;
    const kind: FormulaKind = { kind: 'number', unit: recordedUnit(made.unit) };
    const cells = answer.rows.map((row, place) =>
      cellValue(row[at]!, made, accounts[place]!, asked, () => answer.counted?.(place, made.name) ?? null),
    );
    return [[column.name, { kind, cells }] as const];
  });
  const fields = keysAt.map((at) => keyField(columns[at]!, answer.columns[at]!, asked.table));
  return sheetValue(name, { fields, rows }, new Map(values));
}
