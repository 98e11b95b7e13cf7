import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { TableName } from '../record/field.js';
import type { ImportSum } from '../record/file-sum.js';
import type { Records, RecordTable } from '../record/records.js';
import { tables } from '../record/tables.js';
import { tableFromArrow } from './arrow-table.js';
import { describeStore } from './find-store.js';
import { readSteadily } from './steady-reading.js';
import { tableFile } from './store-description.js';

/** The records of a store with the account of their import, or the problems for which it cannot be read. */
export type StoreReading =
  | { readonly records: Records; readonly sum: ImportSum }
  | { readonly problems: readonly Problem[] };

function damaged(path: string, seen: string): Problem {
  return {
    code: 'damaged-store',
    severity: 'stops',
    place: wholeFile(path),
    seen,
    wanted: 'the table as it was stored',
    remedy: 'Import the exports again.',
  };
}

/** Bytes whose first lies where eight-byte numbers may begin, as Arrow's buffers need it. */
function aligned(bytes: Uint8Array): Uint8Array {
  return bytes.byteOffset % 8 === 0 ? bytes : Uint8Array.from(bytes);
}

/** All bytes of a file, in memory that threads can share. */
async function sharedBytes(path: string): Promise<Uint8Array> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    const bytes = new Uint8Array(new SharedArrayBuffer(size));
    let filled = 0;
    while (filled < size) {
      const { bytesRead } = await file.read(bytes, filled, size - filled, filled);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
    return bytes.subarray(0, filled);
  } finally {
    await file.close();
  }
}

/**
 * Reads a store whole. Columns lie in the bytes of its files, without a copy, except moments; those bytes are shared with any
 * thread that the records are sent to.
 */
export async function readStore(folder: string): Promise<StoreReading> {
  return readSteadily(folder, readStoreAt);
}

async function readStoreAt(folder: string): Promise<StoreReading> {
  const description = await describeStore(folder);
  if ('code' in description) return { problems: [description] };
  const problems: Problem[] = [];
  const records = {} as Record<TableName, RecordTable>;
  for (const definition of tables) {
    const path = join(folder, tableFile(definition.name));
    const stored = description.tables[definition.name];
    const bytes = await sharedBytes(path).catch(() => null);
    if (bytes === null) {
      problems.push(damaged(path, 'no file'));
      continue;
    }
    if (bytes.length !== stored.bytes) {
      problems.push(damaged(path, `${bytes.length} bytes where ${stored.bytes} were stored`));
      continue;
    }
    const fingerprint = description.files?.[tableFile(definition.name)];
    if (fingerprint !== undefined && fingerprint !== createHash('sha256').update(bytes).digest('hex')) {
      problems.push(damaged(path, 'other bytes than were stored'));
      continue;
    }
    try {
      records[definition.name] = tableFromArrow(definition, aligned(bytes), stored.rows);
    } catch (mistake) {
      problems.push(damaged(path, mistake instanceof Error ? mistake.message : 'no Arrow file'));
    }
  }
  return problems.length > 0 ? { problems } : { records, sum: description.sum };
}
