import { americanDate, americanMoment, calendarDay, clockChanges } from './calendar.js';
import { brokenQuote, type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import * as codes from './lake-codes.js';
import { foundMussels } from './looks.js';

const header = [
  'insp_id',
  'site',
  'start',
  'finish',
  'heading',
  'look',
  'craft_kind',
  'moved_by',
  'engine',
  'hull',
  'len_ft',
  'paint',
  'towed_by',
  'hull_no',
  'registration',
  'owner_name',
  'phone',
  'home',
  'last_water',
  'last_out',
  'moored',
  'next_water',
  'wet',
  'weeds',
  'risk',
  'result',
  'staff',
  'memo',
];

function inspectionCells(inspection: Inspection): string[] {
  const { craft, season } = inspection;
  const hullNumber = inspection.repeats === null ? craft.hullNumber : ` ${craft.hullNumber.toLowerCase()}`;
  return [
    inspection.number,
    codes.lakeStations[inspection.station.station]!,
    americanMoment(inspection.started),
    americanMoment(inspection.finished),
    inspection.direction === 'leaving' ? 'OUT' : 'IN',
    inspection.extent === 'full' ? 'F' : 'P',
    codes.lakeTypes[craft.type]!,
    codes.lakePropulsion[craft.propulsion]!,
    craft.drive === null ? '' : codes.lakeDrives[craft.drive]!,
    codes.lakeHulls[craft.hullMaterial]!,
    craft.lengthFeet.toFixed(1),
    codes.lakeYesNo(craft.antifouling),
    inspection.hauledBy === 'commercial' ? 'H' : 'O',
    inspection.craftKnown ? hullNumber : '',
    craft.registration,
    craft.owner,
    craft.phone,
    craft.homeRegion,
    inspection.lastWater ?? '',
    inspection.lastOnWater === null ? '' : americanDate(inspection.lastOnWater),
    codes.lakeYesNo(inspection.moored),
    inspection.nextWater ?? 'NA',
    { yes: 'Y', damp: 'D', no: 'N' }[inspection.water],
    codes.lakeYesNo(inspection.vegetation),
    { low: 'L', medium: 'M', high: 'H' }[inspection.risk],
    codes.lakeOutcome(inspection.outcome, season),
    inspection.inspector,
    inspection.memo,
  ];
}

const childless = (inspection: Inspection): boolean => inspection.looks.length === 0 && inspection.wash === null;
/** Codes with seasons of validity cannot be read on a form whose season is unreadable; such forms have none. */
const seasonless = ({ outcome, water }: Inspection): boolean => water === 'no' && /^(cleared|refused)$/.test(outcome);
const dated = ({ started }: Inspection): number => calendarDay(Math.floor(started / 1440)).year;

const spoilings: readonly Spoiling<Inspection>[] = [
  spoiltCell('unknown-code', 'craft_kind', (cell) => `${cell}X`),
  spoiltCell('wrong-order', 'finish', (_, { started }) => americanMoment(started - 7)),
  spoiltCell('not-a-date', 'last_out', (_, inspection) => `02/31/${dated(inspection)}`),
  spoiltCell(
    'no-such-local-time',
    'start',
    (_, inspection) => americanMoment(clockChanges(dated(inspection)).leap * 1440 + 137),
    seasonless,
  ),
  spoiltCell(
    'unknown-reference',
    'last_water',
    (cell) => cell.replace('w', 'vv').replace('-', '_'),
    (_, cell) => /[w-]/.test(cell),
  ),
  ...raggedRows<Inspection>(),
  spoiltCell('missing-value', 'result', ''),
  spoiltCell('out-of-range', 'len_ft', (cell) => cell.replace('.', '0')),
  spoiltCell('not-a-number', 'len_ft', (cell) => `${cell} feet`),
  brokenQuote<Inspection>(childless),
  spoiltCell(
    'ambiguous-local-time',
    'start',
    (_, inspection) => americanMoment(clockChanges(dated(inspection)).back * 1440 + 80),
    seasonless,
  ),
  spoiltCell('over-long', 'finish', (_, { finished }) => americanMoment(finished + 1440)),
  spoiltCell('unknown-code', 'site', 'L9'),
  spoiltCell('not-a-time', 'finish', (cell) => `${cell.slice(0, 11)}13:75 PM`),
  spoiltCell('unknown-code', 'result', 'D', ({ season, outcome }) => season === 2025 && outcome === 'cleared'),
  spoiltCell('unknown-code', 'wet', 'yea'),
];

/** A season's inspections, in order of their numbers. */
export function writeLakeInspections(
  folder: string,
  season: number,
  inspections: readonly Inspection[],
  repeated: ReadonlyMap<Inspection, Inspection>,
  dirt: DirtBook,
): WrittenFile {
  const file = new ExportFile(folder, `lakes/inspections-${season}.csv`, header, codes.lakeDialect(season));
  inspections.forEach((inspection, index) => {
    const cells = inspectionCells(inspection);
    if (index % 4999 === 500 && inspection.kept) cells[file.at('memo')] = 'gate stuck,\ncalled "north" office';
    if (inspection.repeats !== null) dirt.writeFaulty(file, cells, '', 'double-entry');
    else if (repeated.has(inspection)) dirt.writeFaulty(file, cells, 'insp_id', 'duplicate-key');
    else {
      const rate = inspection.protected ? 0 : 0.0035;
      inspection.kept = dirt.write(file, cells, inspection, rate, spoilings);
    }
    if (!inspection.kept) return;
    const anyMussels = inspection.looks.some(foundMussels);
    if (inspection.outcome === 'intercepted' && !anyMussels) dirt.note(file, 'result', 'outcome-without-part');
    if (inspection.outcome !== 'intercepted' && anyMussels) dirt.note(file, 'result', 'part-without-outcome');
  });
  return file.close();
}
