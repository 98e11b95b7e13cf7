import type { Problem } from '../problem/problem.js';
import { tables } from '../record/tables.js';
import { checkDoubleEntries, type DoubleEntry } from './check-double-entries.js';
import { checkKeys } from './check-keys.js';
import { checkLinks, markKeys } from './check-links.js';
import { completeRows } from './complete-rows.js';
import type { Crosswalk } from './crosswalk.js';
import { changedFiles, fileStamps } from './file-stamps.js';
import { findTasks, readCrosswalks, stop, type Task } from './find-exports.js';
import { finishTables } from './finish-tables.js';
import { finishedImport, type ImportResult, stoppedImport } from './import-result.js';
import { fingerprintOf, importSum } from './import-sum.js';
import { Texts } from './key-space.js';
import { ledgersOf } from './ledger.js';
import { completeMended } from './mending/complete-mended.js';
import type { Correction } from './mending/mending.js';
import { takeCorrections } from './mending/take-corrections.js';
import { keyPrint, shortestKey } from './pseudonym.js';
import { type ImportProgress, readAll } from './read-all.js';
import type { FileReading } from './read-file.js';
import { notKnown, type ReadingPlan, without } from './reading-plan.js';
import { ReadingThreads } from './reading-threads.js';
import { asideRecords } from './recall/aside-records.js';
import { knownFiles, notJoined, type PastFiles, sameFiles } from './recall/known-files.js';
import { findHiddenKeys, LostKeys } from './recall/lost-keys.js';
import type { PastImport } from './recall/past-import.js';
import { LedgerRecall } from './recall/recall-ledger.js';
import { rememberReading } from './recall/remember-reading.js';
import { completeReadings } from './refetch/complete-readings.js';
import { checkParts, craftKinds } from './sense/check-parts.js';
import { checkSense } from './sense/check-sense.js';
import { type MatchedWaters, matchWaters, unmatchedOf } from './waters/match-waters.js';
import { inOrder, leaveWithdrawn, withdrawnFile } from './withdrawing/leave-withdrawn.js';
import { withdrawSeasons } from './withdrawing/withdraw-seasons.js';
import { nothingWithdrawn } from './withdrawing/withdrawn.js';

export type { ImportResult } from './import-result.js';
export type { ImportProgress } from './read-all.js';

/** What to import, and under which secret. */
export interface ImportRequest {
  /** Paths of crosswalk files, in the order in which their files are read. */
  readonly crosswalks: readonly string[];
  /** The folder of exports. */
  readonly from: string;
  /** The secret under which pseudonyms are made. */
  readonly key: Uint8Array;
  readonly progress: (step: ImportProgress) => void;
  /** How many bytes are read at once, how many a thread reads of a large file, and how many threads; no result depends on it. */
  readonly chunk?: number;
  readonly range?: number;
  readonly threads?: number;
  /** Whether the key can be given again; one made by chance cannot. */
  readonly keyIsKept?: boolean;
  /** What a person corrected in rows that the import before set aside. */
  readonly corrections?: readonly Correction[];
  /** Seasons that are to be left out from now on, and seasons withdrawn before that are to be read again. */
  readonly withdraw?: readonly number[];
  readonly callBack?: readonly number[];
  /** Fingerprint of the program: what another one read is read again. */
  readonly program?: string;
  /** The import that the new one follows; files that stayed the same are taken from it. */
  readonly past?: PastImport | null;
}

/** What holding files against each other gave beside remarks. */
interface AcrossFiles {
  readonly doubleEntries: readonly DoubleEntry[];
  /** Of the files whose names of waters are matched. */
  readonly waters: ReadonlyMap<FileReading, MatchedWaters>;
}

/** Holds the rows of each table against each other and against their parents, parents first. */
function checkAcross(
  readings: readonly FileReading[],
  texts: Texts,
  crosswalks: readonly Crosswalk[],
  withdrawn: readonly number[],
): AcrossFiles {
  const doubleEntries: DoubleEntry[] = [];
  const waters = new Map<FileReading, MatchedWaters>();
  let kinds: Int16Array = new Int16Array(0);
  for (const table of tables) {
    const own = readings.filter(({ draft }) => draft.table === table);
    for (const [reading, matched] of matchWaters(own, readings, texts)) waters.set(reading, matched);
    checkLinks(own, texts);
    if (table.key[1] === 'component') checkParts(own, kinds);
    const whole = own.filter(({ rule }) => !rule.completes);
    checkKeys(table, whole, readings, texts);
    completeRows(table, own, texts, withdrawn);
    doubleEntries.push(...checkDoubleEntries(whole));
    markKeys(own, texts);
    if (table.name === 'inspections') kinds = craftKinds(own, texts.spaceOf('inspections').interner.size);
  }
  const telling = readings.filter(({ rule }) => !rule.completes);
  checkSense(telling, texts.spaceOf('inspections').interner.size, crosswalks);
  return { doubleEntries, waters };
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
  if (problems.length > 0) return stoppedImport(problems);
  if (needsKey(crosswalks) && request.key.length < shortestKey) {
    const remedy = `Make a key of at least ${shortestKey} bytes and keep it outside the project.`;
    problems.push(stop('short-key', 'the key', `${request.key.length} bytes`, 'a key that cannot be guessed', remedy));
  }
  const found = await findTasks(request.from, crosswalks, problems);
  if (problems.length > 0) return stoppedImport(problems);
  const stamps = await fileStamps(
    request.from,
    found.map(({ file }) => file),
  );
  const past = request.past ?? null;
  const under = { program: request.program ?? '', key: needsKey(crosswalks) ? keyPrint(request.key) : null };
  const { tasks, withdrawn } = await leaveWithdrawn(request, found, past?.withdrawn ?? nothingWithdrawn);
  const same: PastFiles = past === null ? new Map() : await sameFiles(request.from, tasks, past.readings);
  const mended = takeCorrections(tasks, past, same, request.corrections ?? [], problems);
  if (problems.length > 0) return stoppedImport(problems);
  const plan = { crosswalks, tasks, under, mended, withdrawn, stamps };
  if (past === null) return readTasks(request, { ...plan, known: new Map() });
  // A key made by chance is no reason to read again what is there already.
  const sameKey = request.keyIsKept === false ? { ...under, key: past.key } : under;
  const seasonsAlike = JSON.stringify(withdrawn) === JSON.stringify(past.withdrawn);
  if (seasonsAlike && isSame(crosswalks, tasks, knownFiles(tasks, same, past, sameKey, mended), past)) {
    return { ...past, ledgers: null, remembered: past, filesRead: [], mendedLost: [], isNew: false, problems: [] };
  }
  return readTasks(request, { ...plan, known: notJoined(tasks, knownFiles(tasks, same, past, under, mended)) });
}

/** Whether the same files were read by the same crosswalks before. */
function isSame(crosswalks: readonly Crosswalk[], tasks: readonly Task[], known: PastFiles, past: PastImport): boolean {
  if (known.size < tasks.length) return false;
  const inOrder = [...known].sort(([a], [b]) => a - b).map(([, reading]) => reading);
  return fingerprintOf(crosswalks, inOrder) === past.sum.fingerprint;
}

/** The rows mended in an import before that could not be taken in again: their files are others now, or gone. */
function lostMendings(past: PastImport | null, readings: readonly FileReading[]): ImportResult['mendedLost'] {
  const nameOf = (file: string, line: number) => `${file}\n${line}`;
  const taken = new Set(readings.flatMap(({ file, mended }) => mended.map(({ line }) => nameOf(file, line))));
  const before = past?.readings.flatMap(({ file, mended }) => mended.map(({ line }) => ({ file, line }))) ?? [];
  return before.filter(({ file, line }) => !taken.has(nameOf(file, line)));
}

async function readTasks(request: ImportRequest, plan: ReadingPlan): Promise<ImportResult> {
  const toRead = [...plan.tasks.entries()].filter(([place]) => !plan.known.has(place));
  const threads = new ReadingThreads(toRead, plan.crosswalks, request);
  try {
    return await readBy(threads, request, plan);
  } finally {
    await threads.close();
  }
}

async function readBy(threads: ReadingThreads, request: ImportRequest, plan: ReadingPlan): Promise<ImportResult> {
  const { crosswalks, tasks, under, known, mended, withdrawn } = plan;
  const otherwise = async (other: ReadingPlan): Promise<ImportResult> => {
    await threads.close();
    return readTasks(request, other);
  };
  const problems: Problem[] = [];
  const texts = new Texts();
  const readings = await readAll(tasks, crosswalks, request, texts, known, mended, threads);
  problems.push(...readings.flatMap((reading) => reading.problems));
  if (problems.length > 0) return stoppedImport(problems);
  const gone = withdrawSeasons(readings, new Set(withdrawn.seasons), texts, problems);
  if (problems.length > 0) return stoppedImport(problems);
  if (gone.size > 0) {
    const places = new Set([...gone.keys()].map((reading) => readings.indexOf(reading)));
    const files = [
      ...withdrawn.files,
      ...[...gone].map(([reading, seasons]) => withdrawnFile(reading, seasons, tasks[readings.indexOf(reading)]!)),
    ];
    return otherwise({ ...without(plan, places), withdrawn: { ...withdrawn, files: inOrder(files) } });
  }
  const hashes = request.past?.key === under.key && under.key !== null ? request.key : null;
  const unreadable = findHiddenKeys(readings, (place) => known.has(place), texts, hashes);
  if (unreadable.length > 0) return otherwise(notKnown(plan, unreadable));
  const own = readings.map(({ remarks }) => remarks.size);
  const { doubleEntries, waters } = checkAcross(readings, texts, crosswalks, withdrawn.seasons);
  const ledger = known.size === 0 ? null : new LedgerRecall(request.past!);
  const incomplete = [...known.keys()].filter((place) => ledger?.complete(readings[place]!) === false);
  if (incomplete.length > 0) {
    // A row at fault that was not before stands in its file alone.
    return otherwise(notKnown(plan, incomplete));
  }
  const read = readings.filter((_, place) => !known.has(place));
  for (const reading of read) completeMended(reading);
  texts.settle();
  // Other threads fetch from the files what the ledgers will show, while this one makes the tables.
  const complete = completeReadings(threads, request.from, read);

  const lostKeys = new LostKeys(readings, texts, request.key);
  const remembered = {
    ...under,
    withdrawn,
    readings: readings.map((reading, place) =>
      rememberReading(
        reading,
        waters.get(reading)?.remarks ?? own[place]!,
        tasks[place]!,
        lostKeys.of(reading),
        waters.get(reading)?.unmatched ?? null,
      ),
    ),
    aside: asideRecords(readings),
  };
  const sum = importSum(crosswalks, readings, withdrawn);
  const records = finishTables(readings, texts);
  for (const { file, line } of await complete()) {
    const remedy = 'Import again once nothing writes to the file.';
    problems.push(stop('file-changed', file, `other text at line ${line}`, 'a file that stays as it is', remedy));
  }
  if (problems.length === 0) problems.push(...(await changedFiles(request.from, plan.stamps)));
  if (problems.length > 0) return stoppedImport(problems);
  const filesRead = read.map(({ file }) => file);
  const mendedLost = lostMendings(request.past ?? null, readings);
  const unmatched = unmatchedOf(waters.values());
  const found = { records, sum, doubleEntries, unmatched, remembered, filesRead, mendedLost };
  return finishedImport(found, ledgersOf(readings));
}
