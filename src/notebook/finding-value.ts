import type { CountedRows, FindingCell, FindingColumn, FindingTable, ToldRows } from '../finding/finding.js';
import { groupRows } from '../finding/group-rows.js';
import type { FormulaKind } from '../formula/kind.js';
import { sheetValue } from '../formula/sheet/sheet-value.js';
import { recordedUnit } from '../formula/unit/read-unit.js';
import type { CountedRecords } from '../formula/value/account.js';
import type { Evaluated, SheetValue } from '../formula/value/evaluated.js';
import { givenNumber } from '../formula/value/number.js';
import { once } from '../formula/value/once.js';
import type { BookField, BookTable } from '../record/book.js';
import type { SheetColumn } from './evaluated.js';

/** The records that a finding is asked of, and by which of their fields it is split. */
export interface AskedRecords {
  readonly table: BookTable;
  readonly rows: Uint32Array;
  readonly by: readonly string[];
  /** The rows in words, as the sheet's sentence says them. */
  readonly description: string;
}

type Key = readonly (string | number | null)[];

/** The records that a row of a finding's answer was asked of: those of its group, as far as the row names one. */
function accountsOf({
  table,
  rows,
  by,
  description,
}: AskedRecords): (key: ReadonlyMap<string, FindingCell>) => CountedRecords {
  const groups = new Map(groupRows(table, rows, by).map((group) => [JSON.stringify(group.key), group.rows]));
  const account = (words: string, own: Uint32Array): CountedRecords => {
    return { table: table.name, description: words, rows: own, considered: own.length, unknown: 0, skippedMissing: 0 };
  };
  const whole = account(description, rows);
  // Rows of one group share one account, so that it is told once.
  const accounts = new Map<string, CountedRecords>();
  return (key) => {
    const values = by.map((name) => key.get(name) ?? null);
    const group = JSON.stringify(values);
    const own = by.length === 0 ? undefined : groups.get(group);
    if (own === undefined) return whole;
    const words = by.map((name, at) => `${name} is ${values[at] === null ? 'missing' : JSON.stringify(values[at])}`);
    const known = accounts.get(group) ?? account(`${description} where ${words.join(' and ')}`, own);
    accounts.set(group, known);
    return known;
  };
}

/** What a number counts and what it counts it among, each with its rows; the group's rows where only those are known. */
function exactAccounts(group: CountedRecords, counted: CountedRows | null): readonly CountedRecords[] {
  if (counted === null) return [group];
  const { numerator, denominator } = counted;
  const account = ({ words, rows }: ToldRows, considered: number): CountedRecords => {
    return { ...group, description: `${group.description}: ${words}`, rows, considered };
  };
  return [
    account(numerator, denominator?.rows.length ?? group.rows.length),
    ...(denominator === null ? [] : [account(denominator, group.rows.length)]),
  ];
}

const barred = 'a finding’s number is in it, which cannot be resampled here';

function cellValue(
  cell: FindingCell,
  { unit, whereNone = 'not recorded' }: FindingColumn,
  account: CountedRecords,
  counted: () => CountedRows | null,
): Evaluated {
  if (typeof cell === 'string') return { kind: 'text', text: cell, accounts: [account] };
  const accounts = once(() => exactAccounts(account, counted()));
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
      cellValue(row[at]!, made, accounts[place]!, () => answer.counted?.(place, made.name) ?? null),
    );
    return [[column.name, { kind, cells }] as const];
  });
  const fields = keysAt.map((at) => keyField(columns[at]!, answer.columns[at]!, asked.table));
  return sheetValue(name, { fields, rows }, new Map(values));
}
