import { Worker } from 'node:worker_threads';
import type { FetchedRows } from '../refetch/fetch-rows.js';
import type { WantedRows } from '../refetch/wanted-rows.js';
import { threadEntry } from '../thread-entry.js';
import { memoryOf, type PackedRange } from './packed-range.js';
import type { RangeTask } from './read-range.js';

/** What a thread is asked: the rows of a range by one rule of one crosswalk, some rows once more, or a file's fingerprint. */
export type Question =
  | { readonly kind: 'range'; readonly task: RangeTask; readonly crosswalk: number; readonly rule: number }
  | { readonly kind: 'rows'; readonly wanted: WantedRows }
  | { readonly kind: 'fingerprint'; readonly path: string };

/** What threads are told once: the crosswalks' texts, and the key of pseudonyms. */
export interface PoolSettings {
  readonly crosswalks: readonly string[];
  readonly key: Uint8Array;
}

/** What a thread makes in passing is little, so that more room for it only takes memory. */
const youngMegabytes = 4;

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (mistake: unknown) => void;
}

/** One thread; its answers come in the order of the questions. */
export class RangeThread {
  /** Resolved once the thread has loaded what it needs. */
  readonly ready: Promise<void>;
  readonly #worker: Worker;
  readonly #waiting: Waiting[] = [];

  constructor(settings: PoolSettings) {
    this.#worker = new Worker(threadEntry(new URL('./range-worker.js', import.meta.url)), {
      workerData: settings,
      resourceLimits: { maxYoungGenerationSizeMb: youngMegabytes },
    });
    this.#worker.on('message', (answer) => this.#waiting.shift()!.resolve(answer as never));
    this.#worker.on('error', (mistake) => {
      for (const { reject } of this.#waiting.splice(0)) reject(mistake);
    });
    this.ready = this.#answer();
  }

  ask(question: Question & { readonly kind: 'range' }): Promise<PackedRange>;
  ask(question: Question & { readonly kind: 'rows' }): Promise<FetchedRows>;
  ask(question: Question & { readonly kind: 'fingerprint' }): Promise<string>;
  ask(question: Question): Promise<unknown> {
    // Which rows are wanted is long where many are, and nobody here needs it again.
    this.#worker.postMessage(question, question.kind === 'rows' ? [...memoryOf(question)] : []);
    return this.#answer();
  }

  async close(): Promise<void> {
    await this.#worker.terminate();
  }

  #answer<T>(): Promise<T> {
    return new Promise((resolve, reject) => this.#waiting.push({ resolve: resolve as Waiting['resolve'], reject }));
  }
}

/** The threads that read ranges of files beside the one that asks. */
export class RangePool {
  readonly threads: readonly RangeThread[];

  constructor(count: number, settings: PoolSettings) {
    this.threads = Array.from({ length: count }, () => new RangeThread(settings));
  }

  async close(): Promise<void> {
    await Promise.all(this.threads.map((thread) => thread.close()));
  }
}
