import type { NumberFormat } from './number-format.js';
import type { SerialBase } from './serial-date.js';
import { columnOf, numberText, unescaped } from './sheet-cell.js';
import { SourceError } from './text-source.js';
import { readXml } from './xml-events.js';

/** What is needed to read a sheet's cells as text. */
export interface SheetContext {
  readonly strings: readonly string[];
  /** By a cell's style: how its number is shown. */
  readonly formats: readonly NumberFormat[];
  readonly base: SerialBase;
  readonly decimalMark: string;
}

/** Cells joined into one, from row and column to row and column, both from 1 and 0. */
export interface MergedCells {
  readonly fromRow: number;
  readonly toRow: number;
  readonly fromColumn: number;
  readonly toColumn: number;
}

const mostRows = 1_048_576;
const mostColumns = 16_384;

function damaged(said: string): SourceError {
  return new SourceError('damaged-workbook', said, 'a whole .xlsx workbook', 'Save or copy it again.');
}

function readMerged(reference: string): MergedCells | null {
  const [from, to] = reference.split(':');
  const [fromColumn, toColumn] = [columnOf(from ?? ''), columnOf(to ?? from ?? '')];
  if (fromColumn === null || toColumn === null) return null;
  const [fromRow, toRow] = [from, to ?? from].map((address) => Number(/\d+$/u.exec(address ?? '')![0]));
  return { fromRow: fromRow!, toRow: toRow!, fromColumn, toColumn };
}

/** A cell while it is read. */
interface OpenCell {
  readonly type: string;
  readonly style: string | undefined;
  readonly column: number;
  value: string;
  inline: string;
  formula: string;
}

function textOf(cell: OpenCell, context: SheetContext): string {
  const { type, value } = cell;
  if (type === 'inlineStr') return unescaped(cell.inline);
  // A formula that was never computed has no value; its text is no value either, and says so in the ledger.
  if (value === '' && cell.formula !== '') return `=${cell.formula}`;
  if (type === 's') {
    const text = context.strings[Number(value)];
    if (value !== '' && text === undefined) throw damaged(`a cell names text ${value}, which the workbook lacks`);
    return text ?? '';
  }
  if (type === 'str') return unescaped(value);
  if (type === 'b') return value === '1' ? 'TRUE' : value === '0' ? 'FALSE' : value;
  if (type === 'e' || type === 'd') return value;
  const format = context.formats[Number(cell.style ?? 0)] ?? { shows: 'number' };
  return numberText(value, format, context.base, context.decimalMark);
}

/**
 * Reads a sheet row by row: `row` is given each row that the sheet holds with its number from 1 and its cells' texts from the
 * first column on. Gives the merged cells, which stand behind all rows.
 */
export async function readSheetRows(
  name: string,
  chunks: AsyncIterable<Uint8Array>,
  context: SheetContext,
  row: (number: number, cells: readonly string[]) => void,
): Promise<readonly MergedCells[]> {
  const merged: MergedCells[] = [];
  let number = 0;
  let cells: string[] = [];
  let column = 0;
  let cell: OpenCell | null = null;
  let inside: 'value' | 'inline' | 'formula' | null = null;
  let phonetic = false;
  await readXml(name, chunks, {
    open: (tag, attributes) => {
      if (tag === 'row') {
        const next = attributes['r'] === undefined ? number + 1 : Number(attributes['r']);
        if (!Number.isInteger(next) || next <= number || next > mostRows)
          throw damaged(`row ${next} follows ${number}`);
        number = next;
        cells = [];
        column = 0;
      } else if (tag === 'c') {
        const at = attributes['r'] === undefined ? column : columnOf(attributes['r']);
        if (at === null || at < column || at >= mostColumns) throw damaged(`cell ${attributes['r']} in row ${number}`);
        column = at + 1;
        cell = { type: attributes['t'] ?? 'n', style: attributes['s'], column: at, value: '', inline: '', formula: '' };
      } else if (tag === 'v') inside = 'value';
      else if (tag === 'f') inside = 'formula';
      else if (tag === 'rPh') phonetic = true;
      else if (tag === 't' && !phonetic) inside = 'inline';
      else if (tag === 'mergeCell') {
        const area = readMerged(attributes['ref'] ?? '');
        if (area !== null) merged.push(area);
      }
    },
    text: (text) => {
      if (cell !== null && inside !== null) cell[inside] += text;
    },
    close: (tag) => {
      if (tag === 'v' || tag === 'f' || tag === 't') inside = null;
      else if (tag === 'rPh') phonetic = false;
      else if (tag === 'c' && cell !== null) {
        const text = textOf(cell, context);
        if (text !== '') {
          while (cells.length < cell.column) cells.push('');
          cells.push(text);
        }
        cell = null;
      } else if (tag === 'row') row(number, cells);
    },
  });
  return merged;
}
