import type { Problem } from '../problem/problem.js';
import type { TableDefinition, TableName } from '../record/field.js';
import type { FileSum, ImportSum } from '../record/file-sum.js';
import type { Records, RecordTable } from '../record/records.js';
import { tables } from '../record/tables.js';
import { checkDoubleEntries, type DoubleEntry } from './check-double-entries.js';
import { checkKeys } from './check-keys.js';
import { checkLinks, markKeys } from './check-links.js';
import type { Crosswalk } from './crosswalk.js';
import { findTasks, readCrosswalks, stop, type Task } from './find-exports.js';
import { type FinalKeys, finishTable } from './finish-table.js';
import { fileSum, importSum } from './import-sum.js';
import { Texts } from './key-space.js';
import { type LedgerLine, linesOf, rowsAside, type SetAsideRow } from './ledger.js';
import { shortestKey } from './pseudonym.js';
import { readAgain } from './read-again.js';
import { type FileReading, readFile } from './read-file.js';
import { checkParts, craftKinds } from './sense/check-parts.js';
import { checkSense } from './sense/check-sense.js';
import { ZoneClock } from './time-zone.js';

/** How far an import has come. */
export interface ImportProgress {
  readonly file: string;
  /** The file's place among all, from 1. */
  readonly fileNumber: number;
  readonly fileCount: number;
  /** Rows of this file so far. */
  readonly rows: number;
  /** Bytes over all files. */
  readonly bytesDone: number;
  readonly bytesTotal: number;
}

/** What to import, and under which secret. */
export interface ImportRequest {
  /** Paths of crosswalk files, in the order in which their files are read. */
  readonly crosswalks: readonly string[];
  /** The folder of exports. */
  readonly from: string;
  /** The secret under which pseudonyms are made. */
  readonly key: Uint8Array;
  readonly progress: (step: ImportProgress) => void;
  /** How many bytes are read at once; no result depends on it. */
  readonly chunk?: number;
}

/** The records of an import with their account, or what stops it. */
export interface ImportResult {
  readonly records: Records;
  readonly sum: ImportSum;
  /** One line a problem that set a row aside, in order of file and line. */
  readonly setAside: readonly LedgerLine[];
  /** One line a problem noted on a kept row. */
  readonly notes: readonly LedgerLine[];
  readonly setAsideRows: readonly SetAsideRow[];
  /** Pairs of rows that record one event under two keys, whatever became of them. */
  readonly doubleEntries: readonly DoubleEntry[];
  /** What stops the import: where there is one, no records are given, and nothing may be stored. */
  readonly problems: readonly Problem[];
}

function emptyRecords(texts: Texts): Records {
  const finalKeys = new Map<string, FinalKeys>();
  const byName = tables.map((table): [TableName, RecordTable] => [
    table.name,
    finishTable(table, [], texts, finalKeys),
  ]);
  return Object.fromEntries(byName) as Record<TableName, RecordTable>;
}

function nothing(problems: readonly Problem[]): ImportResult {
  const sum = { files: [], definitionChanges: [], asOf: null, fingerprint: '' };
  return {
    records: emptyRecords(new Texts()),
    sum,
    setAside: [],
    notes: [],
    setAsideRows: [],
    doubleEntries: [],
    problems,
  };
}

/** Reads the files, those of parent tables first; the readings come back in the order of the tasks. */
async function readAll(tasks: readonly Task[], request: ImportRequest, texts: Texts): Promise<readonly FileReading[]> {
  const clocks = new Map<string, ZoneClock>();
  const clockOf = (zone: string): ZoneClock => {
    const clock = clocks.get(zone) ?? new ZoneClock(zone);
    clocks.set(zone, clock);
    return clock;
  };
  const stationZones = new Map<number, string>();
  const bytesTotal = tasks.reduce((sum, { bytes }) => sum + bytes, 0);
  let bytesBefore = 0;
  let fileNumber = 0;
  const readings: FileReading[] = [];
  for (const table of tables) {
    for (const [place, task] of tasks.entries()) {
      if (task.rule.table !== table) continue;
      fileNumber++;
      const number = fileNumber;
      const before = bytesBefore;
      const reading = await readFile({
        from: request.from,
        file: task.file,
        place,
        rule: task.rule,
        crosswalk: task.crosswalk.name,
        texts,
        key: request.key,
        clockOf,
        stationClock: (station) => {
          const zone = stationZones.get(station);
          return zone === undefined ? null : clockOf(zone);
        },
        chunk: request.chunk ?? 1 << 20,
        progress: (rows, bytesDone) =>
          request.progress({
            file: task.file,
            fileNumber: number,
            fileCount: tasks.length,
            rows,
            bytesDone: before + bytesDone,
            bytesTotal,
          }),
      });
      bytesBefore += task.bytes;
      readings[place] = reading;
      if (table.name === 'stations') rememberZones(reading, stationZones);
    }
  }
  return readings;
}

function rememberZones({ draft }: FileReading, zones: Map<number, string>): void {
  const station = draft.columns.get('station');
  const zone = draft.columns.get('time_zone');
  if (station === undefined || zone === undefined) return;
  for (let row = 0; row < draft.rowCount; row++) {
    if (draft.aside[row] === 0) zones.set(station.values[row]!, zone.interner!.textOf(zone.values[row]!));
  }
}

/** Holds the rows of each table against each other and against their parents, parents first. */
function checkAcross(
  readings: readonly FileReading[],
  texts: Texts,
  crosswalks: readonly Crosswalk[],
): readonly DoubleEntry[] {
  const doubleEntries: DoubleEntry[] = [];
  let kinds: Int16Array = new Int16Array(0);
  for (const table of tables) {
    const own = readings.filter(({ draft }) => draft.table === table);
    checkLinks(own, texts);
    if (table.key[1] === 'component') checkParts(own, kinds);
    checkKeys(table, own, readings, texts);
    doubleEntries.push(...checkDoubleEntries(own));
    const space = texts.spaceOf(table.name);
    markKeys(own, space);
    if (table.name === 'inspections') kinds = craftKinds(own, space.interner.size);
  }
  checkSense(readings, texts.spaceOf('inspections').interner.size, crosswalks);
  return doubleEntries;
}

function needsKey(crosswalks: readonly Crosswalk[]): boolean {
  return crosswalks.some(({ files }) => files.some(({ fields }) => fields.some(({ hashed }) => hashed)));
}

/**
 * Reads exported files by their crosswalks into records: every cell checked, links and keys followed across all files,
 * every row that cannot be kept set aside with its reasons. Rows read = rows kept + rows set aside, for every file.
 */
export async function importExports(request: ImportRequest): Promise<ImportResult> {
  const problems: Problem[] = [];
  const crosswalks = await readCrosswalks(request.crosswalks, problems);
  if (problems.length > 0) return nothing(problems);
  if (needsKey(crosswalks) && request.key.length < shortestKey) {
    const remedy = `Make a key of at least ${shortestKey} bytes and keep it outside the project.`;
    problems.push(stop('short-key', 'the key', `${request.key.length} bytes`, 'a key that cannot be guessed', remedy));
  }
  const tasks = await findTasks(request.from, crosswalks, problems);
  if (problems.length > 0) return nothing(problems);

  const texts = new Texts();
  const readings = await readAll(tasks, request, texts);
  problems.push(...readings.flatMap((reading) => reading.problems));
  if (problems.length > 0) return nothing(problems);
  const doubleEntries = checkAcross(readings, texts, crosswalks);
  for (const reading of readings) {
    const line = await readAgain(request.from, reading);
    if (line === null) continue;
    const remedy = 'Import again once nothing writes to the file.';
    problems.push(
      stop('file-changed', reading.file, `other text at line ${line}`, 'a file that stays as it is', remedy),
    );
  }
  if (problems.length > 0) return nothing(problems);

  const setAside: LedgerLine[] = [];
  const notes: LedgerLine[] = [];
  const setAsideRows: SetAsideRow[] = [];
  const files: FileSum[] = [];
  for (const reading of readings) {
    for (const line of linesOf(reading, 'set aside')) setAside.push(line);
    for (const line of linesOf(reading, 'notes')) notes.push(line);
    for (const row of rowsAside(reading)) setAsideRows.push(row);
    files.push(fileSum(reading));
  }
  const finalKeys = new Map<string, FinalKeys>();
  const finished = tables.map((table: TableDefinition): [TableName, RecordTable] => [
    table.name,
    finishTable(table, readings, texts, finalKeys),
  ]);
  const sum = importSum(crosswalks, files);
  const records = Object.fromEntries(finished) as Record<TableName, RecordTable>;
  return { records, sum, setAside, notes, setAsideRows, doubleEntries, problems: [] };
}
