import { mostUnpacked } from './archive.js';
import type { MergedCells, SheetContext } from './sheet-rows.js';
import { readSheetRows } from './sheet-rows.js';
import { SourceError } from './text-source.js';
import { readFormats, readSharedStrings, type Sheet, type Workbook, type WorkbookParts } from './workbook.js';

const pieceLength = 1 << 16;

function quoted(cell: string): string {
  return /[",\r\n]/u.test(cell) || /^\s|\s$/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function spread(rows: (readonly string[])[], merged: readonly MergedCells[]): void {
  for (const { fromRow, toRow, fromColumn, toColumn } of merged) {
    const text = rows[fromRow - 1]?.[fromColumn];
    if (text === undefined || text === '') continue;
    for (let row = fromRow; row <= Math.min(toRow, rows.length); row++) {
      const cells = [...rows[row - 1]!];
      for (let column = fromColumn; column <= toColumn; column++) {
        while (cells.length <= column) cells.push('');
        cells[column] = text;
      }
      rows[row - 1] = cells;
    }
  }
}

/**
 * A sheet as delimited text: commas, double quotes, and one line for each row of the sheet, blank ones too, so that lines are
 * the sheet's row numbers. Cells merged within the header lines each get the merged text.
 */
export async function sheetText(
  parts: WorkbookParts,
  workbook: Workbook,
  sheet: Sheet,
  settings: { readonly decimalMark: string; readonly headerLines: number; readonly most?: number },
): Promise<Uint8Array> {
  const most = settings.most ?? mostUnpacked;
  const strings = await readSharedStrings(parts, workbook.stringsPart);
  const formats = await readFormats(parts, workbook.stylesPart);
  const context: SheetContext = { strings, formats, base: workbook.base, decimalMark: settings.decimalMark };
  const head: (readonly string[])[] = Array.from({ length: settings.headerLines }, () => []);
  const pieces: Uint8Array[] = [];
  let text = '';
  let length = 0;
  let line = settings.headerLines;
  const flush = () => {
    const piece = Buffer.from(text, 'utf8');
    length += piece.length;
    if (length > most) {
      const wanted = `at most ${Math.floor(most / 1_048_576)} MiB of text`;
      throw new SourceError('too-large-unpacked', 'more text than that', wanted, 'Look whether it is the right sheet.');
    }
    pieces.push(piece);
    text = '';
  };
  const merged = await readSheetRows(sheet.part, parts.bytes(sheet.part), context, (number, cells) => {
    if (number <= head.length) {
      head[number - 1] = cells;
      return;
    }
    text += '\n'.repeat(number - line - 1);
    line = number;
    // A row of one blank cell is a blank row.
    text += `${cells.map(quoted).join(',')}\n`;
    if (text.length > pieceLength) flush();
  });
  flush();
  spread(head, merged);
  const top = head.map((cells) => `${cells.map(quoted).join(',')}\n`).join('');
  return Buffer.concat([Buffer.from(top, 'utf8'), ...pieces]);
}
