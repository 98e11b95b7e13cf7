import { type ImportResult, importExports } from '../intake/import-exports.js';
import type { FileSum } from '../record/file-sum.js';
import { type HeldStore, holdStore } from '../store/hold-store.js';
import { readCorrections } from '../store/read-corrections.js';
import { readPast } from '../store/read-past.js';
import { refusedStore, writeStore } from '../store/write-store.js';
import { exitCodes } from './exit-codes.js';
import { ownHolder } from './own-holder.js';
import { problemJson } from './problem-json.js';
import { programFingerprint } from './program-version.js';
import { startProgress } from './progress.js';
import { readKey } from './pseudonym-key.js';
import { sayMended } from './say-mended.js';
import { sayWithdrawn } from './say-withdrawn.js';
import { grouped, say, sayJson, sayProblems, sayTable } from './terminal.js';

/** The words of `rampbook import`. */
export interface ImportWords {
  readonly crosswalks: readonly string[];
  readonly from: string;
  readonly store: string;
  readonly key?: string;
  readonly mended?: readonly string[];
  readonly withdraw?: readonly number[];
  readonly callBack?: readonly number[];
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** Reads exports into a store and says what was read, kept and set aside; nothing is stored when a problem stops it. */
export async function importCommand(words: ImportWords): Promise<number> {
  const key = await readKey(words.key, words);
  if ('problem' in key) return stop([key.problem], words);
  const held = await holdStore(words.store, ownHolder());
  if ('code' in held) return stop([held], words);
  try {
    return await importInto(held, words, key);
  } finally {
    await held.release();
  }
}

async function importInto(
  held: HeldStore,
  words: ImportWords,
  key: { readonly bytes: Uint8Array; readonly kept: boolean },
): Promise<number> {
  // Asked before the exports are read, which may take long, and again when the store is written.
  const refused = await refusedStore(words.store);
  if (refused !== null) return stop([refused], words);
  const read = await Promise.all((words.mended ?? []).map(readCorrections));
  const wrong = read.flatMap(({ problems }) => problems);
  if (wrong.length > 0) return stop(wrong, words);
  const progress = startProgress(words.quiet === true || words.json === true);
  const past = await readPast(held.folder);
  const result = await importExports({
    crosswalks: words.crosswalks,
    from: words.from,
    key: key.bytes,
    keyIsKept: key.kept,
    withdraw: words.withdraw ?? [],
    callBack: words.callBack ?? [],
    corrections: read.flatMap(({ corrections }) => corrections),
    program: programFingerprint(),
    past,
    progress: ({ file, rows, bytesDone, bytesTotal }) =>
      progress.show(`reading ${file}`, bytesTotal === 0 ? 1 : bytesDone / bytesTotal, rows),
  });
  progress.end();
  if (result.problems.length > 0) return stop(result.problems, words);
  const stored = result.isNew ? await writeStore(words.store, result, held) : [];
  if (stored.length > 0) return stop(stored, words);
  if (words.json === true) sayJson(importJson(words.store, result));
  else {
    sayWhatIsNew(words, result, past !== null);
    sayAccount(words, result.sum.files, key.kept || !result.isNew || !hasPseudonyms(result));
    sayMended(words, result);
    sayWithdrawn(result);
    sayUnmatched(words, result);
  }
  return exitCodes.fine;
}

type Problems = Parameters<typeof sayProblems>[0];

function stop(problems: Problems, words: ImportWords): number {
  if (words.json === true) sayJson({ stopped: problems.map(problemJson) });
  sayProblems(problems);
  process.stderr.write(
    `Nothing was stored: ${problems.length} ${problems.length === 1 ? 'problem' : 'problems'} to mend first.\n`,
  );
  return exitCodes.problems;
}

function addedUp(counts: readonly Readonly<Record<string, number>>[]): Record<string, number> {
  const sums = new Map<string, number>();
  for (const count of counts) {
    for (const [code, times] of Object.entries(count)) sums.set(code, (sums.get(code) ?? 0) + times);
  }
  return Object.fromEntries([...sums].sort(([a, times], [b, others]) => others - times || (a < b ? -1 : 1)));
}

function totals(files: readonly FileSum[]): { read: number; kept: number; set_aside: number; left_out: number } {
  const sum = (count: (file: FileSum) => number): number => files.reduce((total, file) => total + count(file), 0);
  return {
    read: sum(({ read }) => read),
    kept: sum(({ kept }) => kept),
    set_aside: sum(({ setAside }) => setAside),
    left_out: sum(({ leftOut = 0 }) => leftOut),
  };
}

/** How many names matched no water, and on how many rows. */
function unmatchedWaters({ unmatched }: ImportResult): { unmatched_waters: number; unmatched_water_rows: number } {
  const rows = unmatched.reduce((sum, { times }) => sum + times, 0);
  return { unmatched_waters: unmatched.length, unmatched_water_rows: rows };
}

function importJson(store: string, result: ImportResult): object {
  const { filesRead, mendedLost, isNew } = result;
  const { files, fingerprint, withdrawn } = result.sum;
  return {
    store,
    fingerprint,
    nothing_new: !isNew,
    mended: files.reduce((sum, { mended = 0 }) => sum + mended, 0),
    mended_lost: mendedLost,
    withdrawn: withdrawn ?? { seasons: [], files: [] },
    files_read: filesRead,
    ...totals(files),
    problems: addedUp(files.map(({ problems }) => problems)),
    notes: addedUp(files.map(({ notes }) => notes)),
    ...unmatchedWaters(result),
    files: files.map(({ setAside, leftOut = 0, leftOutBecause = {}, fingerprint: bytes, ...file }) => ({
      ...file,
      set_aside: setAside,
      left_out: leftOut,
      left_out_because: leftOutBecause,
      fingerprint: bytes,
    })),
  };
}

/** How many files there are: one that gives several kinds of records stands once for each of them. */
function fileCount(files: readonly FileSum[]): number {
  return new Set(files.map(({ file }) => file)).size;
}

function sayWhatIsNew({ store }: ImportWords, { isNew, filesRead, sum }: ImportResult, hadPast: boolean): void {
  if (!isNew) say(`Nothing new: ${store} holds these exports, read by these crosswalks, and stays as it is.`);
  else if (hadPast && filesRead.length < sum.files.length) {
    // A file that gives several kinds of records is read as a whole, or not at all.
    const read = new Set(filesRead);
    const all = fileCount(sum.files);
    say(`Read ${read.size} of ${all} files; ${all - read.size} stayed the same and were taken from ${store}.`);
    for (const file of read) say(`  ${file}`);
  }
  if (!isNew || hadPast) say();
}

function sayUnmatched({ store }: ImportWords, result: ImportResult): void {
  const { unmatched_waters: names, unmatched_water_rows: rows } = unmatchedWaters(result);
  if (names === 0) return;
  say();
  const named = names === 1 ? '1 name of a water' : `${grouped(names)} names of waters`;
  const onRows = rows === 1 ? '1 row' : `${grouped(rows)} rows`;
  say(`${named} on ${onRows} matched none. Fill in the column waterbody of`);
  say(`${store}/unmatched.csv, the most frequent first, and name the file under aliases in the crosswalk.`);
}

function hasPseudonyms({ records }: ImportResult): boolean {
  return Object.values(records).some(({ definition, columns }) =>
    definition.fields.some(({ type, name }) => {
      const column = type === 'pseudonym' ? columns.get(name) : undefined;
      return column?.kind === 'text' && column.dictionary.length > 1;
    }),
  );
}

function sayAccount(words: ImportWords, files: readonly FileSum[], keyKept: boolean): void {
  const all = totals(files);
  const count = fileCount(files);
  const isSeveral = count < files.length;
  const row = (
    name: string,
    records: string,
    { read, kept, setAside, leftOut = 0 }: Pick<FileSum, 'read' | 'kept' | 'setAside' | 'leftOut'>,
  ): string[] => [
    name,
    ...(isSeveral ? [records] : []),
    ...[read, kept, setAside, ...(all.left_out > 0 ? [leftOut] : [])].map(grouped),
  ];
  sayTable([
    ['file', ...(isSeveral ? ['records'] : []), 'read', 'kept', 'set aside'].concat(
      all.left_out > 0 ? ['left out by rule'] : [],
    ),
    ...files.map((sum) => row(sum.file, sum.table.replaceAll('_', ' '), sum)),
    row(count === 1 ? '1 file' : `${count} files`, '', { ...all, setAside: all.set_aside, leftOut: all.left_out }),
  ]);
  const problems = addedUp(files.map((file) => file.problems));
  if (all.set_aside > 0) {
    say();
    const rows = all.set_aside === 1 ? '1 row was' : `${grouped(all.set_aside)} rows were`;
    say(`Why ${rows} set aside (a row may have several reasons):`);
    sayTable(Object.entries(problems).map(([code, times]) => [`  ${code}`, grouped(times)]));
    say(`Each stands with its place and remedy in ${words.store}/set-aside.csv.`);
  }
  const notes = addedUp(files.map((file) => file.notes));
  if (Object.keys(notes).length > 0) {
    say();
    say(`Noted on rows that were kept, in ${words.store}/notes.csv:`);
    sayTable(Object.entries(notes).map(([code, times]) => [`  ${code}`, grouped(times)]));
  }
  if (!keyKept) {
    say();
    say('Pseudonyms were keyed for this import only; give --key FILE to follow craft from one import to the next.');
  }
}
