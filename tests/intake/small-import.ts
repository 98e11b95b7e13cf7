import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type ImportRequest, type ImportResult, importExports } from '../../src/intake/import-exports.js';
import { numberAt, textAt } from '../../src/record/column.js';
import type { TableName } from '../../src/record/field.js';

/** A key for tests, of the least length. */
export const testKey = new Uint8Array(16).fill(7);

/** Makes a folder with those files, hands it over, and removes it. */
export async function inFolder<T>(
  files: Readonly<Record<string, string | Uint8Array>>,
  use: (folder: string) => Promise<T>,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'intake-'));
  try {
    for (const [path, content] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), content);
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Imports files written to a folder of their own by one crosswalk. */
export function importSmall(
  crosswalk: string,
  files: Readonly<Record<string, string | Uint8Array>>,
  options: Pick<ImportRequest, 'chunk' | 'range' | 'threads'> & { readonly key?: Uint8Array } = {},
): Promise<ImportResult> {
  return inFolder({ ...files, 'small.crosswalk.yaml': crosswalk }, (folder) =>
    importExports({
      crosswalks: [join(folder, 'small.crosswalk.yaml')],
      from: folder,
      key: testKey,
      progress: () => {},
      ...options,
    }),
  );
}

/** The values of a field, row by row, null for missing. */
export function valuesOf(result: ImportResult, table: TableName, field: string): readonly (string | number | null)[] {
  const { columns, rowCount } = result.records[table];
  const column = columns.get(field)!;
  return Array.from({ length: rowCount }, (_, row) =>
    column.kind === 'text' ? textAt(column, row) : numberAt(column, row),
  );
}

/** The problems that set rows aside, as `line column code`. */
export function asideOf(result: ImportResult): readonly string[] {
  return result.setAside.map(({ line, column, code }) => `${line} ${column} ${code}`);
}

/** The notes, as `line column code`. */
export function notesOf(result: ImportResult): readonly string[] {
  return result.notes.map(({ line, column, code }) => `${line} ${column} ${code}`);
}

/** A crosswalk for spending with free text, where a reader of cells can be tried on its own. */
export const notesCrosswalk = `
crosswalk: notes
files:
  - files: notes.csv
    table: spending
    columns:
      no: { field: entry }
      note: { field: note }
      dollars: { field: amount }
    constants: { fiscal_year: 2025, category: supplies }
`;

/** A crosswalk for one station and its inspections, checks and washes. */
export const stationCrosswalk = `
crosswalk: station
data_as_of: 2025-11-30 18:00
data_time_zone: America/Denver
files:
  - files: stations.csv
    table: stations
    columns:
      id: { field: station }
    constants: { name: Landing, setting: launch, time_zone: America/Denver }
  - files: inspections.csv
    table: inspections
    time_zone: America/Denver
    season_of: started_at
    columns:
      id: { field: inspection }
      site: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      end: { field: finished_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type, codes: { P: paddlecraft, M: open motorboat } }
      hull: { field: craft, private: hash }
      result: { field: outcome, codes: { C: cleared, I: intercepted } }
      wet: { field: standing_water, codes: { Y: yes, N: no, D: { 2023-2024: no, 2025-: yes } } }
    constants: { direction: arriving, extent: full }
    duplicates: [station, craft, started_at]
  - files: checks.csv
    table: checks
    columns:
      insp: { field: inspection }
      part: { field: component }
      side: { field: side }
      state: { field: state }
      found: { field: finding }
`;

/** Files for the station's crosswalk: the rows given, under their headers. */
export function stationFiles(rows: {
  readonly inspections?: readonly string[];
  readonly checks?: readonly string[];
}): Readonly<Record<string, string>> {
  const lines = (header: string, some: readonly string[] = []) => `${[header, ...some].join('\n')}\n`;
  return {
    'stations.csv': 'id\nL1\n',
    'inspections.csv': lines('id,site,start,end,kind,hull,result,wet', rows.inspections),
    'checks.csv': lines('insp,part,side,state,found', rows.checks),
  };
}
