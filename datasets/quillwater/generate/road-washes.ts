import { dottedMoment } from './calendar.js';
import { type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import * as codes from './road-codes.js';
import type { Wash } from './washes.js';

const header = [
  'nr',
  'form',
  'why',
  'asked',
  'begun',
  'done',
  'free',
  'end',
  'how',
  'unit',
  't_contact_c',
  't_nozzle_c',
  'dist_m',
  'sec',
  'flush_min',
  't_flush_c',
  'runoff',
  'after',
];

const reasons: Readonly<Record<string, string>> = {
  mussels: '1',
  'standing water': '2',
  plants: '3',
  ballast: '4',
  'leaving a positive water': '5',
  'owner request': '6',
};
const methods: Readonly<Record<string, string>> = {
  'hot spray': 'H',
  flush: 'F',
  'spray and flush': 'HF',
  'hand removal': 'M',
};
const effluents: Readonly<Record<string, string>> = {
  contained: 'pad',
  reclaimed: 'loop',
  evaporated: 'air',
  other: 'oth',
};
const celsius = (fahrenheit: number | null): string =>
  codes.roadNumber(fahrenheit === null ? null : ((fahrenheit - 32) * 5) / 9, 1);

function cellsOf(wash: Wash): string[] {
  return [
    wash.number,
    wash.inspection.number,
    reasons[wash.reason]!,
    codes.roadMoment(wash.ordered),
    codes.roadMoment(wash.started),
    codes.roadMoment(wash.finished),
    codes.roadMoment(wash.released),
    wash.ending === null ? '' : { released: '1', 'left unwashed': '2' }[wash.ending],
    methods[wash.method]!,
    wash.unit,
    celsius(wash.contactF),
    celsius(wash.nozzleF),
    codes.roadNumber(wash.standOffFeet === null ? null : wash.standOffFeet * 0.3048, 2),
    wash.contactSeconds === null ? '' : String(wash.contactSeconds),
    codes.roadNumber(wash.flushMinutes, 1),
    celsius(wash.flushExitF),
    effluents[wash.effluent]!,
    wash.recheck === null ? '' : { passed: '+', failed: '-', 'not done': '0' }[wash.recheck]!,
  ];
}

const spoilings: readonly Spoiling<Wash>[] = [
  spoiltCell('unknown-reference', 'form', (cell) => cell.replace(/.$/, 'X')),
  spoiltCell('wrong-order', 'done', (_, { started }) => dottedMoment(started! - 5)),
  spoiltCell('unknown-code', 'why', '8'),
  ...raggedRows<Wash>(),
  spoiltCell('not-a-number', 't_contact_c', 'hot'),
];

/** A season's washes; those of forms set aside follow them. */
export function writeRoadWashes(
  folder: string,
  season: number,
  inspections: readonly Inspection[],
  dirt: DirtBook,
): WrittenFile {
  const file = new ExportFile(folder, `roads/washes-${season}.csv`, header, codes.roadDialect);
  for (const { wash, kept, repeats } of inspections) {
    if (wash === null || repeats !== null) continue;
    const sound = dirt.write(file, cellsOf(wash), wash, kept ? 0.025 : 0, spoilings);
    wash.kept = kept && sound;
  }
  return file.close();
}
