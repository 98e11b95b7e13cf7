import { type Cell, type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { CodeMeaning } from './crosswalk.js';
import type { DraftColumn } from './draft.js';
import { type Fault, fault } from './fault.js';
import { Interner } from './interner.js';
import type { BlockRows } from './row-block.js';

/** Reads texts and keys that are taken as they are; an empty text is missing. */
export class TextCell implements Cell {
  readonly column: DraftColumn;
  readonly #missing: MissingTexts;
  readonly #interner: Interner;
  readonly #absent: Fault;

  constructor(column: DraftColumn, missing: MissingTexts) {
    this.column = column;
    this.#missing = missing;
    this.#interner = column.interner!;
    this.#absent = column.field.required ? fault.missingValue : fault.none;
  }

  // A loop of its own: one that other kinds of cells share takes twice the time.
  readMany(position: number, { block, from, to, row }: BlockRows, faults: Uint8Array): boolean {
    const { bytes, width, starts, ends } = block;
    const values = this.column.values as Uint32Array;
    let anyFault = 0;
    let above = -1;
    let code = 0;
    for (let at = from, place = at * width + position, put = row; at < to; at++, place += width, put++) {
      const start = starts[place]!;
      // What lies in the same place is the same text.
      if (start === above && code !== 0) {
        values[put] = code;
        faults[at] = fault.none;
        continue;
      }
      const found = this.read(bytes, start, ends[place]!, put);
      faults[at] = found;
      anyFault |= found;
      above = start;
      code = values[put]!;
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
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end) || start === end) {
      this.column.values[row] = 0;
      return this.#absent;
    }
    this.column.values[row] = this.#interner.codeOf(bytes, start, end);
    return fault.none;
  }
}

/** What a distinct text means: a value's code, a fault, or several codes by season. */
export type TextMeaning =
  | { readonly kind: 'value'; readonly code: number }
  | { readonly kind: 'missing' }
  | { readonly kind: 'fault'; readonly fault: Fault }
  | { readonly kind: 'seasonal'; readonly meaning: Exclude<CodeMeaning, string | null> };

/** The place of the empty text among those of one byte. */
const blank = 256;
const missingMark = -1;
const seasonalMark = -2;
const unknownMark = -3;
const faultMark = -16;

/** Reads cells whose texts stand for something else: each distinct text is looked up once. */
export class MeaningCell implements Cell {
  readonly column: DraftColumn;
  readonly #raw = new Interner();
  /** The numbers of texts of one byte, by that byte, and last that of the empty text. */
  readonly #short = new Uint32Array(257);
  /** What those stand for; a mark below zero where that is unknown yet. */
  readonly #shortMarks = new Int32Array(257).fill(unknownMark);
  /** By the text's number: the code it stands for, or a mark below zero. */
  #marks: number[] = [0];
  readonly #seasonal = new Map<number, Exclude<CodeMeaning, string | null>>();
  readonly #meaningOf: (text: string) => TextMeaning;
  readonly #codeOf: (code: string) => number;
  readonly #absent: Fault;
  /** By the text's number: how often it stood for missing. */
  readonly #timesMissing: number[] = [];
  #pending = 0;

  /**
   * @param meaningOf what a text means, the cell's spaces left off
   * @param codeOf the number by which the column stores a code or key
   */
  constructor(column: DraftColumn, meaningOf: (text: string) => TextMeaning, codeOf: (code: string) => number) {
    this.column = column;
    this.#meaningOf = meaningOf;
    this.#codeOf = codeOf;
    this.#absent = column.field.required ? fault.missingValue : fault.none;
  }

  read(bytes: Uint8Array, cellStart: number, cellEnd: number, row: number): Fault {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    const length = end - start;
    // Most cells are blank or one letter, which needs no looking up.
    const short = length > 1 ? 0 : length === 0 ? blank : bytes[start]!;
    let raw = length > 1 ? 0 : this.#short[short]!;
    if (raw === 0) {
      raw = this.#raw.codeOf(bytes, start, end);
      if (raw === this.#marks.length) this.#learn(raw);
      if (length <= 1) {
        this.#short[short] = raw;
        this.#shortMarks[short] = this.#marks[raw]!;
      }
    }
    const mark = this.#marks[raw]!;
    this.#pending = 0;
    if (mark >= 0) {
      this.column.values[row] = mark;
      return fault.none;
    }
    this.column.values[row] = 0;
    if (mark === missingMark) {
      this.#timesMissing[raw] = (this.#timesMissing[raw] ?? 0) + 1;
      return this.#absent;
    }
    if (mark === seasonalMark) {
      this.#pending = raw;
      return fault.none;
    }
    return (faultMark - mark) as Fault;
  }

  readMany(position: number, { block, from, to, row }: BlockRows, faults: Uint8Array): boolean {
    const { bytes, width, starts, ends } = block;
    const { values } = this.column;
    const marks = this.#shortMarks;
    const passesBlanks = marks[blank] === missingMark && this.#absent === fault.none;
    let blanks = 0;
    let anyFault = 0;
    faults.fill(fault.none, from, to);
    let place = from * width + position;
    for (let at = from; at < to; at++, place += width) {
      const start = starts[place]!;
      const end = ends[place]!;
      // Most cells are blank or one letter, which needs no looking up.
      if (start === end && passesBlanks) {
        values[row + at - from] = 0;
        blanks++;
        continue;
      }
      if (end - start <= 1) {
        const mark = marks[start === end ? blank : bytes[start]!]!;
        if (mark >= 0) {
          values[row + at - from] = mark;
          continue;
        }
      }
      const found = this.read(bytes, start, end, row + at - from);
      if (found === fault.none) continue;
      faults[at] = found;
      anyFault = 1;
    }
    if (blanks > 0) {
      const raw = this.#short[blank]!;
      this.#timesMissing[raw] = (this.#timesMissing[raw] ?? 0) + blanks;
    }
    return anyFault !== 0;
  }

  timesMissing(): ReadonlyMap<string, number> {
    const met = Object.entries(this.#timesMissing);
    return new Map(met.map(([raw, times]) => [this.#raw.textOf(Number(raw)), times]));
  }

  countMissing(bytes: Uint8Array, cellStart: number, cellEnd: number, times: number): void {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const raw = this.#raw.find(bytes, start, trimmedEnd(bytes, start, cellEnd));
    if (this.#marks[raw] === missingMark) this.#timesMissing[raw] = (this.#timesMissing[raw] ?? 0) + times;
  }

  /** Puts the value of a text whose meaning depends on the season, once the row's season is known. */
  settle(season: number, row: number): Fault {
    if (this.#pending === 0) return fault.none;
    const held = this.#seasonal.get(this.#pending)!.find(({ from, to }) => season >= from && season <= to);
    if (held === undefined) return fault.unknownCode;
    if (held.code === null) return this.#absent;
    this.column.values[row] = this.#codeOf(held.code);
    return fault.none;
  }

  #learn(raw: number): void {
    const meaning = this.#meaningOf(this.#raw.textOf(raw));
    if (meaning.kind === 'value') this.#marks.push(meaning.code);
    else if (meaning.kind === 'missing') this.#marks.push(missingMark);
    else if (meaning.kind === 'fault') this.#marks.push(faultMark - meaning.fault);
    else {
      this.#seasonal.set(raw, meaning.meaning);
      this.#marks.push(seasonalMark);
    }
  }
}
