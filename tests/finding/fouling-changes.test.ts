import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { foulingChanges } from '../../src/finding/fouling-changes.js';
import type { ImportSum } from '../../src/record/file-sum.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, look, type SmallRow, smallRecords, smallSum } from './small-records.js';

/** So many fouled craft of a season, the first of them fouled on the propeller and the others on the bunks. */
function season(year: number, onPropeller: number, craft: number): { inspections: SmallRow[]; checks: SmallRow[] } {
  const numbers = Array.from({ length: craft }, (_, at) => `${year}-${at}`);
  return {
    inspections: numbers.map((number) => inspection(number, { started_at: `${year}-06-01T18:00Z` })),
    checks: numbers.flatMap((number, at) => [
      look(number, 'propeller', at < onPropeller ? 'mussels' : 'clean'),
      look(number, 'bunks', at < onPropeller ? 'clean' : 'mussels', 'port'),
    ]),
  };
}

function bookOf(more: Partial<ImportSum> = {}) {
  // Newcombe 1998, Statistics in Medicine 17:873-890, Table II, example (a): 56 of 70 against 48 of 80.
  const [earlier, later] = [season(2024, 48, 80), season(2025, 56, 70)];
  return openBook(
    smallRecords({
      stations: [elkPoint],
      inspections: [...earlier.inspections, ...later.inspections],
      checks: [...earlier.checks, ...later.checks],
    }),
    smallSum(null, more),
  );
}

describe('fouling changes', () => {
  it('are differences of shares of fouled craft with score limits', () => {
    const found = ask(foulingChanges, bookOf());
    expect(cells(found, 'component', 'from_season', 'to_season')).toEqual([
      ['propeller', 2024, 2025],
      ['bunks', 2024, 2025],
    ]);
    const change = estimate(found, 0, 'change');
    expect(change.value).toBeCloseTo(0.2, 12);
    // Miettinen-Nurminen as printed there: 0.0528 to 0.3382.
    expect(change.interval?.low).toBeCloseTo(0.0528, 4);
    expect(change.interval?.high).toBeCloseTo(0.3382, 4);
  });

  it('are not drawn to a season in which nobody looked at the part', () => {
    const [earlier, later] = [season(2024, 3, 8), season(2025, 4, 8)];
    const book = openBook(
      smallRecords({
        stations: [elkPoint],
        inspections: [...earlier.inspections, ...later.inspections],
        checks: [...earlier.checks.filter(({ component }) => component !== 'propeller'), ...later.checks],
      }),
      smallSum(null),
    );
    const found = ask(foulingChanges, book);
    expect(cells(found, 'component')).toEqual([['propeller'], ['bunks']]);
    expect(estimate(found, 0, 'earlier')).toMatchObject({ value: null, why: 'nobody looked at it in 2024' });
    expect(estimate(found, 0, 'change')).toMatchObject({ value: null, interval: null });
    expect(estimate(found, 0, 'later').value).not.toBeNull();
    expect(estimate(found, 1, 'change').value).not.toBeNull();
  });

  it('are broken where what counts as fouled changed its meaning in between', () => {
    const changed = { table: 'checks', field: 'finding', season: 2025, was: 'shells', is: 'shells or grit' } as const;
    const found = ask(foulingChanges, bookOf({ definitionChanges: [changed] }));
    expect(estimate(found, 0, 'change')).toMatchObject({
      value: null,
      interval: null,
      why: '“finding” changed its meaning in 2025',
    });
    expect(estimate(found, 0, 'later').value).toBeCloseTo(0.8, 12);
    const before = { ...changed, season: 2024 };
    expect(estimate(ask(foulingChanges, bookOf({ definitionChanges: [before] })), 0, 'change').value).not.toBeNull();
  });
});
