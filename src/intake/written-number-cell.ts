import type { NumberField } from '../record/field.js';
import { type Cell, type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { DraftColumn } from './draft.js';
import { type Fault, fault } from './fault.js';
import { Interner } from './interner.js';
import { faultOfNumber } from './number-cell.js';
import { type BlockRows, readEach } from './row-block.js';
import type { WrittenNumber } from './written-number.js';

/** Reads numbers that are written with their unit, or as texts that stand for them; each distinct text is looked at once. */
export class WrittenNumberCell implements Cell {
  readonly column: DraftColumn;
  readonly #field: NumberField;
  readonly #missing: MissingTexts;
  readonly #readText: (text: string) => WrittenNumber | null;
  readonly #absent: Fault;
  readonly #raw = new Interner();
  readonly #values: number[] = [Number.NaN];
  readonly #faults: Fault[] = [fault.none];

  /** @param readText the number that a text is; null for one that stands for missing */
  constructor(
    column: DraftColumn,
    field: NumberField,
    missing: MissingTexts,
    readText: (text: string) => WrittenNumber | null,
  ) {
    this.column = column;
    this.#field = field;
    this.#missing = missing;
    this.#readText = readText;
    this.#absent = field.required ? fault.missingValue : fault.none;
  }

  readMany(position: number, rows: BlockRows, faults: Uint8Array): boolean {
    return readEach(this, position, rows, faults);
  }

  timesMissing(): ReadonlyMap<string, number> {
    return this.#missing.times();
  }

  countMissing(bytes: Uint8Array, cellStart: number, cellEnd: number, times: number): void {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    this.#missing.has(bytes, start, trimmedEnd(bytes, start, cellEnd), times);
  }

  read(bytes: Uint8Array, cellStart: number, cellEnd: number, row: number): Fault {
    this.column.values[row] = Number.NaN;
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end)) return this.#absent;
    const raw = this.#raw.codeOf(bytes, start, end);
    if (raw === this.#values.length) this.#learn(this.#raw.textOf(raw));
    this.column.values[row] = this.#values[raw]!;
    return this.#faults[raw]!;
  }

  #learn(text: string): void {
    const read = this.#readText(text);
    if (read === null) {
      this.#faults.push(this.#absent);
      this.#values.push(Number.NaN);
      return;
    }
    const found = 'fault' in read ? read.fault : faultOfNumber(read.value, this.#field);
    this.#faults.push(found);
    this.#values.push('value' in read && found === fault.none ? read.value : Number.NaN);
  }
}
