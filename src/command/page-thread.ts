import { type MessagePort, parentPort, workerData } from 'node:worker_threads';
import { openBook } from '../finding/book.js';
import { notebookPage } from './notebook-page.js';
import { type MadePage, type PageWork, takeNotebook } from './page-work.js';
import { readChoice } from './read-choice.js';

const port = parentPort as MessagePort;
const work = workerData as PageWork;
const book = openBook(work.records, work.sum);
const choice = readChoice(work.choice, book);
if ('problems' in choice) throw new Error('a choice was read in one thread and not in another');

for (let place = takeNotebook(work); place !== null; place = takeNotebook(work)) {
  const page = notebookPage(work.notebooks[place]!, book, choice, work.paper);
  port.postMessage({ place, page } satisfies MadePage);
}
