import type { FindingCell, RowsBehind, ToldRows } from '../finding/finding.js';
import { groupRows } from '../finding/group-rows.js';
import type { CountedRecords } from '../formula/value/account.js';
import { isPartOf } from '../formula/value/proportion.js';
import type { Book, BookTable } from '../record/book.js';

/** The records that a finding is asked of, and by which of their fields it is split. */
export interface AskedRecords {
  readonly book: Book;
  readonly table: BookTable;
  readonly rows: Uint32Array;
  readonly by: readonly string[];
  /** The rows in words, as the sheet's sentence says them. */
  readonly description: string;
}

/** The records that a row of a finding's answer was asked of: those of its group, as far as the row names one. */
export function accountsOf({
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

/** Accounts of rows that several numbers of a group tell, each made once. */
const accountsIn = new WeakMap<CountedRecords, WeakMap<ToldRows, Map<string, CountedRecords>>>();

/**
 * What a number counts, what it counts it among, and what else it is made of, each with its rows; the group's rows where only
 * those are known, and none of them where a model takes none.
 */
export function exactAccounts(
  group: CountedRecords,
  asked: AskedRecords,
  behind: RowsBehind | null,
): readonly CountedRecords[] {
  if (behind === null) return [group];
  const { numerator, denominator, uses, model } = behind;
  const sides = [numerator, denominator, ...uses].filter((told) => told !== null);
  if (sides.length === 0)
    return [{ ...group, rows: new Uint32Array(0), considered: 0, ...(model === null ? {} : { model }) }];
  const isShare = model === null && isShareOf(numerator, denominator);
  return sides.map((told) => {
    const among = isShare && told === numerator ? denominator : null;
    return accountIn(group, asked, told, among, model);
  });
}

/** Whether the rows on one side are some of those on the other. */
function isShareOf(some: ToldRows | null, all: ToldRows | null): boolean {
  return some !== null && all !== null && some.table === all.table && isPartOf(some.rows, all.rows);
}

function accountIn(
  group: CountedRecords,
  asked: AskedRecords,
  told: ToldRows,
  among: ToldRows | null,
  model: string | null,
): CountedRecords {
  const ofGroup = accountsIn.get(group) ?? new WeakMap<ToldRows, Map<string, CountedRecords>>();
  accountsIn.set(group, ofGroup);
  const known = ofGroup.get(told) ?? new Map<string, CountedRecords>();
  ofGroup.set(told, known);
  const key = `${among?.rows.length} ${model}`;
  const account = known.get(key) ?? makeAccount(group, asked, told, among, model);
  known.set(key, account);
  return account;
}

function makeAccount(
  group: CountedRecords,
  asked: AskedRecords,
  told: ToldRows,
  among: ToldRows | null,
  model: string | null,
): CountedRecords {
  const { words, rows, table = group.table } = told;
  const from = considered(group, asked, told);
  return {
    ...group,
    table,
    description: from.words === '' ? words : `${from.words}: ${words}`,
    rows,
    considered: among?.rows.length ?? from.count,
    ...(model === null ? {} : { model }),
  };
}

/** Which rows those of a number are some of, in words and their number: the group's, all that were asked of, or their table's. */
function considered(
  { rows, description, table }: CountedRecords,
  asked: AskedRecords,
  told: ToldRows,
): { readonly words: string; readonly count: number } {
  const own = told.table ?? table;
  if (own === table && isPartOf(told.rows, rows)) return { words: description, count: rows.length };
  if (own === table && isPartOf(told.rows, asked.rows)) return { words: asked.description, count: asked.rows.length };
  return { words: '', count: asked.book.tables.get(own)!.rowCount };
}
