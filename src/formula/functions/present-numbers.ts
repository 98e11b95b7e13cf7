import { plain, type Unit } from '../unit/unit.js';
import { narrowDrawn } from '../value/account.js';
import type { SelectedRows } from '../value/census.js';
import { fieldGiven, type GivenArgument } from './declaration.js';

/** The rows that have a field, with its numbers in their order. */
export interface PresentNumbers {
  readonly selected: SelectedRows;
  readonly numbers: Float64Array;
  readonly unit: Unit;
  /** The same numbers of the rows that a threshold decides anew in every resample; null where none does. */
  readonly drawnNumbers: Float64Array | null;
}

/** The same rows without those that a mark leaves out; they are told in the account as skipped. */
export function keepRows({ table, account }: SelectedRows, kept: (position: number) => boolean): SelectedRows {
  const rows = account.rows.filter((_, position) => kept(position));
  if (rows.length === account.rows.length) return { table, account };
  const skippedMissing = account.skippedMissing + account.rows.length - rows.length;
  return { table, account: { ...account, rows, skippedMissing } };
}

/** The numbers of a field where they are not missing. */
export function presentNumbers(given: GivenArgument | undefined): PresentNumbers {
  const { selected, values, drawnValues } = fieldGiven(given);
  if (values.kind !== 'number') throw new Error('a number field was not checked');
  const numbers = values.values.filter((value) => !Number.isNaN(value));
  const unit: Unit = values.unit.length === 0 ? plain : values.unit;
  const kept = keepRows(selected, (position) => !Number.isNaN(values.values[position]!));
  const { drawn } = selected.account;
  if (drawn === undefined || drawnValues?.kind !== 'number')
    return { selected: kept, numbers, unit, drawnNumbers: null };
  const all = drawnValues.values;
  const narrowed = narrowDrawn(drawn, (position) => !Number.isNaN(all[position]!));
  return {
    selected: { ...kept, account: { ...kept.account, drawn: narrowed } },
    numbers,
    unit,
    drawnNumbers: all.filter((value) => !Number.isNaN(value)),
  };
}
