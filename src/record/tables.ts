import type { TableDefinition, TableName } from './field.js';
import { checks } from './tables/checks.js';
import { decontaminations } from './tables/decontaminations.js';
import { inspections } from './tables/inspections.js';
import { rechecks } from './tables/rechecks.js';
import { spending } from './tables/spending.js';
import { stationDays } from './tables/station-days.js';
import { stations } from './tables/stations.js';
import { washUnits } from './tables/wash-units.js';
import { waterbodies } from './tables/waterbodies.js';

/** Every canonical table, parents before their children: a reference always points to an earlier one. */
export const tables: readonly TableDefinition[] = [
  waterbodies,
  stations,
  stationDays,
  washUnits,
  inspections,
  checks,
  rechecks,
  decontaminations,
  spending,
];

/** The table of that name. */
export function tableOf(name: TableName): TableDefinition {
  return tables.find((table) => table.name === name)!;
}

/** Whether a canonical table has that name. */
export function isTableName(name: string): name is TableName {
  return tables.some((table) => table.name === name);
}
