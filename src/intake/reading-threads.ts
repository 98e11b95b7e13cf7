import { availableParallelism } from 'node:os';
import type { Crosswalk } from './crosswalk.js';
import type { Task } from './find-exports.js';
import { RangePool } from './range/range-pool.js';
import { type FetchedRows, fetchRows } from './refetch/fetch-rows.js';
import type { WantedRows } from './refetch/wanted-rows.js';

/** Below this many bytes a second thread takes longer to begin than it saves. */
const worthThreads = 48 * 1024 * 1024;
const mostThreads = 8;
/** Below this many bytes a file is not worth a thread of its own. */
const worthThread = 8 * 1024 * 1024;

/** What decides over threads beside the files: how many there may be, and bytes of a range, where a caller says so. */
export interface ThreadsWanted {
  readonly threads?: number;
  readonly range?: number;
  readonly key: Uint8Array;
}

/** The threads that read the files of an import beside the one that asks; none where there is little to read. */
export class ReadingThreads {
  readonly pool: RangePool | null;
  /** The files, by the places of their tasks, that are each read by one thread; all others are read by all of them. */
  readonly apart: ReadonlySet<number>;

  /** @param toRead the tasks whose files are read, each with its place among all tasks */
  constructor(
    toRead: readonly (readonly [place: number, task: Task])[],
    crosswalks: readonly Crosswalk[],
    wanted: ThreadsWanted,
  ) {
    const bytesTotal = toRead.reduce((sum, [, { bytes }]) => sum + bytes, 0);
    const threads = wanted.threads ?? (bytesTotal < worthThreads ? 1 : Math.min(availableParallelism(), mostThreads));
    // Stations come before all others, since the clocks of their rows are theirs.
    const large = toRead.filter(
      ([, { bytes, rule }]) => rule.table.name !== 'stations' && (bytes >= worthThread || wanted.threads !== undefined),
    );
    const takesRanges = wanted.range !== undefined || (threads > 2 && large.length < threads);
    const takesFiles = !takesRanges && threads > 1 && large.length >= threads;
    const settings = { crosswalks: crosswalks.map(({ text }) => text), key: wanted.key };
    this.pool = takesRanges || takesFiles ? new RangePool(threads - 1, settings) : null;
    this.apart = new Set(takesFiles ? large.map(([place]) => place) : []);
  }

  /** Has the rows wanted of each file fetched: at once by other threads where there are some, else when they are asked for. */
  fetching(wanted: readonly WantedRows[]): () => Promise<readonly FetchedRows[]> {
    const threads = this.pool?.threads ?? [];
    if (threads.length === 0) {
      return async () => {
        const fetched: FetchedRows[] = [];
        for (const one of wanted) fetched.push(await fetchRows(one));
        return fetched;
      };
    }
    // A thread takes some 20 MB while it waits.
    for (const thread of threads.slice(wanted.length)) void thread.close();
    const asked = Promise.all(
      wanted.map((one, at) => threads[at % threads.length]!.ask({ kind: 'rows', wanted: one })),
    );
    return () => asked;
  }

  async close(): Promise<void> {
    await this.pool?.close();
  }
}
