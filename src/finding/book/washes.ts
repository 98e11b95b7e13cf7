import type { BookField, BookTable } from '../../record/book.js';
import type { Records } from '../../record/records.js';
import { type FieldSource, lazyTable } from './lazy-table.js';
import { clustersOfInspection, fieldsOfInspection } from './of-inspection.js';
import { recordedFields } from './recorded-fields.js';
import { type WashMoment, washWait } from './wait.js';

interface Stage {
  readonly name: string;
  readonly from: WashMoment;
  readonly to: WashMoment;
  readonly meaning: string;
}

/** The stages of a wash; the last is the whole. */
export const washStages: readonly Stage[] = [
  { name: 'wait', from: 'ordered_at', to: 'started_at', meaning: 'From the order to the beginning of the wash.' },
  { name: 'washing', from: 'started_at', to: 'finished_at', meaning: 'From the beginning to the end of the wash.' },
  { name: 'hold', from: 'finished_at', to: 'released_at', meaning: 'From the end of the wash to the release.' },
  { name: 'turnaround', from: 'ordered_at', to: 'released_at', meaning: 'From the order to the release.' },
];

function stageField({ name, meaning }: Stage): BookField {
  return { name, kind: 'wait', unit: 'minutes', codes: null, labels: null, meaning };
}

/** Washes with their waits and every field of their inspection; a craft still held at the cut-off is an open wait. */
export function washesTable(
  records: Records,
  asOf: number | null,
  inspections: BookTable,
  parentOf: () => Int32Array,
): BookTable {
  const table = records.decontaminations;
  const waits = washStages.map(
    (stage): FieldSource => ({
      field: stageField(stage),
      build: () => washWait(table, stage.from, stage.to, asOf),
    }),
  );
  return lazyTable({
    name: table.definition.name,
    row: table.definition.row,
    counted: 'washes',
    rowCount: table.rowCount,
    sources: [...recordedFields(records, 'decontaminations'), ...waits, ...fieldsOfInspection(inspections, parentOf)],
    clusterOf: clustersOfInspection(inspections, parentOf),
    origin: table.origin,
  });
}
