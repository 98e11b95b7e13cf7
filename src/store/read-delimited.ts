import { readFile } from 'node:fs/promises';
import { honestText } from './delimited.js';

const cell = /("(?:[^"]|"")*"|[^,\r\n"]*)(,|\r\n|\n|\r|$)/uy;

/**
 * The rows of an RFC 4180 text, its header first, every cell as it was before it was made inert; null where a quote stands
 * in the wrong place. A byte order mark, blank lines, and any of CRLF, LF and CR are taken, as spreadsheets leave them.
 */
export function delimitedRows(text: string): readonly (readonly string[])[] | null {
  const rows: string[][] = [];
  let row: string[] = [];
  cell.lastIndex = text.startsWith('\uFEFF') ? 1 : 0;
  while (cell.lastIndex < text.length || row.length > 0) {
    const met = cell.exec(text);
    if (met === null) return null;
    const [, raw, end] = met as unknown as readonly [string, string, string];
    row.push(honestText(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw));
    if (end === ',') continue;
    if (row.length > 1 || row[0] !== '') rows.push(row);
    row = [];
    if (end === '') break;
  }
  return rows;
}

/** The rows of a file that the store itself wrote, its header left off; throws where it is none. */
export async function ownRows(path: string): Promise<readonly (readonly string[])[]> {
  const rows = delimitedRows(await readFile(path, 'utf8'));
  if (rows === null) throw new Error(`${path} is not as it was written`);
  return rows.slice(1);
}
