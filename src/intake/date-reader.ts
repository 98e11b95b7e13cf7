import { dayLength, dayNumber, daysInMonth } from './calendar.js';
import type { DatePattern } from './date-pattern.js';
import type { Step } from './date-steps.js';
import { type Fault, fault } from './fault.js';
import { type FixedDate, fixedDate } from './fixed-date.js';
import { nameThere } from './month-names.js';
import { type SerialBase, serialMoment } from './source/serial-date.js';

/** The first year that a record may fall in; what lies before is a slip of the hand. */
export const firstYear = 1900;

/** The last year that a record may fall in. */
export const lastYear = 2100;

/** The most minutes that a clock was ever set from Greenwich since then: the Line Islands' (IANA, Pacific/Kiritimati). */
const mostOffset = 14 * 60;

/** Reads cells by a pattern. After a `read` that found no fault, the fields hold what the cell said. */
export class DateReader {
  /** Days since 1970-01-01, as written. */
  day = 0;
  /** Milliseconds since 1970-01-01T00:00 of the clock that wrote it. */
  wall = 0;
  year = 0;
  /** Whether the cell says its offset from Greenwich. */
  hasOffset = false;
  /** Minutes east of Greenwich, where the cell says so. */
  offset = 0;
  /** How many bytes into the cell the fault is, after a `read` that found one. */
  faultAt = 0;
  /** How many bytes into the cell the hour stands, for faults of the clock. */
  hourAt = 0;
  readonly pattern: DatePattern;
  readonly #badTime: Fault;
  readonly #fixed: FixedDate | null;

  constructor(pattern: DatePattern, instant: boolean) {
    this.pattern = pattern;
    this.#badTime = instant ? fault.notATime : fault.notADate;
    this.#fixed = pattern.serial === null ? fixedDate(pattern.steps) : null;
  }

  /** No fault, or that the bytes are no date, or no time of day; then by the first of several patterns. */
  read(bytes: Uint8Array, start: number, end: number): Fault {
    const fixed = this.#fixed;
    if (fixed?.read(bytes, start, end, firstYear, lastYear) === true) {
      this.year = fixed.year;
      this.day = fixed.day;
      this.wall = fixed.wall;
      this.hasOffset = false;
      this.hourAt = Math.max(0, fixed.places.hour);
      return fault.none;
    }
    const found = this.#readAs(this.pattern, bytes, start, end);
    if (found === fault.none || this.pattern.others.length === 0) return found;
    const { faultAt } = this;
    if (this.pattern.others.some((other) => this.#readAs(other, bytes, start, end) === fault.none)) return fault.none;
    this.faultAt = faultAt;
    return found;
  }

  #readAs({ steps, serial, hasOffset }: DatePattern, bytes: Uint8Array, start: number, end: number): Fault {
    this.hasOffset = hasOffset;
    if (serial !== null) return this.#readSerial(serial, bytes, start, end);
    let at = start;
    let year = 0;
    let month = 1;
    let day = 1;
    let hour = 0;
    let minute = 0;
    let second = 0;
    let fraction = 0;
    let half = -1;
    let dayAt = start;
    let yearAt = start;
    this.offset = 0;
    for (let index = 0; index < steps.length; index++) {
      const step = steps[index]!;
      this.faultAt = at - start;
      if (step.kind === 'literal') {
        if (at >= end || bytes[at] !== step.byte) return this.#badTime;
        at++;
      } else if (step.kind === 'loose space') {
        if (at < end && bytes[at] === 32) at++;
      } else if (step.kind === 'digits') {
        const from = at;
        let value = 0;
        let most = step.most;
        if (step.behind > 0) {
          let run = at;
          while (run < end && bytes[run]! >= 48 && bytes[run]! <= 57) run++;
          most = Math.min(most, run - at - step.behind);
        }
        while (at < end && at - from < most) {
          const digit = bytes[at]! - 48;
          if (digit < 0 || digit > 9) break;
          value = value * 10 + digit;
          at++;
        }
        if (at - from < step.least) return this.#badTime;
        switch (step.part) {
          case 'year':
            year = step.most === 2 ? 2000 + value : value;
            yearAt = from;
            break;
          case 'month':
            month = value;
            if (month < 1 || month > 12) return fault.notADate;
            break;
          case 'day':
            day = value;
            dayAt = from;
            break;
          case 'hour':
            hour = value;
            this.hourAt = from - start;
            if (hour > 24) return this.#badTime;
            break;
          case 'minute':
            minute = value;
            if (minute > 59) return this.#badTime;
            break;
          case 'fraction':
            fraction = value;
            break;
          default:
            second = value;
            if (second > 59) return this.#badTime;
        }
      } else if (step.kind === 'month name') {
        const name = nameThere(step.names, bytes, at, end);
        if (name === null) return fault.notADate;
        month = name.month;
        at += name.bytes.length;
      } else if (step.kind === 'half') {
        const length = halfLength(bytes, at, end);
        if (length === 0) return this.#badTime;
        half = (bytes[at]! | 32) === 97 ? 0 : 12;
        at += length;
      } else {
        const length = this.#readOffset(step, bytes, at, end);
        if (length === 0) return this.#badTime;
        at += length;
      }
    }
    this.faultAt = at - start;
    if (at !== end) return this.#badTime;
    if (year < firstYear || year > lastYear) {
      this.faultAt = yearAt - start;
      return fault.outOfRange;
    }
    if (day < 1 || day > daysInMonth(year, month)) {
      this.faultAt = dayAt - start;
      return fault.notADate;
    }
    if (half >= 0) {
      if (hour < 1 || hour > 12) {
        this.faultAt = this.hourAt;
        return this.#badTime;
      }
      hour = (hour % 12) + half;
    } else if (hour === 24 && minute + second + fraction > 0) {
      this.faultAt = this.hourAt;
      return this.#badTime;
    }
    this.year = year;
    this.day = dayNumber(year, month, day);
    this.wall = this.day * dayLength + ((hour * 60 + minute) * 60 + second) * 1000 + fraction;
    return fault.none;
  }

  #readSerial(base: SerialBase, bytes: Uint8Array, start: number, end: number): Fault {
    this.faultAt = 0;
    this.hourAt = 0;
    const text = Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('latin1');
    if (!/^\d{1,7}(?:[.,]\d{1,17})?$/u.test(text)) return this.#badTime;
    const moment = serialMoment(Number(text.replace(',', '.')), base);
    if (moment === null) return fault.notADate;
    this.day = moment.day;
    this.wall = moment.day * dayLength + moment.second * 1000;
    this.year = new Date(this.wall).getUTCFullYear();
    return this.year > lastYear ? fault.outOfRange : fault.none;
  }

  /** The length of an offset such as `-07:00`, `-0700`, `-07` or `Z` read from there; 0 for none. */
  #readOffset(step: Step, bytes: Uint8Array, at: number, end: number): number {
    if (at < end && bytes[at] === 90) return 1;
    const sign = bytes[at] === 43 ? 1 : bytes[at] === 45 ? -1 : 0;
    if (sign === 0 || step.kind !== 'offset') return 0;
    const length = step.minutes ? (step.colon ? 6 : 5) : 3;
    if (at + length > end || (step.colon && bytes[at + 3] !== 58)) return 0;
    const places = step.minutes ? [at + 1, at + 2, at + length - 2, at + length - 1] : [at + 1, at + 2];
    const digits = places.map((place) => bytes[place]! - 48);
    if (digits.some((digit) => digit < 0 || digit > 9)) return 0;
    const [a, b, c = 0, d = 0] = digits as [number, number, number?, number?];
    const minutes = (a * 10 + b) * 60 + c * 10 + d;
    if (c > 5 || minutes > mostOffset) return 0;
    this.offset = sign * minutes;
    return length;
  }
}

/** How many bytes `AM`, `pm`, `a.m.` or alike take; 0 for anything else. */
function halfLength(bytes: Uint8Array, at: number, end: number): number {
  const first = bytes[at]! | 32;
  if (at >= end || (first !== 97 && first !== 112)) return 0;
  if (at + 1 < end && (bytes[at + 1]! | 32) === 109) return 2;
  const dotted = at + 3 < end && bytes[at + 1] === 46 && (bytes[at + 2]! | 32) === 109 && bytes[at + 3] === 46;
  return dotted ? 4 : 0;
}
