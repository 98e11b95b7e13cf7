import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readDatePattern } from '../../src/intake/date-pattern.js';
import { firstYear, lastYear } from '../../src/intake/date-reader.js';
import { type FixedDate, fixedDate } from '../../src/intake/fixed-date.js';

function readerOf(pattern: string): FixedDate | null {
  const read = readDatePattern(pattern, 'date');
  if (typeof read === 'string') throw new Error(read);
  return fixedDate(read.steps);
}

const two = (number: number) => String(number).padStart(2, '0');

test('dates in fixed places are the moments that ECMAScript makes of their parts, and there are no others', () => {
  const reader = readerOf("yyyy-MM-dd'T'HH:mm:ss")!;
  const parts = fc.tuple(
    fc.integer({ min: firstYear - 1, max: lastYear + 1 }),
    ...[13, 32, 25, 61, 61].map((max) => fc.integer({ min: 0, max })),
  );
  fc.assert(
    fc.property(parts, (numbers) => {
      const [year, month, day, hour, minute, second] = numbers as [number, number, number, number, number, number];
      const text = `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}:${two(second)}`;
      const wall = Date.UTC(year, month - 1, day, hour, minute, second);
      const isDate = new Date(wall).toISOString().slice(0, 19) === text && year >= firstYear && year <= lastYear;
      const bytes = Buffer.from(`x${text}x`);
      expect(reader.read(bytes, 1, 1 + text.length, firstYear, lastYear)).toBe(isDate);
      if (isDate) expect([reader.wall, reader.year]).toEqual([wall, year]);
    }),
  );
});

test('a letter in the place of a digit or a mark is no date, and parts of no fixed length are read otherwise', () => {
  const reader = readerOf('MM/dd/yyyy')!;
  const reads = (text: string) => reader.read(Buffer.from(text), 0, text.length, firstYear, lastYear);
  expect(reads('06/30/2025')).toBe(true);
  for (const text of ['06/30/20x5', 'x6/30/2025', '06-30-2025', '06/30/2025 ', '6/30/2025', '06/3:/2025']) {
    expect(reads(text), text).toBe(false);
  }
  for (const pattern of ['M/d/yyyy', 'MMM dd yyyy', 'dd.MM.yy', 'yyyy-MM-dd hh:mm a']) {
    expect(readerOf(pattern), pattern).toBeNull();
  }
});
