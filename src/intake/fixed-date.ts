import { dayLength, dayNumber, daysInMonth } from './calendar.js';
import type { Step } from './date-steps.js';

const parts = ['year', 'month', 'day', 'hour', 'minute', 'second'] as const;

/** Where the parts of a date stand, in bytes from its beginning; −1 for one that it does not have. */
type Places = Readonly<Record<(typeof parts)[number], number>>;

/** Reads dates whose parts always stand in the same places, such as 2025-06-07T08:09:10: the usual ones, in little time. */
export class FixedDate {
  /** Days since 1970-01-01, and milliseconds of the clock that wrote it since then. */
  day = 0;
  wall = 0;
  year = 0;
  readonly places: Places;
  readonly #length: number;
  /** The bytes between the parts, and where they stand. */
  readonly #marks: Uint8Array;
  readonly #marksAt: Uint8Array;

  constructor(places: Places, length: number, marks: readonly (readonly [at: number, byte: number])[]) {
    this.places = places;
    this.#length = length;
    this.#marksAt = Uint8Array.from(marks, ([at]) => at);
    this.#marks = Uint8Array.from(marks, ([, byte]) => byte);
  }

  /** Whether the bytes are such a date of the years given; what they are otherwise, and hour 24, is for others to say. */
  read(bytes: Uint8Array, start: number, end: number, firstYear: number, lastYear: number): boolean {
    if (end - start !== this.#length) return false;
    const marks = this.#marks;
    for (let mark = 0; mark < marks.length; mark++)
      if (bytes[start + this.#marksAt[mark]!] !== marks[mark]) return false;
    const at = this.places;
    const year = twoDigits(bytes, start + at.year) * 100 + twoDigits(bytes, start + at.year + 2);
    const month = twoDigits(bytes, start + at.month);
    const day = twoDigits(bytes, start + at.day);
    const hour = at.hour < 0 ? 0 : twoDigits(bytes, start + at.hour);
    const minute = at.minute < 0 ? 0 : twoDigits(bytes, start + at.minute);
    const second = at.second < 0 ? 0 : twoDigits(bytes, start + at.second);
    if (year < firstYear || year > lastYear || month < 1 || month > 12 || hour > 23 || minute > 59 || second > 59) {
      return false;
    }
    if (day < 1 || day > daysInMonth(year, month)) return false;
    this.year = year;
    this.day = dayNumber(year, month, day);
    this.wall = this.day * dayLength + ((hour * 60 + minute) * 60 + second) * 1000;
    return true;
  }
}

/** More than any part may be, and than any year once it is part of one. */
const noDigits = 1_000_000;

function twoDigits(bytes: Uint8Array, at: number): number {
  const tens = bytes[at]! - 48;
  const ones = bytes[at + 1]! - 48;
  return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? noDigits : tens * 10 + ones;
}

/** The reader of a pattern whose parts have a length of their own each; null for any other pattern. */
export function fixedDate(steps: readonly Step[]): FixedDate | null {
  const places: Record<string, number> = Object.fromEntries(parts.map((part) => [part, -1]));
  const marks: (readonly [number, number])[] = [];
  let length = 0;
  for (const step of steps) {
    if (step.kind === 'literal') marks.push([length++, step.byte]);
    else {
      const isPart = step.kind === 'digits' && step.part in places && step.least === step.most;
      if (!isPart || step.most !== (step.part === 'year' ? 4 : 2)) return null;
      places[step.part] = length;
      length += step.most;
    }
  }
  return length < 1 || length > 255 ? null : new FixedDate(places as Places, length, marks);
}
