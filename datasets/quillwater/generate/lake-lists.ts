import { americanDate, dayNumber } from './calendar.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import * as codes from './lake-codes.js';
import { isRoad, stations, washUnits } from './stations.js';
import { waters } from './waters.js';

const two = (value: number): string => String(value).padStart(2, '0');

/** Stations, waters and wash units, which do not change by season. */
export function writeLakeLists(folder: string): WrittenFile[] {
  const plain = codes.lakeDialect(null);
  const places = new ExportFile(
    folder,
    'lakes/stations.csv',
    ['site', 'site_name', 'kind', 'lake', 'lanes', 'zone', 'opens', 'closes'],
    plain,
  );
  for (const place of stations) {
    if (isRoad(place)) continue;
    const [opens, closes] = [place.opens, place.closes].map(([month, day]) => `${two(month)}-${two(day)}`);
    const id = codes.lakeStations[place.station]!;
    places.row([id, place.name, 'RAMP', place.water ?? '', String(place.lanes), place.zone, opens!, closes!]);
  }
  const lakes = new ExportFile(folder, 'lakes/waters.csv', ['water', 'label', 'region', 'status', 'since'], plain);
  const statusCodes = { positive: 'POS', suspect: 'SUS', negative: 'NEG', 'not tested': 'UNT' };
  for (const { water, name, region, statuses } of waters) {
    for (const { status, from } of statuses) {
      lakes.row([water, name, region, statusCodes[status], americanDate(dayNumber(...from))]);
    }
  }
  const header = ['unit', 'kind', 'site', 'cost', 'in_service', 'life_years', 'cost_per_wash'];
  const units = new ExportFile(folder, 'lakes/wash-units.csv', header, plain);
  for (const [unit, kind, site, cost, from, life, running] of washUnits) {
    const kindCode = kind === 'fixed' ? 'FIX' : 'PORT';
    const service = americanDate(dayNumber(from[0], from[1], from[2]));
    units.row([unit, kindCode, codes.lakeStations[site]!, String(cost), service, String(life), running.toFixed(2)]);
  }
  return [places.close(), lakes.close(), units.close()];
}
