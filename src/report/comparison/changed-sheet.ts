import { showNumber } from '../../notebook/shown.js';
import type { CarriedCell, CarriedColumn, CarriedSheet } from '../results/page-results.js';
import type { ChangedCell, ChangedSheet, Why } from './comparison.js';
import { comparisonWords } from './comparison-words.js';
import { movedFrom } from './moved.js';

/** What of a sheet is not as it was; null where everything is. Rows are the same where the keys that name them are. */
export function changedSheet(
  before: CarriedSheet | null,
  after: CarriedSheet | null,
  why: () => Why,
): ChangedSheet | null {
  const name = (after ?? before)!.name;
  if (before === null || after === null) {
    const there = before === null ? 'after' : 'before';
    const [rowsBefore, rowsAfter] = [before?.count ?? 0, after?.count ?? 0];
    return { name, there, rowsBefore, rowsAfter, rowsAdded: [], rowsRemoved: [], cells: [], ...why() };
  }
  if (before.fingerprint === after.fingerprint && sameHeads(before, after)) return null;
  // Where one of the two is too long to be carried, none of its rows is known to have come or gone.
  const carried = before.rows.length === before.count && after.rows.length === after.count;
  const [was, is] = carried ? [rowsByKey(before), rowsByKey(after)] : [new Map(), new Map()];
  return {
    name,
    there: 'both',
    rowsBefore: before.count,
    rowsAfter: after.count,
    rowsAdded: [...is.keys()].filter((key) => !was.has(key)),
    rowsRemoved: [...was.keys()].filter((key) => !is.has(key)),
    cells: [...is]
      .flatMap(([key, row]) => (was.has(key) ? changedCells(key, before, was.get(key)!, after, row) : []))
      .sort((one, other) => Math.abs(other.relative ?? 0) - Math.abs(one.relative ?? 0)),
    ...why(),
  };
}

function sameHeads(one: CarriedSheet, other: CarriedSheet): boolean {
  const heads = ({ columns }: CarriedSheet): string => JSON.stringify(columns.map(({ name, unit }) => [name, unit]));
  return heads(one) === heads(other);
}

type Row = readonly CarriedCell[];

/** Rows by what names them; a name that stands twice gets its number, so that no row is lost. */
function rowsByKey({ columns, rows }: CarriedSheet): Map<string, Row> {
  const byKey = new Map<string, Row>();
  const times = new Map<string, number>();
  for (const row of rows) {
    const keys = row.filter((_, at) => columns[at]?.key === true);
    const key = keys.map((cell) => (cell === null ? comparisonWords.notRecorded : String(cell))).join(', ');
    const time = (times.get(key) ?? 0) + 1;
    times.set(key, time);
    byKey.set(time === 1 ? key : comparisonWords.again(key, time), row);
  }
  return byKey;
}

function changedCells(key: string, before: CarriedSheet, was: Row, after: CarriedSheet, is: Row): ChangedCell[] {
  return after.columns.flatMap((column, at): ChangedCell[] => {
    const place = before.columns.findIndex(({ name }) => name === column.name);
    const former = before.columns[place];
    if (former === undefined || column.key) return [];
    const [one, other] = [was[place] ?? null, is[at] ?? null];
    if (JSON.stringify(one) === JSON.stringify(other) && former.unit === column.unit) return [];
    const moved = movedFrom(former.unit === column.unit ? numberOf(one) : null, numberOf(other), limitsOf(one));
    return [{ row: key, column: column.name, before: shown(one, former), after: shown(other, column), ...moved }];
  });
}

function numberOf(cell: CarriedCell): number | null {
  if (typeof cell === 'number') return cell;
  return Array.isArray(cell) ? cell[0] : null;
}

function limitsOf(cell: CarriedCell): { readonly low: number | null; readonly high: number | null } | undefined {
  return Array.isArray(cell) ? { low: cell[1], high: cell[2] } : undefined;
}

function shown(cell: CarriedCell, { shownAs, unit }: CarriedColumn): string {
  if (cell === null) return comparisonWords.noValue;
  if (typeof cell === 'string') return cell;
  const limit = (value: number | null): string =>
    value === null ? comparisonWords.notReached : showNumber(value, shownAs, unit);
  const value = numberOf(cell);
  const number = value === null ? comparisonWords.noValue : showNumber(value, shownAs, unit);
  const limits = limitsOf(cell);
  return limits === undefined ? number : comparisonWords.withLimits(number, limit(limits.low), limit(limits.high));
}
