import { dayLength } from './calendar.js';
import { type Cell, type MissingTexts, trimmedEnd, trimmedStart } from './cell.js';
import type { DatePattern } from './date-pattern.js';
import { DateReader } from './date-reader.js';
import { type DraftColumn, noDay } from './draft.js';
import { type Fault, fault } from './fault.js';
import { type BlockRows, readEach } from './row-block.js';
import type { ZoneClock } from './time-zone.js';

/** A cell that knows in which local year it fell, and where in its text a fault lies. */
export interface DatedCell extends Cell {
  /** The local year of the cell last read; 0 where it was missing or at fault. */
  readonly year: number;
  /** How many bytes into the cell the fault last found lies. */
  readonly faultAt: number;
}

/** Reads calendar dates; a time of day behind the date is checked and left off. */
export class DateCell implements DatedCell {
  readonly column: DraftColumn;
  year = 0;
  faultAt = 0;
  readonly #reader: DateReader;
  readonly #missing: MissingTexts;
  readonly #absent: Fault;

  constructor(column: DraftColumn, pattern: DatePattern, missing: MissingTexts) {
    this.column = column;
    this.#reader = new DateReader(pattern, false);
    this.#missing = missing;
    this.#absent = column.field.required ? fault.missingValue : fault.none;
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
    this.column.values[row] = noDay;
    this.year = 0;
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end)) return this.#absent;
    const found = this.#reader.read(bytes, start, end);
    if (found !== fault.none) {
      this.faultAt = start - cellStart + this.#reader.faultAt;
      return found;
    }
    this.column.values[row] = this.#reader.day;
    this.year = this.#reader.year;
    return fault.none;
  }
}

/** Reads moments by the clock of a zone, or by the offset that the cell itself carries. */
export class InstantCell implements DatedCell {
  readonly column: DraftColumn;
  year = 0;
  faultAt = 0;
  /** The clock of times without an offset; null until the row's station has told it. */
  clock: ZoneClock | null;
  readonly #reader: DateReader;
  readonly #missing: MissingTexts;
  readonly #repeated: 'first' | 'second' | null;
  readonly #absent: Fault;

  constructor(
    column: DraftColumn,
    pattern: DatePattern,
    missing: MissingTexts,
    clock: ZoneClock | null,
    repeated: 'first' | 'second' | null,
  ) {
    this.column = column;
    this.clock = clock;
    this.#reader = new DateReader(pattern, true);
    this.#missing = missing;
    this.#repeated = repeated;
    this.#absent = column.field.required ? fault.missingValue : fault.none;
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
    this.year = 0;
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const end = trimmedEnd(bytes, start, cellEnd);
    if (this.#missing.has(bytes, start, end)) return this.#absent;
    const reader = this.#reader;
    const found = reader.read(bytes, start, end);
    if (found !== fault.none) {
      this.faultAt = start - cellStart + reader.faultAt;
      return found;
    }
    this.faultAt = start - cellStart + reader.hourAt;
    const put = this.#put(reader.wall, row);
    if (put === fault.none && (reader.hasOffset || this.clock !== null)) this.year = reader.year;
    return put;
  }

  /** Puts what was read last as of the next day, by the same clock. */
  putNextDay(row: number): Fault {
    return this.#put(this.#reader.wall + dayLength, row);
  }

  #put(wall: number, row: number): Fault {
    const { values } = this.column;
    if (this.#reader.hasOffset) values[row] = wall - this.#reader.offset * 60_000;
    // A row whose station nobody knows is set aside for that; its times stay missing.
    else if (this.clock !== null) {
      const kind = this.clock.kindOf(wall);
      if (kind === 'never') return fault.noSuchLocalTime;
      if (kind === 'twice' && this.#repeated === null) return fault.ambiguousLocalTime;
      values[row] = this.clock.momentOf(wall, this.#repeated ?? 'first');
    }
    return fault.none;
  }
}
