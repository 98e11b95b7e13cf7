import { americanMoment } from './calendar.js';
import { type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import * as codes from './lake-codes.js';
import type { Wash } from './washes.js';

const header = [
  'wash_no',
  'insp_id',
  'why',
  'ordered',
  'began',
  'ended',
  'let_go',
  'end_kind',
  'how',
  'unit',
  'contact_f',
  'nozzle_f',
  'standoff_ft',
  'contact_s',
  'flush_min',
  'flush_exit_f',
  'water_to',
  'looked_again',
];

const shown = (value: number | null): string => (value === null ? '' : String(value));

function cellsOf(wash: Wash): string[] {
  return [
    wash.number,
    wash.inspection.number,
    codes.lakeReasons[wash.reason]!,
    codes.lakeMoment(wash.ordered),
    codes.lakeMoment(wash.started),
    codes.lakeMoment(wash.finished),
    codes.lakeMoment(wash.released),
    wash.ending === null ? '' : { released: 'GO', 'left unwashed': 'LEFT' }[wash.ending],
    codes.lakeMethods[wash.method]!,
    wash.unit,
    shown(wash.contactF),
    shown(wash.nozzleF),
    shown(wash.standOffFeet),
    shown(wash.contactSeconds),
    shown(wash.flushMinutes),
    shown(wash.flushExitF),
    wash.effluent.slice(0, 3).toUpperCase(),
    wash.recheck === null ? '' : { passed: 'OK', failed: 'BAD', 'not done': 'NO' }[wash.recheck]!,
  ];
}

const spoilings: readonly Spoiling<Wash>[] = [
  spoiltCell('wrong-order', 'began', (_, { ordered }) => americanMoment(ordered - 30)),
  spoiltCell('unknown-reference', 'insp_id', (cell) => `${cell.slice(0, 3)}9${cell.slice(4)}`),
  spoiltCell('unknown-code', 'how', 'SPRAY'),
  spoiltCell('out-of-range', 'contact_f', (cell) => `${cell.replace('.', '')}0`),
  spoiltCell(
    'over-long',
    'let_go',
    (_, { ordered }) => americanMoment(ordered + 61 * 1440),
    ({ started }) => started !== null,
  ),
  spoiltCell('unknown-reference', 'unit', 'WU-99'),
  ...raggedRows<Wash>(),
  spoiltCell('not-a-date', 'ordered', (cell) => `06/31${cell.slice(5)}`),
];

/** A season's washes; those of inspections set aside follow them. */
export function writeLakeWashes(
  folder: string,
  season: number,
  inspections: readonly Inspection[],
  dirt: DirtBook,
): WrittenFile {
  const file = new ExportFile(folder, `lakes/washes-${season}.csv`, header, codes.lakeDialect(season));
  for (const { wash, kept, repeats } of inspections) {
    if (wash === null || repeats !== null) continue;
    const sound = dirt.write(file, cellsOf(wash), wash, kept ? 0.005 : 0, spoilings);
    wash.kept = kept && sound;
  }
  return file.close();
}
