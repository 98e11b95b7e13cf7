import type { ImportResult } from '../../src/intake/import-exports.js';
import type { Random } from '../../src/statistic/random.js';
import { mark } from '../privacy/planted-exports.js';
import { hostilePieces } from './spoil.js';
import { hold, oneOf } from './trial.js';

/** A crosswalk for one station with two private columns, one kept as a pseudonym, and free text beside them. */
export const plantedCrosswalk = `
crosswalk: planted
data_as_of: 2025-11-30 18:00
data_time_zone: America/Denver
files:
  - files: stations.csv
    table: stations
    columns: { id: { field: station } }
    constants: { name: Landing, setting: launch, time_zone: America/Denver }
  - files: inspections.csv
    table: inspections
    time_zone: America/Denver
    season_of: started_at
    columns:
      id: { field: inspection }
      site: { field: station }
      owner: { private: drop }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type, codes: { P: paddlecraft, M: open motorboat } }
      hull: { field: craft, private: hash }
      result: { field: outcome, codes: { C: cleared, I: intercepted } }
      home: { field: home_region }
    constants: { direction: arriving, extent: full }
    duplicates: [station, craft, started_at]
  - files: checks.csv
    table: checks
    columns: { insp: { field: inspection }, part: { field: component }, side: { field: side }, state: { field: state }, found: { field: finding } }
  - files: money.csv
    table: spending
    columns: { no: { field: entry }, note: { field: note }, payee: { private: drop }, dollars: { field: amount } }
    constants: { fiscal_year: 2025, category: supplies }
`;

/** What was written into one file of a planted season. */
export interface PlantedFile {
  readonly text: string;
  readonly rows: number;
  /** Whether a place was broken so that rows and cells may no longer be where they were. */
  readonly isBroken: boolean;
}

const privateColumns = new Set(['owner', 'hull', 'payee']);
const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;

function soundRow(file: string, row: number, random: Random): Readonly<Record<string, string>> {
  const day = `2025-0${5 + random.below(4)}-${10 + random.below(18)}`;
  const rows: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    stations: { id: row === 0 ? 'L1' : `L${row + 1}` },
    inspections: {
      id: `${row}`,
      site: 'L1',
      owner: `${mark}, O${row}`,
      start: `${day} 08:${10 + row}`,
      kind: oneOf(random, ['P', 'M']),
      hull: `${mark}H${row % 7}`,
      result: oneOf(random, ['C', 'C', 'I']),
      home: oneOf(random, ['Idaho', 'Utah', '']),
    },
    checks: { insp: `${row}`, part: 'gear', side: 'none', state: oneOf(random, ['clean', 'fouled', '']), found: '' },
    money: {
      no: `${row}`,
      note: oneOf(random, ['rope', 'two\nlines', 'a, b']),
      payee: `${mark} P`,
      dollars: `${row}.5`,
    },
  };
  return rows[file]!;
}

/** A file of a planted season: cells of hostile text, and where it is broken, one place of it. */
function plantedFile(file: string, random: Random, giant: number): PlantedFile {
  const rows = file === 'stations' ? 2 : 3 + random.below(30);
  const headings = Object.keys(soundRow(file, 0, random));
  const lines = Array.from({ length: rows }, (_, row) => {
    const cells = soundRow(file, row, random);
    return headings.map((name) => {
      const isSpoilt = !privateColumns.has(name) && random.below(8) === 0;
      const cell = isSpoilt ? oneOf(random, hostilePieces) + (random.below(2) === 0 ? cells[name]! : '') : cells[name]!;
      const isQuoted = /[",\r\n]/.test(cell) || random.below(5) === 0;
      // Where a row has one cell, nothing at all would be a blank line, and no row.
      return isQuoted || (headings.length === 1 && cell === '') ? quoted(cell) : cell;
    });
  });
  if (giant > 0) {
    const free = headings.findIndex((name) => ['note', 'home', 'found', 'id'].includes(name));
    oneOf(random, lines)[free] = quoted(oneOf(random, ['x', '"', '\n', ',', '😀']).repeat(giant));
  }
  let text = [headings, ...lines].map((cells) => `${cells.join(',')}\n`).join('');
  const isBroken = random.below(3) === 0;
  if (isBroken) {
    const at = headings.join(',').length + 1 + random.below(text.length - headings.join(',').length);
    const ways = [
      () => text.slice(0, at),
      () => text.slice(0, at) + oneOf(random, ['"', ',', '\n', '\r', '"",', '\u0000']) + text.slice(at),
      () => text.slice(0, at) + text.slice(at + 1),
    ];
    text = oneOf(random, ways)();
  }
  return { text, rows, isBroken };
}

/** The files of a planted season by name; `giant` is the length of one cell in one of them, 0 for none. */
export function plantedFiles(random: Random, giant: number): ReadonlyMap<string, PlantedFile> {
  const names = ['stations', 'inspections', 'checks', 'money'];
  const large = oneOf(random, names);
  return new Map(names.map((name) => [`${name}.csv`, plantedFile(name, random, name === large ? giant : 0)]));
}

/** Whether a text or anything within a value holds a planted mark. */
export function isLeaked(value: unknown): boolean {
  return (typeof value === 'string' ? value : JSON.stringify(value)).toLowerCase().includes(mark.toLowerCase());
}

/** Holds an import to its promises: every row has a fate and a reason, and no private cell is in anything it gives. */
export function holdImport(result: ImportResult, files: ReadonlyMap<string, PlantedFile>): number {
  const { problems, setAside, setAsideRows, notes, doubleEntries, unmatched, sum } = result;
  hold(!isLeaked({ problems, setAside, setAsideRows, notes, doubleEntries, unmatched }), () => 'a ledger holds a mark');
  for (const { code, remedy } of problems) hold(code !== '' && remedy !== '', () => 'a problem without code or remedy');
  let accounted = 0;
  for (const { file, read, kept, setAside: aside, leftOut = 0 } of sum.files) {
    hold(read === kept + aside + leftOut, () => `${file}: ${read} is not ${kept} + ${aside} + ${leftOut}`);
    const written = files.get(file);
    if (written !== undefined && !written.isBroken && problems.length === 0) {
      hold(read === written.rows, () => `${file}: ${read} rows read of ${written.rows} written`);
    }
    const lines = new Set(setAside.filter((one) => one.file === file).map(({ line }) => line));
    hold(lines.size === aside, () => `${file}: ${aside} rows aside, and ${lines.size} of them with a reason`);
    accounted += read;
  }
  for (const { columns } of Object.values(result.records)) {
    for (const column of columns.values()) {
      if (column.kind === 'text') hold(!column.dictionary.some(isLeaked), () => 'a record holds a mark');
    }
  }
  return accounted;
}
