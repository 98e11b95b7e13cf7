import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { LedgerLine } from '../intake/ledger.js';
import type { PastImport, PastReadings } from '../intake/recall/past-import.js';
import type { TableName } from '../record/field.js';
import type { Records, RecordTable } from '../record/records.js';
import { tables } from '../record/tables.js';
import { emptyTable, tableFromArrow } from './arrow-table.js';
import { describeStore } from './find-store.js';
import { ownRows } from './read-delimited.js';
import { readStore } from './read-store.js';
import { asideFile, storeFiles, tableFile } from './store-description.js';

/** What `readings.json` says: what was read, and how many rows of each table stand aside. */
export interface StoredReadings extends PastReadings {
  readonly doubleEntries: PastImport['doubleEntries'];
  readonly unmatched: PastImport['unmatched'];
  readonly asideRows: Readonly<Record<TableName, number>>;
}

/**
 * The import that a store holds, for the next one to follow; null where there is none that can be followed, so that
 * everything is read anew. Only whoever holds the store may ask: nothing is put in its place meanwhile.
 */
export async function readPast(folder: string): Promise<PastImport | null> {
  const stored = await readStore(folder);
  if ('problems' in stored) return null;
  try {
    if (!(await isAsWritten(folder))) return null;
    const text = await readFile(join(folder, storeFiles.readings), 'utf8');
    const { asideRows, ...remembered } = JSON.parse(text) as StoredReadings;
    const aside = await readAside(folder, asideRows);
    const setAside = (await ownRows(join(folder, storeFiles.setAside))).map(ledgerLine);
    const notes = (await ownRows(join(folder, storeFiles.notes))).map(ledgerLine);
    const rows = await ownRows(join(folder, storeFiles.setAsideRows));
    const setAsideRows = rows.map(([file, line, row]) => ({ file: file!, line: Number(line), row: row! }));
    return { ...stored, ...remembered, aside, setAside, notes, setAsideRows };
  } catch {
    // What cannot be followed is no loss: the exports themselves are read again.
    return null;
  }
}

/** Whether every file holds what was written into it; the tables were looked at when they were read. */
async function isAsWritten(folder: string): Promise<boolean> {
  const description = await describeStore(folder);
  if ('code' in description) return false;
  const read = new Set(tables.map(({ name }) => tableFile(name)));
  for (const [name, fingerprint] of Object.entries(description.files ?? {})) {
    if (read.has(name)) continue;
    const hash = createHash('sha256');
    for await (const piece of createReadStream(join(folder, name))) hash.update(piece as Buffer);
    if (hash.digest('hex') !== fingerprint) return false;
  }
  return true;
}

function ledgerLine(cells: readonly string[]): LedgerLine {
  const [file, line, column, seen, code, reason, remedy] = cells as unknown as readonly [string, ...string[]];
  return { file, line: Number(line), column: column!, seen: seen!, code: code!, reason: reason!, remedy: remedy! };
}

async function readAside(folder: string, rows: StoredReadings['asideRows']): Promise<Records> {
  const records = {} as Record<TableName, RecordTable>;
  for (const definition of tables) {
    const { name } = definition;
    records[name] =
      rows[name] === 0
        ? emptyTable(definition)
        : tableFromArrow(definition, Uint8Array.from(await readFile(join(folder, asideFile(name)))), rows[name]);
  }
  return records;
}
