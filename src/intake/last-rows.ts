import type { ReadingRequest } from './read-file.js';
import { met, RecordScanner } from './record-scanner.js';
import { openSource } from './source/open-source.js';

/** Where in a file's text its last rows begin, that many of them; the file is gone through once for it. */
export async function lastRowsFrom(request: ReadingRequest, width: number, count: number): Promise<number> {
  const { from, file, rule, chunk } = request;
  const source = await openSource(from, file, rule, chunk);
  try {
    const scanner = new RecordScanner(rule.dialect, chunk);
    scanner.width = width;
    const starts: number[] = [];
    for (;;) {
      const state = scanner.next();
      if (state === met.more) scanner.filled(await source.read(scanner.room()));
      else if (state !== met.row) break;
      else {
        starts.push(scanner.base + scanner.recordStart);
        if (starts.length > count) starts.shift();
      }
    }
    return starts[0] ?? Number.POSITIVE_INFINITY;
  } finally {
    await source.close();
  }
}
