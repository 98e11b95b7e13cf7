import { join } from 'node:path';
import type { Task } from '../find-exports.js';
import { locate } from '../source/container.js';
import { fileFingerprint } from '../source/file-bytes.js';
import type { PastImport, PastReading } from './past-import.js';

/** Under which program and key the files of this import are read. */
export interface ReadUnder {
  readonly program: string;
  readonly key: string | null;
}

const isHashed = ({ rule }: Task) => rule.fields.some(({ hashed }) => hashed);

/**
 * The earlier readings that still hold, by the place of their task: the file's bytes are the same, and so are its rules, the
 * program, and the key where it was needed. A file whose times follow the clocks of its stations is read again when a file
 * of stations is.
 */
export async function knownFiles(
  from: string,
  tasks: readonly Task[],
  past: PastImport | null,
  under: ReadUnder,
): Promise<ReadonlyMap<number, PastReading>> {
  const known = new Map<number, PastReading>();
  if (past === null || past.program !== under.program) return known;
  const prints = new Map<string, Promise<string>>();
  const printOf = async (path: string): Promise<string> => {
    const { file } = await locate(from, path);
    const print = prints.get(file) ?? fileFingerprint(join(from, file));
    prints.set(file, print);
    return print;
  };
  for (const [place, task] of tasks.entries()) {
    const { crosswalk, file, ruleNumber: rule } = task;
    const reading = past.readings.find(
      (one) => one.file === file && one.crosswalk === crosswalk.name && one.rule === rule,
    );
    if (reading === undefined || reading.rules !== crosswalk.fingerprint) continue;
    if (isHashed(task) && past.key !== under.key) continue;
    if ((await printOf(file)) === reading.fingerprint) known.set(place, reading);
  }
  const readsStations = tasks.some(({ rule }, place) => rule.table.name === 'stations' && !known.has(place));
  if (readsStations) {
    for (const [place, { rule }] of tasks.entries()) if (rule.timeZone === null) known.delete(place);
  }
  return known;
}
