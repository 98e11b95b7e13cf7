import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { type MessagePort, parentPort, workerData } from 'node:worker_threads';
import type { Crosswalk } from '../crosswalk.js';
import { readCrosswalk } from '../read-crosswalk.js';
import { fetchRows } from '../refetch/fetch-rows.js';
import { ZoneClock } from '../time-zone.js';
import { memoryOf } from './packed-range.js';
import type { PoolSettings, Question } from './range-pool.js';
import { readRange } from './read-range.js';

const port = parentPort as MessagePort;
const { crosswalks: texts, key } = workerData as PoolSettings;
const crosswalks = new Map<number, Crosswalk>();
const clocks = new Map<string, ZoneClock>();

function crosswalkAt(place: number): Crosswalk {
  const crosswalk = crosswalks.get(place) ?? readCrosswalk('', texts[place]!).crosswalk;
  if (crosswalk === null) throw new Error('a crosswalk was read in one thread and not in another');
  crosswalks.set(place, crosswalk);
  return crosswalk;
}

function clockOf(zone: string): ZoneClock {
  const clock = clocks.get(zone) ?? new ZoneClock(zone);
  clocks.set(zone, clock);
  return clock;
}

function fingerprint(path: string): string {
  const hash = createHash('sha256');
  const bytes = new Uint8Array(1 << 20);
  const file = openSync(path, 'r');
  try {
    for (let count = readSync(file, bytes); count > 0; count = readSync(file, bytes)) {
      hash.update(bytes.subarray(0, count));
    }
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}

async function answer(question: Question): Promise<void> {
  if (question.kind === 'fingerprint') port.postMessage(fingerprint(question.path));
  else if (question.kind === 'rows') {
    const fetched = await fetchRows(question.wanted);
    port.postMessage(fetched, [...memoryOf(fetched)]);
  } else {
    const rule = crosswalkAt(question.crosswalk).files[question.rule]!;
    const range = await readRange(question.task, { rule, key, clockOf, texts: null }, () => {});
    port.postMessage(range, [...memoryOf(range)]);
  }
}

let last: Promise<void> = Promise.resolve();
port.on('message', (question: Question) => {
  last = last.then(() => answer(question));
});
port.postMessage(null);
