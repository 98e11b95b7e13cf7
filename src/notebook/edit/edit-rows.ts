import type { Cell } from '../document.js';
import type { WrittenPart } from '../written.js';
import type { Edited } from './document-edit.js';
import { staleCell } from './edit-cell.js';
import { linesOf, withLines } from './text-lines.js';

type Rows = NonNullable<WrittenPart['table']>;

/** The part whose table has a row on that line, with the row's place among the rows (the heads are row 0). */
function rowOn(written: readonly WrittenPart[], line: number): { readonly rows: Rows; readonly at: number } | null {
  for (const { table } of written) {
    if (table === null) continue;
    const at = table.findIndex((row) => row[0]?.line === line);
    if (at >= 0) return { rows: table, at };
  }
  return null;
}

/** A name that no other row has: `new_figure`, `new_figure_2`. */
export function freeName(word: string, taken: ReadonlySet<string>): string {
  const first = `new_${word}`;
  if (!taken.has(first)) return first;
  let at = 2;
  while (taken.has(`${first}_${at}`)) at++;
  return `${first}_${at}`;
}

const starting: ReadonlyMap<string, string> = new Map([
  ['value', '0'],
  ['formula', '0'],
  ['rows', 'inspections'],
]);

/** The text with a new row below that line of a table: a free name, and something that computes, to be changed. */
export function addRow(
  text: string,
  written: readonly WrittenPart[],
  below: number,
  taken: ReadonlySet<string>,
): Edited {
  const found = rowOn(written, below);
  if (found === null) return { refused: staleCell };
  const heads = found.rows[0]!.map((head) => head.text);
  const first = heads[0] ?? '';
  const all = linesOf(text);
  // Below the heads stands the line of hyphens.
  const place = found.at === 0 ? below + 2 : below + 1;
  const pattern = all.lines[found.at === 0 ? below : below - 1]!;
  const widths = widthsOf(pattern);
  const cells = heads.map((head, at) => {
    const cell = at === 0 ? freeName(first, taken) : (starting.get(head) ?? '');
    return cell.padEnd(widths[at] ?? 0);
  });
  return { text: withLines(all, place, place - 1, [`| ${cells.join(' | ')} |`]), line: place };
}

/** How wide the cells of a row are, without the blanks beside their bars. */
function widthsOf(line: string): readonly number[] {
  const inner = line.trim().replace(/^\||\|$/g, '');
  return inner.split(/(?<!\\)\|/).map((cell) => Math.max(0, cell.length - 2));
}

/** The text without one row of a table; the heads stay. */
export function takeRow(text: string, written: readonly WrittenPart[], line: number): Edited {
  const found = rowOn(written, line);
  const all = linesOf(text);
  if (found === null || found.at === 0) return { refused: staleCell };
  return { text: withLines(all, line, line, []), line: line - 1 };
}

/** The text with a row of a table changing places with its neighbour below or above; two lines change. */
export function moveRow(text: string, written: readonly WrittenPart[], line: number, down: boolean): Edited {
  const found = rowOn(written, line);
  if (found === null || found.at === 0) return { refused: staleCell };
  const other: readonly Cell[] | undefined = found.rows[found.at + (down ? 1 : -1)];
  if (other === undefined || (!down && found.at === 1)) {
    return { refused: down ? 'it is the last row of its table' : 'it is the first row of its table' };
  }
  const all = linesOf(text);
  const upper = down ? line : line - 1;
  const swapped = withLines(all, upper, upper + 1, [all.lines[upper]!, all.lines[upper - 1]!]);
  return { text: swapped, line: down ? line + 1 : line - 1 };
}
