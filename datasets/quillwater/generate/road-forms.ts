import { calendarDay, clockChanges, dayClock, dottedDate } from './calendar.js';
import { brokenQuote, type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Inspection } from './inspection.js';
import { foundMussels } from './looks.js';
import * as codes from './road-codes.js';

const header = [
  'form',
  'stn',
  'day',
  'in',
  'out',
  'way',
  'look',
  'kind',
  'power',
  'drive',
  'hull',
  'len_m',
  'coat',
  'tow',
  'hin',
  'plate',
  'driver',
  'tel',
  'reg',
  'from',
  'wet_on',
  'slip',
  'to',
  'water',
  'weed',
  'grade',
  'result',
  'crew',
  ...codes.roadColumns.map(({ column }) => column),
  'note',
];

const oneZero = (value: boolean | null): string => (value === null ? '' : value ? '1' : '0');

function cellsOf(inspection: Inspection): string[] {
  const { craft, station } = inspection;
  const day = Math.floor(inspection.started / 1440);
  const looks = new Map(inspection.looks.map((look) => [`${look.part} ${look.side}`, look]));
  return [
    inspection.number,
    codes.roadStations[station.station]!,
    dottedDate(day),
    dayClock(inspection.started % 1440),
    dayClock(inspection.finished % 1440),
    inspection.direction === 'roadside' ? '2' : '1',
    inspection.extent === 'full' ? '1' : '2',
    codes.roadTypes[craft.type]!,
    codes.roadPropulsion[craft.propulsion]!,
    craft.drive === null ? '' : codes.roadDrives[craft.drive]!,
    codes.roadHulls[craft.hullMaterial]!,
    codes.roadNumber(craft.lengthFeet * 0.3048, 2),
    oneZero(craft.antifouling),
    inspection.hauledBy === 'commercial' ? '2' : '1',
    inspection.craftKnown ? craft.hullNumber : '',
    craft.plate,
    craft.owner,
    craft.phone,
    craft.homeRegion,
    inspection.lastWater === null ? '' : codes.roadWaters[inspection.lastWater]!,
    inspection.lastOnWater === null ? '' : dottedDate(inspection.lastOnWater),
    oneZero(inspection.moored),
    inspection.nextWater === null ? '' : codes.roadWaters[inspection.nextWater]!,
    { yes: '1', damp: '2', no: '0' }[inspection.water],
    oneZero(inspection.vegetation),
    { low: 'A', medium: 'B', high: 'C' }[inspection.risk],
    codes.roadOutcomes[inspection.outcome]!,
    inspection.inspector,
    // Nothing was looked at on a paper check: every part stays blank, which is not checked.
    ...codes.roadColumns.map(({ part, side }) => {
      const look = looks.get(`${part} ${side}`);
      return look === undefined ? '' : codes.roadCell(look);
    }),
    inspection.memo,
  ];
}

const full = ({ extent }: Inspection): boolean => extent === 'full';
const washless = ({ wash }: Inspection): boolean => wash === null;
/** Damp means one thing or the other by season, which cannot be told from a form without a start. */
const seasonless = ({ water }: Inspection): boolean => water !== 'damp';

const spoilings: readonly Spoiling<Inspection>[] = [
  spoiltCell('unknown-code', 'kind', '77'),
  spoiltCell('not-a-date', 'wet_on', (cell) => `31.02${cell.slice(5)}`),
  spoiltCell('unknown-code', 'bilge', 'Q', full),
  ...raggedRows<Inspection>(),
  spoiltCell('out-of-range', 'len_m', (cell) => cell.replace(',', '')),
  spoiltCell(
    'impossible-part',
    'gimbal',
    '0',
    ({ craft, extent }) => extent === 'full' && craft.type === 'paddlecraft',
  ),
  spoiltCell('unknown-code', 'from', '110'),
  spoiltCell('missing-value', 'result', ''),
  brokenQuote<Inspection>(washless),
  spoiltCell('not-a-number', 'len_m', (cell) => `ca. ${cell}`),
  spoiltCell('unknown-code', 'grade', 'D'),
  spoiltCell('wrong-order', 'out', (_, { started }) => dayClock((started - 20) % 1440)),
  spoiltCell('not-a-time', 'in', (cell) => `2${cell.slice(1)}`.replace(/^2[0-3]/, '25'), seasonless),
  {
    code: 'no-such-local-time',
    column: 'in',
    spoil: (cells, inspection, file) => {
      if (!seasonless(inspection)) return null;
      const { leap } = clockChanges(inspection.season);
      return cells.with(file.at('day'), dottedDate(leap)).with(file.at('in'), '02:41');
    },
  },
];

/** A season's forms, a whole checklist in each row. */
export function writeRoadForms(
  folder: string,
  season: number,
  inspections: readonly Inspection[],
  repeated: ReadonlyMap<Inspection, Inspection>,
  dirt: DirtBook,
): WrittenFile {
  const file = new ExportFile(folder, `roads/forms-${season}.csv`, header, codes.roadDialect);
  let month = 0;
  for (const inspection of inspections) {
    const cells = cellsOf(inspection);
    const now = calendarDay(Math.floor(inspection.started / 1440)).month;
    // The office pastes the months together, headers and all.
    if (now === month + 1 && now === 7) file.unread(header.join(codes.roadDialect.delimiter));
    month = now;
    if (inspection.repeats !== null) dirt.writeFaulty(file, cells, '', 'double-entry');
    else if (repeated.has(inspection)) dirt.writeFaulty(file, cells, 'form', 'duplicate-key');
    else inspection.kept = dirt.write(file, cells, inspection, inspection.protected ? 0 : 0.0045, spoilings);
    if (!inspection.kept) continue;
    const anyMussels = inspection.looks.some(foundMussels);
    if (inspection.outcome === 'intercepted' && !anyMussels) dirt.note(file, 'result', 'outcome-without-part');
    if (inspection.outcome !== 'intercepted' && anyMussels) dirt.note(file, 'result', 'part-without-outcome');
  }
  return file.close();
}
