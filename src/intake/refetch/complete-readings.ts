import type { FileReading } from '../read-file.js';
import type { ReadingThreads } from '../reading-threads.js';
import { takeFetched } from './take-fetched.js';
import { lackingOf, type WantedRows } from './wanted-rows.js';

/** A line at which a file no longer holds what was read of it before. */
export interface ChangedLine {
  readonly file: string;
  readonly line: number;
}

/**
 * Has the rows fetched that were found at fault only after their files were read, by other threads where there are some. What
 * is given completes the readings once they are here, and tells which files are others now; it must be called.
 */
export function completeReadings(
  threads: ReadingThreads,
  from: string,
  readings: readonly FileReading[],
): () => Promise<readonly ChangedLine[]> {
  const wanted: WantedRows[] = [];
  const lacking: { readonly reading: FileReading; readonly remarkOf: Uint32Array }[] = [];
  for (const reading of readings) {
    const found = lackingOf(from, reading);
    if (found === null) continue;
    wanted.push(found.wanted);
    lacking.push({ reading, remarkOf: found.remarkOf });
  }
  const fetching = threads.fetching(wanted);
  return async () => {
    const changed: ChangedLine[] = [];
    for (const [at, fetched] of (await fetching()).entries()) {
      const { reading, remarkOf } = lacking[at]!;
      if (fetched.changedAt === null) takeFetched(reading, remarkOf, fetched);
      else changed.push({ file: reading.file, line: fetched.changedAt });
    }
    return changed;
  };
}
