import type { TableName } from '../record/field.js';
import type { Records, RecordTable } from '../record/records.js';
import { tables } from '../record/tables.js';
import { type FinalKeys, finishTable } from './finish-table.js';
import type { Texts } from './key-space.js';
import type { FileReading } from './read-file.js';

/** The kept rows of all files as tables, parents first. The drafts are used up, each as soon as no table needs it any more. */
export function finishTables(readings: readonly FileReading[], texts: Texts): Records {
  const finalKeys = new Map<string, FinalKeys>();
  const finished = tables.map((table): [TableName, RecordTable] => {
    const records = finishTable(table, readings, texts, finalKeys);
    for (const { draft } of readings) if (draft.table === table && draft.fold === null) draft.release();
    return [table.name, records];
  });
  for (const { draft } of readings) draft.release();
  return Object.fromEntries(finished) as Record<TableName, RecordTable>;
}
