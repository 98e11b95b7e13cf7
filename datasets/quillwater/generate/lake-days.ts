import { americanDate, americanMoment } from './calendar.js';
import { type DirtBook, raggedRows, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import * as codes from './lake-codes.js';
import type { StationDay } from './station-days.js';

const shown = (value: number | null): string => (value === null ? '' : String(value));
const header = ['site', 'day', 'state', 'opened', 'closed', 'hours', 'pay', 'drive_bys'];
const spoilings: readonly Spoiling<StationDay>[] = [
  spoiltCell('not-a-number', 'hours', 'twelve'),
  spoiltCell('unknown-code', 'state', 'OPN', ({ state }) => state === 'open'),
  spoiltCell('wrong-order', 'closed', (_, { day }) => americanMoment(day * 1440 + 15)),
  spoiltCell(
    'not-a-date',
    'day',
    (cell) => `02/30/${cell.slice(6)}`,
    ({ state }) => state === 'closed',
  ),
  ...raggedRows<StationDay>(),
  spoiltCell('out-of-range', 'hours', '1950'),
];

/** A season's station days, station by station. */
export function writeLakeDays(
  folder: string,
  season: number,
  days: readonly StationDay[],
  dirt: DirtBook,
): WrittenFile {
  const file = new ExportFile(folder, `lakes/station-days-${season}.csv`, header, codes.lakeDialect(season));
  let before: StationDay | null = null;
  let repeatedSince = 0;
  for (const day of days) {
    const state = { open: 'O', closed: 'C', 'not recorded': '?' }[day.state];
    const cells = [
      codes.lakeStations[day.station.station]!,
      americanDate(day.day),
      state,
      day.opens === null ? '' : americanMoment(day.day * 1440 + day.opens),
      day.closes === null ? '' : americanMoment(day.day * 1440 + day.closes),
      day.staffHours === null ? '' : day.staffHours.toFixed(2),
      day.staffCost === null ? '' : day.staffCost.toFixed(2),
      shown(day.bypasses),
    ];
    if (before !== null && before.station !== day.station) file.unread('');
    before = day;
    day.kept = dirt.write(file, cells, day, 0.004, spoilings);
    repeatedSince++;
    if (day.kept && repeatedSince > 600) {
      dirt.writeFaulty(file, cells, 'site', 'duplicate-key');
      repeatedSince = 0;
    }
    if (day.kept && day.state === 'open' && day.staffHours === null) dirt.note(file, 'hours', 'hours-not-recorded');
  }
  return file.close();
}
