import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { newFolder } from './run.js';

const crosswalk = `
crosswalk: small
about: One station, a handful of forms
data_as_of: 2025-11-30 18:00
data_time_zone: America/Denver
files:
  - files: stations.csv
    table: stations
    dialect: { encoding: utf-8, delimiter: comma, quote: double, header_line: 1 }
    time_zone: America/Denver
    missing: [""]
    columns:
      code: { field: station }
      name: { field: name }
      kind: { field: setting, codes: { ramp: launch } }
      zone: { field: time_zone }
  - files: forms.csv
    table: inspections
    dialect: { encoding: utf-8, delimiter: comma, quote: double, header_line: 1 }
    time_zone: America/Denver
    missing: [""]
    columns:
      no: { field: inspection }
      site: { field: station }
      start: { field: started_at, pattern: "yyyy-MM-dd HH:mm" }
      craft: { field: watercraft_type, codes: { motor: open motorboat, paddle: paddlecraft } }
      result: { field: outcome, codes: { ok: cleared, mussels: intercepted } }
      owner: { private: drop }
    constants: { direction: arriving, extent: full }
`;

const stations = ['code,name,kind,zone', 'a,Alder,ramp,America/Denver', ''];
const forms = [
  'no,site,start,craft,result,owner',
  '1,a,2025-06-01 10:00,motor,ok,Secretmarker One',
  '2,a,2025-06-01 10:20,motor,mussels,Secretmarker Two',
  '3,a,2025-06-02 09:00,paddle,ok,Secretmarker Three',
  '4,a,2025-06-31 09:00,paddle,ok,Secretmarker Four',
  '5,b,2025-06-02 09:30,motor,ok,Secretmarker Five',
  '',
];

/** The paths of a season small enough to count on fingers: three forms are sound, two are not. */
export interface SmallSeason {
  readonly folder: string;
  readonly crosswalk: string;
  readonly exports: string;
  readonly store: string;
}

/** Writes the small season into a new folder; lines may be changed before they are written. */
export function writeSmallSeason(
  change: { crosswalk?: (text: string) => string; forms?: (lines: string[]) => string[] } = {},
): SmallSeason {
  const folder = newFolder();
  const season = {
    folder,
    crosswalk: join(folder, 'small.crosswalk.yaml'),
    exports: join(folder, 'exports'),
    store: join(folder, 'store'),
  };
  mkdirSync(season.exports);
  writeFileSync(season.crosswalk, (change.crosswalk ?? ((text) => text))(crosswalk));
  writeFileSync(join(season.exports, 'stations.csv'), stations.join('\n'));
  writeFileSync(join(season.exports, 'forms.csv'), (change.forms ?? ((lines) => lines))([...forms]).join('\n'));
  return season;
}
