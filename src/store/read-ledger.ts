import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { plainDialect } from '../intake/read-dialect.js';
import { met, RecordScanner } from '../intake/record-scanner.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import { type NumberColumn, numberColumn, type TextColumn, textColumn } from '../record/column.js';
import { honestText } from './delimited.js';
import { describeStore } from './find-store.js';
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

function ledgerFrom(bytes: Uint8Array): Ledger {
  const scanner = new RecordScanner(plainDialect, Math.max(1, bytes.length));
  scanner.room().set(bytes);
  scanner.filled(bytes.length);
  scanner.filled(0);
  scanner.next();
  const cells: (string | null)[][] = Array.from({ length: width }, () => []);
  while (scanner.next() === met.row) {
    for (let position = 0; position < width; position++) {
      const text = position < scanner.count ? scanner.cellText(position) : '';
      cells[position]!.push(text === '' ? null : honestText(text));
    }
  }
  const [file, line, column, seen, code, reason, remedy] = cells as [
    (string | null)[],
    (string | null)[],
    (string | null)[],
    (string | null)[],
    (string | null)[],
    (string | null)[],
    (string | null)[],
  ];
  return {
    rowCount: file.length,
    file: textColumn(file),
    line: numberColumn(line.map((text) => (text === null ? null : Number(text)))),
    column: textColumn(column),
    seen: textColumn(seen),
    code: textColumn(code),
    reason: textColumn(reason),
    remedy: textColumn(remedy),
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
    const bytes = await readFile(path).catch(() => null);
    if (bytes !== null) ledgers.push(ledgerFrom(bytes));
    else {
      problems.push({
        code: 'damaged-store',
        severity: 'stops',
        place: wholeFile(path),
        seen: 'no file',
        wanted: 'the ledger of the import',
        remedy: 'Import the exports again.',
      });
    }
  }
  return problems.length > 0 ? { problems } : { setAside: ledgers[0]!, notes: ledgers[1]! };
}
