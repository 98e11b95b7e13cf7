import { belongsToInspections, inspectionRows } from '../../finding/book/inspection-rows.js';
import type { Book } from '../../record/book.js';
import { fieldOf } from '../../record/field.js';
import { tables } from '../../record/tables.js';
import type { FoundRecords } from '../found-records.js';

/** Whether a field stands for one craft, one person or one form, so that no page for the public names its values. */
export function tellsApart(field: string): boolean {
  return field === 'inspection' || tables.some((table) => fieldOf(table, field)?.type === 'pseudonym');
}

/**
 * What some rows tell of craft: the rows themselves, and the inspections they belong to. Nothing where rows belong to none,
 * as those of stations, their days, and spending do: these are a program's own and no craft's.
 */
export function craftRecords(book: Book, told: FoundRecords): readonly FoundRecords[] {
  const table = book.tables.get(told.table);
  if (table === undefined) return [];
  if (table.name === 'inspections') return [told];
  if (!belongsToInspections(table)) return [];
  const rows = Uint32Array.from(new Set(inspectionRows(book, table, told.rows))).sort();
  return [told, { table: 'inspections', rows }];
}
