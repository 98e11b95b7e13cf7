import { readFile } from 'node:fs/promises';
import { honestText } from './delimited.js';

/** A row of delimited text, and the physical line on which it begins, from 1. */
export interface DelimitedRow {
  readonly cells: readonly string[];
  readonly line: number;
}

const cell = /("(?:[^"]|"")*"|[^,\r\n"]*)(,|\r\n|\n|\r|$)/uy;
const lineEnd = /\r\n|\n|\r/gu;

/**
 * The rows of an RFC 4180 text, its header first, every cell as it was before it was made inert; null where a quote stands
 * in the wrong place. A byte order mark, blank lines, and any of CRLF, LF and CR are taken, as spreadsheets leave them.
 */
export function delimitedRowsWithLines(text: string): readonly DelimitedRow[] | null {
  const rows: DelimitedRow[] = [];
  let cells: string[] = [];
  let line = 1;
  let first = 1;
  cell.lastIndex = text.startsWith('\uFEFF') ? 1 : 0;
  while (cell.lastIndex < text.length || cells.length > 0) {
    const met = cell.exec(text);
    if (met === null) return null;
    const [, raw, end] = met as unknown as readonly [string, string, string];
    if (raw.startsWith('"')) line += raw.match(lineEnd)?.length ?? 0;
    cells.push(honestText(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw));
    if (end === ',') continue;
    if (cells.length > 1 || cells[0] !== '') rows.push({ cells, line: first });
    cells = [];
    first = ++line;
    if (end === '') break;
  }
  return rows;
}

/** The rows alone. */
export function delimitedRows(text: string): readonly (readonly string[])[] | null {
  return delimitedRowsWithLines(text)?.map(({ cells }) => cells) ?? null;
}

/** The rows of a file that the store itself wrote, its header left off; throws where it is none. */
export async function ownRows(path: string): Promise<readonly (readonly string[])[]> {
  const rows = delimitedRows(await readFile(path, 'utf8'));
  if (rows === null) throw new Error(`${path} is not as it was written`);
  return rows.slice(1);
}
