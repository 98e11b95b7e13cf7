import { join } from 'node:path';
import type { Task } from '../find-exports.js';
import type { MendedFiles } from '../mending/take-corrections.js';
import { locate } from '../source/container.js';
import { fileFingerprint } from '../source/file-bytes.js';
import type { PastImport, PastReading } from './past-import.js';

/** Readings of an import before, by the place of the task whose file they are of. */
export type PastFiles = ReadonlyMap<number, PastReading>;

/** Under which program and key the files of this import are read. */
export interface ReadUnder {
  readonly program: string;
  readonly key: string | null;
}

/** A file as an import before knew it. */
type KnownFile = Pick<PastReading, 'file' | 'fingerprint' | 'crosswalk' | 'rule'>;

/** Of the files that an import before knew, those whose bytes are the same now, by the place of their task. */
export async function sameFiles<F extends KnownFile>(
  from: string,
  tasks: readonly Task[],
  before: readonly F[],
): Promise<ReadonlyMap<number, F>> {
  const same = new Map<number, F>();
  const prints = new Map<string, Promise<string>>();
  const printOf = async (path: string): Promise<string> => {
    const { file } = await locate(from, path);
    const print = prints.get(file) ?? fileFingerprint(join(from, file));
    prints.set(file, print);
    return print;
  };
  for (const [place, { crosswalk, file, ruleNumber }] of tasks.entries()) {
    const reading = before.find(
      (one) => one.file === file && one.crosswalk === crosswalk.name && one.rule === ruleNumber,
    );
    if (reading !== undefined && (await printOf(file)) === reading.fingerprint) same.set(place, reading);
  }
  return same;
}

const isHashed = ({ rule }: Task) => rule.fields.some(({ hashed }) => hashed);

/**
 * Of the readings of files that stayed the same, those that still hold: the rules are the same too, and so are the program,
 * the rows mended, and the key where it was needed. A file whose times follow the clocks of its stations is read again when
 * a file of stations is; one whose names of waters are matched, when any file of waters came, changed or went.
 */
export function knownFiles(
  tasks: readonly Task[],
  same: PastFiles,
  past: PastImport,
  under: ReadUnder,
  mended: MendedFiles,
): PastFiles {
  if (past.program !== under.program) return new Map();
  const known = new Map(
    [...same].filter(([place, reading]) => {
      const task = tasks[place]!;
      const isMendedAlike = JSON.stringify(mended.get(place) ?? []) === JSON.stringify(reading.mended);
      const isKeyedAlike = !isHashed(task) || past.key === under.key;
      return reading.rules === task.crosswalk.fingerprint && isMendedAlike && isKeyedAlike;
    }),
  );
  const readsStations = tasks.some(({ rule }, place) => rule.table.name === 'stations' && !known.has(place));
  if (readsStations) {
    for (const [place, { rule }] of tasks.entries()) if (rule.timeZone === null) known.delete(place);
  }
  const listsWaters = tasks.flatMap(({ rule }, place) => (rule.table.name === 'waterbodies' ? [place] : []));
  const listedBefore = past.readings.filter(({ tables }) => tables.includes('waterbodies')).length;
  if (listsWaters.length !== listedBefore || !listsWaters.every((place) => known.has(place))) {
    for (const [place, { rule }] of tasks.entries()) if (rule.waters.length > 0) known.delete(place);
  }
  return known;
}

/**
 * Of known files, those whose rows stand by themselves: where files of a table complete one another, a record is made of
 * several of them, and all are read again.
 */
export function notJoined(tasks: readonly Task[], known: PastFiles): PastFiles {
  const joined = new Set(tasks.flatMap(({ rule }) => (rule.completes ? [rule.table] : [])));
  return new Map([...known].filter(([place]) => !joined.has(tasks[place]!.rule.table)));
}
