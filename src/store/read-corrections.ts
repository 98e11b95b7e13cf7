import { isUtf8 } from 'node:buffer';
import { readFile } from 'node:fs/promises';
import type { Correction } from '../intake/mending/mending.js';
import { inTable, type Problem, wholeFile } from '../problem/problem.js';
import { delimitedRowsWithLines } from './read-delimited.js';

/** The corrections in a file that a person made from a ledger, or what is wrong with it. */
export interface CorrectionReading {
  readonly corrections: readonly Correction[];
  readonly problems: readonly Problem[];
}

const wanted = 'a copy of set-aside.csv with a column "mended", or of set-aside-rows.csv';

function stopped(path: string, code: string, seen: string, remedy: string): CorrectionReading {
  const problem: Problem = { code, severity: 'stops', place: wholeFile(path), seen, wanted, remedy };
  return { corrections: [], problems: [problem] };
}

/**
 * Reads a file of corrections. In a copy of `set-aside.csv` with a column `mended` added, each cell of it that is filled is
 * what should stand in the place of the cell named by file, line and column; lines left blank are passed over. In a copy of
 * `set-aside-rows.csv` the rows themselves are corrected; rows left as they were are passed over later. Other columns are
 * not looked at.
 */
export async function readCorrections(path: string): Promise<CorrectionReading> {
  const bytes = await readFile(path).catch(() => null);
  if (bytes === null) return stopped(path, 'no-such-file', 'no readable file', 'Look at the path given to --mended.');
  if (!isUtf8(bytes)) return stopped(path, 'not-utf-8', 'bytes that are no UTF-8', 'Save it as UTF-8.');
  const rows = delimitedRowsWithLines(bytes.toString('utf8'));
  const save = 'Save it with commas between its cells, and the header as it was.';
  if (rows === null || rows.length === 0) return stopped(path, 'not-corrections', 'another text', save);
  const [header, ...lines] = rows;
  const at = (name: string) => header!.cells.findIndex((cell) => cell.trim().toLowerCase() === name);
  const [file, line, column, mended, row] = ['file', 'line', 'column', 'mended', 'row'].map(at) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const isOfCells = column >= 0 && mended >= 0;
  if (file < 0 || line < 0 || (!isOfCells && row < 0)) {
    return stopped(path, 'not-corrections', `the headings ${header!.cells.join(', ')}`, save);
  }
  const textAt = isOfCells ? mended : row;
  const corrections: Correction[] = [];
  const problems: Problem[] = [];
  for (const { cells, line: own } of lines) {
    const text = cells[textAt] ?? '';
    if (text.trim() === '') continue;
    const origin = Number(cells[line]);
    const of = cells[file];
    const under = isOfCells ? cells[column] : null;
    const isWhole = cells.length <= header!.cells.length && of !== undefined && under !== undefined;
    if (isWhole && Number.isInteger(origin) && origin > 0) {
      corrections.push({
        place: inTable(path, own, textAt + 1, header!.cells[textAt]!),
        file: of,
        line: origin,
        column: under,
        text,
      });
      continue;
    }
    problems.push({
      code: 'not-corrections',
      severity: 'stops',
      place: inTable(path, own, null, null),
      seen: isWhole
        ? `the line "${cells[line] ?? ''}"`
        : `${cells.length} cells under ${header!.cells.length} headings`,
      wanted: 'a file, a line and what was mended',
      remedy: 'Take the line from the ledger again.',
    });
  }
  return { corrections, problems };
}
