import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dateOfDay, dayAsText, weekdayOfDay, weekOfDay } from '../../../src/finding/book/calendar.js';

const day = (text: string): number => Date.parse(text) / 86_400_000;

describe('calendar', () => {
  it('agrees with the platform’s Gregorian calendar on every day of ten thousand years', () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (any) => {
        const date = new Date(any * 86_400_000);
        expect(dateOfDay(any)).toEqual({
          year: date.getUTCFullYear(),
          month: date.getUTCMonth() + 1,
          dayOfMonth: date.getUTCDate(),
        });
        expect(weekdayOfDay(any)).toBe((date.getUTCDay() + 6) % 7);
      }),
    );
  });

  it('numbers weeks as the examples of ISO 8601 do', () => {
    // From memory: the examples given with ISO 8601 for the turns of 2004/05, 2005/06, 2007/08, 2008/09 and 2009/10.
    const examples: readonly (readonly [string, number])[] = [
      ['2005-01-01', 53],
      ['2005-01-02', 53],
      ['2005-12-31', 52],
      ['2006-01-01', 52],
      ['2006-01-02', 1],
      ['2007-12-31', 1],
      ['2008-12-28', 52],
      ['2008-12-29', 1],
      ['2009-12-31', 53],
      ['2010-01-03', 53],
    ];
    for (const [date, week] of examples) expect([date, weekOfDay(day(date))]).toEqual([date, week]);
  });

  it('writes days as ISO dates', () => {
    expect(dayAsText(day('2024-02-29'))).toBe('2024-02-29');
  });
});
