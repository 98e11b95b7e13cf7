import { describe, expect, it } from 'vitest';
import { restrictedBook } from '../../../src/finding/book/restricted-book.js';
import { watchedBook } from '../../../src/finding/book/watched-book.js';
import { openBook } from '../../../src/finding/book.js';
import { inspection, smallRecords, smallSum } from '../small-records.js';

describe('a book narrowed or watched', () => {
  const solver = { name: 'a solver', solve: () => null };
  const whole = openBook(smallRecords({ inspections: [inspection('a', {})] }), smallSum(null), solver);

  it('has the solver of the whole one, so that plans are still checked', () => {
    expect(restrictedBook(whole, new Map([['month', 'June']])).solver).toBe(solver);
    expect(watchedBook(whole, () => '').book.solver).toBe(solver);
  });

  it('has none where the whole one has none', () => {
    const { solver: _, ...plain } = whole;
    expect(watchedBook(plain, () => '').book).not.toHaveProperty('solver');
  });
});
