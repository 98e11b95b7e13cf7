import type { Result } from '../../formula/result.js';
import { describeUnit } from '../../formula/unit/unit.js';
import { accountOf, type Evaluated } from '../../formula/value/evaluated.js';
import type { FoundRecords } from '../found-records.js';
import { without } from './record-sets.js';

/** Whether a number of records is too small to be told: none at all is told. */
export function isFew(records: number, fewest: number): boolean {
  return records > 0 && records < fewest;
}

/** The sets of records whose number a value tells; `isExact` where it tells of nothing else. */
export interface ToldByValue {
  readonly records: readonly FoundRecords[];
  readonly isExact: boolean;
}

/** What a value tells of: a plain count of its own records; a share of its cases, of all, and of those that are no cases. */
export function toldByValue(value: Evaluated): ToldByValue {
  if (value.kind === 'rows') return { records: [value.counted], isExact: true };
  if (value.kind === 'number') {
    if (value.counted !== null) return { records: [value.counted], isExact: true };
    const [cases, trials] = [value.shareOf?.cases.counted ?? null, value.shareOf?.trials.counted ?? null];
    if (cases !== null && trials !== null) {
      const others = { table: trials.table, rows: without(trials.rows, [cases.rows]) };
      return { records: [cases, trials, others], isExact: true };
    }
  }
  const basis = value.kind === 'text' || value.kind === 'date' || value.kind === 'truth' ? (value.basis ?? []) : [];
  const records = [value, ...basis].flatMap((one) => accountOf(one).map(({ table, rows }) => ({ table, rows })));
  return { records, isExact: false };
}

/** Whether a result by itself shows a number of craft that is too small, or a share of which one side is. */
export function showsFew(result: Result, value: Evaluated, fewest: number): boolean {
  if (result.kind !== 'number') return false;
  const { numerator, denominator } = result;
  if (numerator !== null && isFew(numerator, fewest)) return true;
  if (denominator !== null && isFew(denominator, fewest)) return true;
  if (numerator !== null && denominator !== null) return isFew(denominator - numerator, fewest);
  return value.kind === 'number' && (isFewCraft(value, fewest) || isShareOfFew(value, fewest));
}

type NumberValue = Extract<Evaluated, { kind: 'number' }>;

/** A count that is no plain count of rows, such as of different craft or of craft that passed by. */
function isFewCraft({ value, unit, standing }: NumberValue, fewest: number): boolean {
  const counts = ['', 'craft', 'inspections', 'looks', 'washes'].includes(describeUnit(unit));
  return standing === 'census' && counts && value !== null && Number.isInteger(value) && isFew(value, fewest);
}

/** A share whose cases are not counted by themselves, such as of waits that ended in time. */
function isShareOfFew({ value, unit, accounts }: NumberValue, fewest: number): boolean {
  const [only, ...more] = accounts;
  if (only === undefined || more.length > 0 || unit.length > 0 || value === null || value <= 0 || value >= 1)
    return false;
  const cases = Math.min(value, 1 - value) * only.rows.length;
  return isFew(Math.round(cases), fewest);
}
