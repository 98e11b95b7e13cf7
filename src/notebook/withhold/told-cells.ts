import type { Result } from '../../formula/result.js';
import type { Evaluated } from '../../formula/value/evaluated.js';
import type { FoundRecords } from '../found-records.js';
import type { NotebookWorkings } from '../workings.js';
import type { Beyond } from './beyond.js';
import { beyondAccounts } from './beyond-accounts.js';
import { craftRecords } from './craft-records.js';
import { RecordSets } from './record-sets.js';
import { cellKey, type ToldCell, type ToldSet } from './told-cell.js';
import { isFew, showsFew, toldByValue } from './told-value.js';

/** Everything that a computed notebook would show, with the records that each tells of. */
export interface ToldCells {
  readonly cells: readonly ToldCell[];
  /** The sets of each table that they tell of. */
  readonly tables: readonly RecordSets[];
}

/** Gathers what a notebook would show; `unknown` are sheets whose findings do not say which records they count. */
export function toldCells(workings: NotebookWorkings, unknown: ReadonlySet<string>, fewest: number): ToldCells {
  const { notebook, names, sheets, book } = workings;
  const beyond = beyondAccounts(workings, unknown);
  const tables = new Map<string, RecordSets>();
  const setsOf = (records: readonly FoundRecords[]): readonly ToldSet[] =>
    records
      .flatMap((one) => craftRecords(book, one))
      .map(({ table, rows }) => {
        const sets = tables.get(table) ?? new RecordSets(table);
        tables.set(table, sets);
        return { sets, number: sets.numberOf(rows) };
      });
  const ofColumn = new Map<string, readonly ToldSet[]>();
  /** All that the cells of a column tell of. */
  const toldByColumn = (key: string): readonly ToldSet[] => {
    const known = ofColumn.get(key);
    if (known !== undefined) return known;
    const [sheet, column] = JSON.parse(key) as [string, string];
    const { cells = [], records } = sheets.get(sheet) ?? {};
    const behind = records?.();
    const told = cells.flatMap((row, at) => {
      const value = row.get(column);
      return setsOf(behind?.[at]?.get(column) ?? (value === undefined ? [] : toldByValue(value).records));
    });
    ofColumn.set(key, told);
    return told;
  };
  const cell = (place: Place, value: Evaluated, result: Result, further: Beyond): ToldCell => {
    const own = place.records ?? toldByValue(value).records;
    const isExact = place.records !== null || toldByValue(value).isExact;
    const columns = [...further.deciding, ...(isExact ? [] : further.added)];
    const told = [...setsOf(own), ...columns.flatMap(toldByColumn)];
    const sizes = told.map(({ sets, number }) => sets.sizeOf(number));
    const isTail = further.tail < 1 && sizes.some((size) => size > 0 && size * further.tail < fewest);
    const few =
      further.isUnknown ||
      (further.isOfOne && sizes.some((size) => size > 0)) ||
      isTail ||
      sizes.some((size) => isFew(size, fewest)) ||
      showsFew(result, value, fewest);
    const { key, sheet, column, row } = place;
    return { key, sheet, column, row, told, isFew: few };
  };
  const nothing: Result = { kind: 'missing', why: '' };
  const alone = [...names].map(([name, { value }]) => {
    const place = { key: name, sheet: '', column: '', row: 0, records: null };
    return cell(place, value, notebook.figures.get(name)?.result ?? nothing, beyond.ofName(name));
  });
  const within = [...notebook.sheets.values()].flatMap(({ name: sheet, columns, rows }) => {
    if (unknown.has(sheet)) return [];
    const { cells: behind = [], records } = sheets.get(sheet) ?? {};
    const found = records?.() ?? null;
    return columns.flatMap(({ name: column, role }, at) => {
      if (role === 'key') return [];
      return rows.flatMap(({ cells }, row): ToldCell[] => {
        const value = behind[row]?.get(column);
        if (value === undefined) return [];
        const told = found === null ? null : (found[row]?.get(column) ?? null);
        const place = { key: cellKey(sheet, column, row), sheet, column, row, records: told };
        return [cell(place, value, cells[at]!, beyond.ofColumn(sheet, column))];
      });
    });
  });
  return { cells: [...alone, ...within], tables: [...tables.values()] };
}

interface Place extends Pick<ToldCell, 'key' | 'sheet' | 'column' | 'row'> {
  /** The records that a finding says it tells of; null where its value says so. */
  readonly records: readonly FoundRecords[] | null;
}
