import type { NumberField } from '../record/field.js';
import { type Cell, type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { Conversion } from './crosswalk.js';
import type { DraftColumn } from './draft.js';
import { type Fault, fault } from './fault.js';
import { type NumberMarks, plainDigits } from './number-marks.js';
import type { BlockRows } from './row-block.js';
import { converted } from './units.js';

const powers = Array.from({ length: 23 }, (_, exponent) => 10 ** exponent);

/** What is wrong with a number that must fit its field: that it is no whole one, or lies beyond its bounds. */
export function faultOfNumber(value: number, { type, least, most }: NumberField): Fault {
  if (type === 'integer' && !Number.isInteger(value)) return fault.notAWholeNumber;
  return value < least || value > most ? fault.outOfRange : fault.none;
}

/**
 * Reads decimal numbers: a sign, digits, and a decimal mark with digits behind it; thousands marks where they
 * are declared, and no exponents.
 * Up to fifteen digits are exact, since an integer below 2^53 divided by a power of ten up to 10^22 is rounded once.
 */
export class NumberCell implements Cell {
  readonly column: DraftColumn;
  readonly #field: NumberField;
  readonly #missing: MissingTexts;
  readonly #conversion: Conversion | null;
  readonly #decimalByte: number;
  readonly #marks: NumberMarks;
  readonly #absent: Fault;

  constructor(
    column: DraftColumn,
    field: NumberField,
    missing: MissingTexts,
    marks: NumberMarks,
    conversion: Conversion | null,
  ) {
    this.column = column;
    this.#field = field;
    this.#missing = missing;
    this.#decimalByte = marks.decimal.charCodeAt(0);
    this.#marks = marks;
    this.#conversion = conversion;
    this.#absent = field.required ? fault.missingValue : fault.none;
  }

  // A loop of its own: one that other kinds of cells share takes twice the time.
  readMany(position: number, { block, from, to, row }: BlockRows, faults: Uint8Array): boolean {
    const { bytes, width, starts, ends } = block;
    let anyFault = 0;
    for (let at = from; at < to; at++) {
      const place = at * width + position;
      const found = this.read(bytes, starts[place]!, ends[place]!, row + at - from);
      faults[at] = found;
      anyFault |= found;
    }
    return anyFault !== 0;
  }

  timesMissing(): ReadonlyMap<string, number> {
    return this.#missing.times();
  }

  countMissing(bytes: Uint8Array, cellStart: number, cellEnd: number, times: number): void {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    this.#missing.has(bytes, start, trimmedEnd(bytes, start, cellEnd), times);
  }

  read(bytes: Uint8Array, cellStart: number, cellEnd: number, row: number): Fault {
    const { values } = this.column;
    values[row] = Number.NaN;
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end)) return this.#absent;
    if (this.#marks.thousands !== null) return this.#readGrouped(bytes, start, end, row);
    let at = start;
    const negative = bytes[at] === 45;
    if (at < end && (negative || bytes[at] === 43)) at++;
    const firstDigit = at;
    let mantissa = 0;
    let digits = 0;
    let decimals = -1;
    for (; at < end; at++) {
      const byte = bytes[at]!;
      if (byte === this.#decimalByte && decimals < 0 && at > firstDigit) {
        decimals = 0;
        continue;
      }
      const digit = byte - 48;
      if (digit < 0 || digit > 9) return fault.notANumber;
      mantissa = mantissa * 10 + digit;
      if (mantissa > 0) digits++;
      if (decimals >= 0) decimals++;
    }
    if (at === firstDigit || decimals === 0) return fault.notANumber;
    let value = decimals > 0 ? mantissa / powers[Math.min(decimals, 22)]! : mantissa;
    if (digits > 15 || decimals > 22) {
      value = Number(Buffer.from(bytes.slice(firstDigit, end)).toString('latin1').replace(',', '.'));
    }
    if (negative && value !== 0) value = -value;
    return this.#put(value, row);
  }

  #readGrouped(bytes: Uint8Array, start: number, end: number, row: number): Fault {
    const text = Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
    const plain = plainDigits(text, this.#marks);
    return plain === null ? fault.notANumber : this.#put(Number(plain) + 0, row);
  }

  #put(number: number, row: number): Fault {
    const value = this.#conversion === null ? number : converted(number, this.#conversion);
    const found = faultOfNumber(value, this.#field);
    if (found === fault.none) this.column.values[row] = value;
    return found;
  }
}
