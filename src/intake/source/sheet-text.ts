import { mostUnpacked } from './archive.js';
import type { MergedCells, SheetContext } from './sheet-rows.js';
import { readSheetRows } from './sheet-rows.js';
import { SourceError } from './text-source.js';
import { readFormats, readSharedStrings, type Sheet, type Workbook, type WorkbookParts } from './workbook.js';

const pieceLength = 1 << 16;

/** A sheet as delimited text, and its cells that were merged. */
export interface SheetText {
  readonly text: Uint8Array;
  readonly merged: readonly MergedCells[];
}

/** How a sheet becomes text. */
export interface SheetTextSettings {
  readonly decimalMark: string;
  /** Down to which line cells merged with a heading share it. */
  readonly headerLines: number;
  /** Whether the text of cells merged below holds in each of their rows. */
  readonly spreadsMerged: boolean;
  readonly most?: number;
}

function quoted(cell: string): string {
  return /[",\r\n]/u.test(cell) || /^\s|\s$/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function tooLarge(most: number): SourceError {
  const wanted = `at most ${Math.floor(most / 1_048_576)} MiB of text`;
  return new SourceError('too-large-unpacked', 'more text than that', wanted, 'Look whether it is the right sheet.');
}

/** Rows held until the merged cells are known, which stand behind them all; `length` counts their letters. */
class HeldRows {
  readonly rows: (readonly string[])[] = [];
  #length = 0;
  readonly #most: number;

  constructor(lines: number, most: number) {
    this.rows = Array.from({ length: lines }, () => []);
    this.#most = most;
  }

  put(row: number, cells: readonly string[]): void {
    while (this.rows.length < row) this.rows.push([]);
    this.rows[row - 1] = cells;
    this.#grow(cells.reduce((sum, cell) => sum + cell.length + 1, 0));
  }

  /** Gives the text of merged cells to each of them, to the right in the header's lines only. */
  spread({ fromRow, toRow, fromColumn, toColumn }: MergedCells, headerLines: number): void {
    const text = this.rows[fromRow - 1]?.[fromColumn];
    if (text === undefined || text === '') return;
    for (let row = fromRow; row <= Math.min(toRow, this.rows.length); row++) {
      const cells = [...this.rows[row - 1]!];
      for (let column = fromColumn; column <= (row <= headerLines ? toColumn : fromColumn); column++) {
        while (cells.length <= column) cells.push('');
        cells[column] = text;
        this.#grow(text.length + 1);
      }
      this.rows[row - 1] = cells;
    }
  }

  #grow(letters: number): void {
    this.#length += letters;
    if (this.#length > this.#most) throw tooLarge(this.#most);
  }
}

/**
 * A sheet as delimited text: commas, double quotes, and one line for each row of the sheet, blank ones too, so that lines are
 * the sheet's row numbers. Cells merged within the header lines each get the merged text; below them each row of merged
 * cells gets it in their first column, where it spreads, and none to the right: the columns there mean something else.
 */
export async function sheetText(
  parts: WorkbookParts,
  workbook: Workbook,
  sheet: Sheet,
  settings: SheetTextSettings,
): Promise<SheetText> {
  const { headerLines, spreadsMerged, decimalMark } = settings;
  const most = settings.most ?? mostUnpacked;
  const strings = await readSharedStrings(parts, workbook.stringsPart);
  const formats = await readFormats(parts, workbook.stylesPart);
  const context: SheetContext = { strings, formats, base: workbook.base, decimalMark };
  const held = new HeldRows(headerLines, most);
  const pieces: Uint8Array[] = [];
  let text = '';
  let length = 0;
  let line = headerLines;
  const flush = () => {
    const piece = Buffer.from(text, 'utf8');
    length += piece.length;
    if (length > most) throw tooLarge(most);
    pieces.push(piece);
    text = '';
  };
  const write = (number: number, cells: readonly string[]) => {
    text += '\n'.repeat(number - line - 1);
    line = number;
    // A row of one blank cell is a blank row.
    text += `${cells.map(quoted).join(',')}\n`;
    if (text.length > pieceLength) flush();
  };
  const merged = await readSheetRows(sheet.part, parts.bytes(sheet.part), context, (number, cells) => {
    if (spreadsMerged || number <= headerLines) held.put(number, cells);
    else write(number, cells);
  });
  flush();
  const below = pieces.splice(0);
  line = 0;
  for (const area of merged) held.spread(area, headerLines);
  for (const [index, cells] of held.rows.entries()) write(index + 1, cells);
  flush();
  return { text: Buffer.concat([...pieces, ...below]), merged };
}
