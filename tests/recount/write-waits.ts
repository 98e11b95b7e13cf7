import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeExports } from '../../datasets/quillwater/generate.js';
import { recountedRecords } from './records.js';
import { waitsFile } from './waits-file.js';

/** Writes the recounted waits as a file for `made-with-r.R`. Words: the file. */
const [path] = process.argv.slice(2);
if (path === undefined) throw new Error('name the file to write: npx tsx tests/recount/write-waits.ts FILE');
const exports = mkdtempSync(join(tmpdir(), 'recount-'));
await writeExports(exports);
writeFileSync(path, await waitsFile(await recountedRecords(exports)));
rmSync(exports, { recursive: true });
