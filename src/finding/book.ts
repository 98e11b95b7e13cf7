import type { Book, BookTable } from '../record/book.js';
import type { TextColumn } from '../record/column.js';
import type { ImportSum } from '../record/file-sum.js';
import type { ProgramSolver } from '../record/program-solver.js';
import type { Records, RecordTable } from '../record/records.js';
import { textOf } from './book/columns-of.js';
import { craftLooks } from './book/craft-looks.js';
import { importTables } from './book/import-tables.js';
import { inspectionsTable } from './book/inspections.js';
import { localStarts } from './book/local-time.js';
import { looksTable } from './book/looks.js';
import { once } from './book/once.js';
import { parentRows } from './book/parent-rows.js';
import { plainTables } from './book/plain-tables.js';
import { stationDayClusters } from './book/station-day-clusters.js';
import { stationDaysTable } from './book/station-days.js';
import { washesTable } from './book/washes.js';

/**
 * A season's records as formulas and findings see them: every table with its recorded fields, those of its inspection,
 * and derived ones, and the tables `files` and `problems` that tell of the import. Opening costs nothing; a column is
 * made when it is first asked for.
 */
export function openBook(records: Records, sum: ImportSum, solver?: ProgramSolver): Book {
  const keys = (): TextColumn => textOf(records.inspections, 'inspection');
  const parents = (table: RecordTable): (() => Int32Array) =>
    once(() => parentRows(keys(), textOf(table, 'inspection')));
  const parentsOfChecks = parents(records.checks);
  const local = once(() => localStarts(records));
  const stationDays = once(() => stationDayClusters(records, local()));
  const inspections = inspectionsTable(records, {
    local,
    looks: once(() => craftLooks(records.inspections.rowCount, records.checks, parentsOfChecks())),
    clusterOf: () => stationDays().ofInspections,
  });
  const tables: readonly BookTable[] = [
    inspections,
    looksTable(records, 'checks', inspections, parentsOfChecks),
    looksTable(records, 'rechecks', inspections, parents(records.rechecks)),
    washesTable(records, sum.asOf, inspections, parents(records.decontaminations)),
    stationDaysTable(records, () => stationDays().ofStationDays),
    ...plainTables(records),
    ...importTables(sum),
  ];
  return {
    tables: new Map(tables.map((table) => [table.name, table])),
    get clusters() {
      return stationDays().clusters;
    },
    sum,
    ...(solver === undefined ? {} : { solver }),
  };
}
