import type { Column, NumberColumn, TextColumn } from '../../record/column.js';
import type { Field } from '../../record/field.js';
import type { RecordTable } from '../../record/records.js';
import { type DraftColumn, noDay } from '../draft.js';

/** Rows of one stored table that came from one file, from `start` up to but without `end`. */
export interface Slice {
  readonly table: RecordTable;
  readonly start: number;
  readonly end: number;
}

/** The rows of a table that came from the file at that place among its files. */
export function sliceOf(table: RecordTable, part: number): Slice {
  const { fileOf } = table.origin;
  // Rows stand in the order of their files.
  const firstFrom = (least: number) => {
    let low = 0;
    let high = table.rowCount;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (fileOf[middle]! < least) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return { table, start: firstFrom(part), end: firstFrom(part + 1) };
}

/** Puts stored values back into the columns of drafts; a text is numbered once, however many files have it. */
export class ColumnRecall {
  readonly #numbers = new Map<Column, Uint32Array>();

  /** Puts the value of each row of a slice at its place in the draft. */
  put(slice: Slice, places: Uint32Array, to: DraftColumn): void {
    const stored = slice.table.columns.get(to.field.name)!;
    if (stored.kind === 'text') this.#putTexts(stored, slice, places, to);
    else putNumbers(stored, slice, places, to);
  }

  #putTexts(stored: TextColumn, { start, end }: Slice, places: Uint32Array, to: DraftColumn): void {
    const numbers = this.#numbersOf(stored);
    for (let row = start; row < end; row++) {
      const code = stored.codes[row]!;
      if (code !== 0 && numbers[code] === 0) numbers[code] = numberOf(to, stored.dictionary[code]!);
      to.values[places[row - start]!] = numbers[code]!;
    }
  }

  #numbersOf(stored: TextColumn): Uint32Array {
    let numbers = this.#numbers.get(stored);
    if (numbers === undefined) {
      numbers = new Uint32Array(stored.dictionary.length);
      this.#numbers.set(stored, numbers);
    }
    return numbers;
  }
}

function numberOf({ field, interner }: DraftColumn, text: string): number {
  if (interner !== null) return interner.codeOfText(text);
  const place = codesOf(field).indexOf(text) + 1;
  if (place === 0) throw new Error(`${text} is no code of ${field.name}`);
  return place;
}

function codesOf(field: Field): readonly string[] {
  return field.type === 'code' ? field.codes.codes.map(({ code }) => code) : [];
}

function putNumbers(stored: NumberColumn, { start, end }: Slice, places: Uint32Array, to: DraftColumn): void {
  const none = to.field.type === 'date' ? noDay : Number.NaN;
  for (let row = start; row < end; row++) {
    to.values[places[row - start]!] = stored.missing?.[row] === 1 ? none : stored.values[row]!;
  }
}
