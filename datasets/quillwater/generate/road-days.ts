import { dayClock, dottedDate } from './calendar.js';
import { type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import * as codes from './road-codes.js';
import type { StationDay } from './station-days.js';
import { isRoad, stations } from './stations.js';

const two = (value: number): string => String(value).padStart(2, '0');

/** The road stations, which do not change by season. */
export function writeRoadStations(folder: string): WrittenFile {
  const header = ['stn', 'label', 'type', 'lanes', 'tz', 'from', 'to'];
  const file = new ExportFile(folder, 'roads/stations.csv', header, codes.roadDialect);
  for (const place of stations) {
    if (!isRoad(place)) continue;
    const [opens, closes] = [place.opens, place.closes].map(([month, day]) => `${two(month)}-${two(day)}`);
    const type = place.setting === 'border' ? 'b' : 'r';
    const id = codes.roadStations[place.station]!;
    file.row([id, place.name, type, String(place.lanes), place.zone, opens!, closes!]);
  }
  return file.close();
}

const header = ['stn', 'day', 'st', 'from', 'till', 'h', 'wage', 'passed'];
const spoilings: readonly Spoiling<StationDay>[] = [
  spoiltCell('not-a-number', 'h', (cell) => cell.replace(',', ':')),
  spoiltCell(
    'not-a-date',
    'day',
    (cell) => `31.06${cell.slice(5)}`,
    ({ state }) => state === 'closed',
  ),
  spoiltCell('unknown-code', 'stn', '23'),
  ...raggedRows<StationDay>(),
  spoiltCell('unknown-code', 'st', '4'),
];

/** A season's day sheets. */
export function writeRoadDays(
  folder: string,
  season: number,
  days: readonly StationDay[],
  dirt: DirtBook,
): WrittenFile {
  const file = new ExportFile(folder, `roads/days-${season}.csv`, header, codes.roadDialect);
  let station: StationDay['station'] | null = null;
  for (const day of days) {
    if (station !== null && station !== day.station) file.unread(header.join(codes.roadDialect.delimiter));
    station = day.station;
    const cells = [
      codes.roadStations[day.station.station]!,
      dottedDate(day.day),
      { open: '1', closed: '0', 'not recorded': '9' }[day.state],
      day.opens === null ? '' : `${dottedDate(day.day)} ${dayClock(day.opens)}`,
      day.closes === null ? '' : `${dottedDate(day.day)} ${dayClock(day.closes)}`,
      codes.roadNumber(day.staffHours, 2),
      codes.roadNumber(day.staffCost, 2),
      day.bypasses === null ? '' : String(day.bypasses),
    ];
    day.kept = dirt.write(file, cells, day, 0.004, spoilings);
    if (day.kept && day.state === 'open' && day.staffHours === null) dirt.note(file, 'h', 'hours-not-recorded');
  }
  return file.close();
}
