import { availableParallelism, freemem } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { bookWith } from '../finding/book/book-with.js';
import { threadEntry } from '../intake/thread-entry.js';
import type { Paper } from '../report/style/paper.js';
import { notebookAsksForPlan, solverFor } from './load-solver.js';
import { type NotebookPage, notebookPage } from './notebook-page.js';
import type { OpenSeason } from './open-season.js';
import { type MadePage, type PageWork, takeNotebook } from './page-work.js';
import type { ChoiceWords, CommandChoice } from './read-choice.js';

/** The notebooks of a run, and what is made of them. */
export interface PagesWanted {
  readonly notebooks: readonly string[];
  readonly season: OpenSeason;
  readonly choice: CommandChoice;
  /** The words that the choice was read from. */
  readonly choiceWords: ChoiceWords;
  readonly paper: Paper | null;
  /** How many threads work beside this one; as many as are worth it where nothing is said. */
  readonly helpers?: number;
  /** Leaves to the others whatever they can make; otherwise this thread takes its share. */
  readonly leavesToOthers?: boolean;
}

/** Pages that are being made: one for each notebook, in their order, whichever is ready first. */
export interface MadePages {
  readonly pages: readonly Promise<NotebookPage>[];
  /** Ends the threads. */
  readonly close: () => Promise<void>;
}

/**
 * Makes pages on several threads. Notebooks that ask for plans stay on this one, whose solver knows a plan that two of them ask
 * for; the others are taken by whoever has time. A page is the same whichever thread made it.
 */
export function makePages(wanted: PagesWanted): MadePages {
  const { notebooks, season, paper } = wanted;
  const places = [...notebooks.keys()];
  const withPlans = places.filter((place) => notebookAsksForPlan(notebooks[place]!));
  const order = places.filter((place) => !withPlans.includes(place));
  const work: PageWork = {
    records: season.records,
    sum: season.book.sum,
    choice: wanted.choiceWords,
    paper,
    notebooks,
    order,
    taken: new Int32Array(new SharedArrayBuffer(4)),
  };
  const awaited = places.map(() => new Awaited<NotebookPage>());
  const fail = (mistake: unknown): void => {
    for (const page of awaited) page.reject(mistake);
  };
  const ownGroups = withPlans.length > 0 ? order.length : order.length - 1;
  const helpers = Math.min(wanted.helpers ?? worthHelpers(season), ownGroups);
  const workers = Array.from({ length: Math.max(0, helpers) }, () => {
    const worker = new Worker(threadEntry(new URL('./page-thread.js', import.meta.url)), { workerData: work });
    worker.on('message', ({ place, page }: MadePage) => awaited[place]!.resolve(page));
    worker.on('error', fail);
    return worker;
  });
  makeOwn(wanted, withPlans, work, (place, page) => awaited[place]!.resolve(page)).catch(fail);
  return {
    pages: awaited.map(({ promise }) => promise),
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

/** Makes what this thread alone can make, then its share of the others; between two pages others are heard. */
async function makeOwn(
  { notebooks, season, choice, paper, leavesToOthers }: PagesWanted,
  withPlans: readonly number[],
  work: PageWork,
  made: (place: number, page: NotebookPage) => void,
): Promise<void> {
  const solver = await solverFor(withPlans.map((place) => notebooks[place]!));
  const planning = solver === undefined ? season.book : bookWith(season.book, { solver });
  for (const place of withPlans) {
    await setImmediate();
    made(place, notebookPage(notebooks[place]!, planning, choice, paper));
  }
  if (leavesToOthers === true) return;
  for (let place = takeNotebook(work); place !== null; place = takeNotebook(work)) {
    await setImmediate();
    made(place, notebookPage(notebooks[place]!, season.book, choice, paper));
  }
}

/** Below this many inspections a page is made sooner than a thread has started. */
const worthHelping = 20_000;

/** More threads would mostly wait for the longest page. */
const mostHelpers = 3;

/** What a thread takes to make pages, measured: so much for the program, and so much for each inspection with its checks. */
const memoryOfThread = { program: 200e6, inspection: 5e3 };

/** How many threads the processors, the memory that is free and the size of a season are good for, beside this one. */
function worthHelpers({ records }: OpenSeason): number {
  const { rowCount } = records.inspections;
  if (rowCount < worthHelping) return 0;
  const room = Math.floor(freeMemory() / 2 / (memoryOfThread.program + rowCount * memoryOfThread.inspection));
  return Math.min(availableParallelism() - 1, mostHelpers, Math.max(0, room - 1));
}

/** Bytes that this process may still take, of the machine or of what it is held to. */
function freeMemory(): number {
  const limit = process.constrainedMemory();
  const within = limit > 0 ? limit - process.memoryUsage.rss() : Number.POSITIVE_INFINITY;
  return Math.min(freemem(), within);
}

/** A value that comes later; a mistake that nobody waits for any more is no mistake of its own. */
class Awaited<Value> {
  readonly promise: Promise<Value>;
  resolve: (value: Value) => void = () => {};
  reject: (mistake: unknown) => void = () => {};

  constructor() {
    this.promise = new Promise((resolve, reject) => {
      this.resolve = resolve;
      this.reject = reject;
    });
    this.promise.catch(() => {});
  }
}
