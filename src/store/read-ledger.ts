import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Problem, wholeFile } from '../problem/problem.js';
import { type NumberColumn, numberColumn, type TextColumn, textColumn } from '../record/column.js';
import { describeStore } from './find-store.js';
import { delimitedRows } from './read-delimited.js';
import { readSteadily } from './steady-reading.js';
import { storeFiles } from './store-description.js';

/** A ledger by columns: one row a problem. */
export interface Ledger {
  readonly rowCount: number;
  readonly file: TextColumn;
  readonly line: NumberColumn;
  /** The column's heading; missing for the row as a whole. */
  readonly column: TextColumn;
  /** The cell as it stood; missing for an empty one. */
  readonly seen: TextColumn;
  readonly code: TextColumn;
  readonly reason: TextColumn;
  readonly remedy: TextColumn;
}

/** What a store holds on rows set aside and rows noted, or the problems for which it cannot be read. */
export type LedgerReading =
  | { readonly setAside: Ledger; readonly notes: Ledger }
  | { readonly problems: readonly Problem[] };

const width = 7;

/** The ledger in a text; null where it is none. */
function ledgerFrom(text: string): Ledger | null {
  const rows = delimitedRows(text);
  if (rows === null || rows.some(({ length }) => length !== width)) return null;
  const cells = (position: number) => rows.slice(1).map((row) => (row[position] === '' ? null : row[position]!));
  return {
    rowCount: rows.length - 1,
    file: textColumn(cells(0)),
    line: numberColumn(cells(1).map(Number)),
    column: textColumn(cells(2)),
    seen: textColumn(cells(3)),
    code: textColumn(cells(4)),
    reason: textColumn(cells(5)),
    remedy: textColumn(cells(6)),
  };
}

/** The ledgers of a store: the problems that set rows aside, and the notes on rows that were kept. */
export async function readLedger(folder: string): Promise<LedgerReading> {
  return readSteadily(folder, readLedgerAt);
}

async function readLedgerAt(folder: string): Promise<LedgerReading> {
  const description = await describeStore(folder);
  if ('code' in description) return { problems: [description] };
  const ledgers: Ledger[] = [];
  const problems: Problem[] = [];
  for (const name of [storeFiles.setAside, storeFiles.notes]) {
    const path = join(folder, name);
    const text = await readFile(path, 'utf8').catch(() => null);
    const ledger = text === null ? null : ledgerFrom(text);
    if (ledger !== null) ledgers.push(ledger);
    else {
      problems.push({
        code: 'damaged-store',
        severity: 'stops',
        place: wholeFile(path),
        seen: text === null ? 'no file' : 'another text',
        wanted: 'the ledger of the import',
        remedy: 'Import the exports again.',
      });
    }
  }
  return problems.length > 0 ? { problems } : { setAside: ledgers[0]!, notes: ledgers[1]! };
}
