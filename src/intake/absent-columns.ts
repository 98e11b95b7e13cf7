import { type CodeArray, type Column, codeArray } from '../record/column.js';
import { DictionaryBytes, heldColumn } from '../record/dictionary-bytes.js';
import type { Field } from '../record/field.js';

/**
 * The columns of a table that no file gave: every value is missing. They share their arrays, so that a field which nobody
 * records takes no memory of its own.
 */
export class AbsentColumns {
  readonly #rowCount: number;
  /** By bytes a code. */
  readonly #codes = new Map<number, CodeArray>();
  #numbers: Float64Array | null = null;
  #days: Int32Array | null = null;
  #missing: Uint8Array | null = null;

  constructor(rowCount: number) {
    this.#rowCount = rowCount;
  }

  /**
   * The column of a field.
   * @param texts the texts that its codes would stand for, where a table that it refers to has some
   */
  column(field: Field, texts = DictionaryBytes.of([''])): Column {
    switch (field.type) {
      case 'code': {
        const dictionary = ['', ...field.codes.codes.map(({ code }) => code)];
        return { kind: 'text', codes: this.codes(dictionary.length), dictionary };
      }
      case 'text':
      case 'pseudonym':
      case 'reference':
        return heldColumn(this.codes(texts.size), texts);
      default:
        return { kind: 'number', values: this.#values(field.type === 'date'), missing: this.#allMissing() };
    }
  }

  /** Zeros, one a row, in an array that holds codes of so many texts. */
  codes(dictionarySize: number): CodeArray {
    const { BYTES_PER_ELEMENT: width } = codeArray(0, dictionarySize);
    const codes = this.#codes.get(width) ?? codeArray(this.#rowCount, dictionarySize);
    this.#codes.set(width, codes);
    return codes;
  }

  #values(areDays: boolean): Float64Array | Int32Array {
    if (areDays) this.#days ??= new Int32Array(this.#rowCount);
    else this.#numbers ??= new Float64Array(this.#rowCount);
    return areDays ? this.#days! : this.#numbers!;
  }

  #allMissing(): Uint8Array | null {
    if (this.#rowCount > 0) this.#missing ??= new Uint8Array(this.#rowCount).fill(1);
    return this.#missing;
  }
}
