import { dayNumber, daysInMonth } from './calendar.js';
import { type Fault, fault } from './fault.js';

type Part = 'year' | 'month' | 'day' | 'hour' | 'minute' | 'second' | 'half' | 'offset';

type Step =
  | { readonly kind: 'literal'; readonly byte: number }
  | { readonly kind: 'digits'; readonly part: Part; readonly least: number; readonly most: number }
  | { readonly kind: 'half' }
  | { readonly kind: 'offset' };

/** A date or time as a pattern in the letters of UTS #35 describes it, ready to be read from bytes. */
export interface DatePattern {
  readonly text: string;
  readonly steps: readonly Step[];
  readonly hasTime: boolean;
  readonly hasOffset: boolean;
}

const letters: Readonly<Record<string, Step>> = {
  yyyy: { kind: 'digits', part: 'year', least: 4, most: 4 },
  yy: { kind: 'digits', part: 'year', least: 2, most: 2 },
  MM: { kind: 'digits', part: 'month', least: 2, most: 2 },
  M: { kind: 'digits', part: 'month', least: 1, most: 2 },
  dd: { kind: 'digits', part: 'day', least: 2, most: 2 },
  d: { kind: 'digits', part: 'day', least: 1, most: 2 },
  HH: { kind: 'digits', part: 'hour', least: 2, most: 2 },
  H: { kind: 'digits', part: 'hour', least: 1, most: 2 },
  hh: { kind: 'digits', part: 'hour', least: 2, most: 2 },
  h: { kind: 'digits', part: 'hour', least: 1, most: 2 },
  mm: { kind: 'digits', part: 'minute', least: 2, most: 2 },
  ss: { kind: 'digits', part: 'second', least: 2, most: 2 },
  a: { kind: 'half' },
  XXX: { kind: 'offset' },
};

/** The first year that a record may fall in; what lies before is a slip of the hand. */
export const firstYear = 1900;

/** The last year that a record may fall in. */
export const lastYear = 2100;

/** The letters a pattern may hold, for messages. */
export const patternLetters = Object.keys(letters).join(' ');

function partOf(step: Step): Part | null {
  return step.kind === 'digits' ? step.part : step.kind === 'literal' ? null : step.kind;
}

/**
 * A pattern made ready, or a sentence saying why it cannot be one: every part once, a whole date, an hour for a time, and
 * `a` with `hh` and with nothing else. Text stands for itself between single quotes.
 */
export function readDatePattern(text: string, wanted: 'date' | 'instant'): DatePattern | string {
  const steps: Step[] = [];
  const runs: string[] = [];
  for (const [piece] of text.matchAll(/'(?:[^']|'')*'|([A-Za-z])\1*|[\s\S]/gu)) {
    if (/^[A-Za-z]/u.test(piece)) {
      const step = letters[piece];
      if (step === undefined) return `"${piece}" is none of the letters ${patternLetters}`;
      steps.push(step);
      runs.push(piece);
    } else {
      if (piece === "'") return 'a quote is not closed';
      const plain = piece.startsWith("'") ? piece.slice(1, -1).replaceAll("''", "'") || "'" : piece;
      for (const byte of new TextEncoder().encode(plain)) steps.push({ kind: 'literal', byte });
    }
  }
  const parts = steps.map(partOf).filter((part) => part !== null);
  const twice = parts.find((part, position) => parts.indexOf(part) !== position);
  if (twice !== undefined) return `it names the ${twice} twice`;
  for (const part of ['year', 'month', 'day'] as const) if (!parts.includes(part)) return `it has no ${part}`;
  const hasTime = parts.includes('hour');
  if (wanted === 'instant' && !hasTime) return 'it has no hour';
  const halves = runs.includes('h') || runs.includes('hh');
  if (halves !== parts.includes('half')) return 'a 12-hour clock needs both hh and a';
  return { text, steps, hasTime, hasOffset: parts.includes('offset') };
}

/** Reads cells by one pattern. After a `read` that found no fault, the fields hold what the cell said. */
export class DateReader {
  /** Days since 1970-01-01, as written. */
  day = 0;
  /** Milliseconds since 1970-01-01T00:00 of the clock that wrote it. */
  wall = 0;
  year = 0;
  /** Minutes east of Greenwich, where the cell says so. */
  offset = 0;
  /** How many bytes into the cell the fault is, after a `read` that found one. */
  faultAt = 0;
  /** How many bytes into the cell the hour stands, for faults of the clock. */
  hourAt = 0;
  readonly pattern: DatePattern;
  readonly #badTime: Fault;

  constructor(pattern: DatePattern, instant: boolean) {
    this.pattern = pattern;
    this.#badTime = instant ? fault.notATime : fault.notADate;
  }

  /** No fault, or that the bytes are no date, or no time of day. */
  read(bytes: Uint8Array, start: number, end: number): Fault {
    const { steps } = this.pattern;
    let at = start;
    let year = 0;
    let month = 1;
    let day = 1;
    let hour = 0;
    let minute = 0;
    let second = 0;
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
      } else if (step.kind === 'digits') {
        const from = at;
        let value = 0;
        while (at < end && at - from < step.most) {
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
            if (hour > 23) return this.#badTime;
            break;
          case 'minute':
            minute = value;
            if (minute > 59) return this.#badTime;
            break;
          default:
            second = value;
            if (second > 59) return this.#badTime;
        }
      } else if (step.kind === 'half') {
        const letter = bytes[at]! | 32;
        if (at + 2 > end || (letter !== 97 && letter !== 112) || (bytes[at + 1]! | 32) !== 109) return this.#badTime;
        half = letter === 97 ? 0 : 12;
        at += 2;
      } else {
        const length = this.#readOffset(bytes, at, end);
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
    }
    this.year = year;
    this.day = dayNumber(year, month, day);
    this.wall = this.day * 86_400_000 + ((hour * 60 + minute) * 60 + second) * 1000;
    return fault.none;
  }

  /** The length of an offset such as `-07:00` or `Z` read from there; 0 for none. */
  #readOffset(bytes: Uint8Array, at: number, end: number): number {
    if (at < end && bytes[at] === 90) return 1;
    if (at + 6 > end || bytes[at + 3] !== 58) return 0;
    const sign = bytes[at] === 43 ? 1 : bytes[at] === 45 ? -1 : 0;
    const digits = [at + 1, at + 2, at + 4, at + 5].map((place) => bytes[place]! - 48);
    if (sign === 0 || digits.some((digit) => digit < 0 || digit > 9)) return 0;
    const [a, b, c, d] = digits as [number, number, number, number];
    if (c > 5) return 0;
    this.offset = sign * ((a * 10 + b) * 60 + c * 10 + d);
    return 6;
  }
}
