import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { codeShares } from '../../src/finding/code-shares.js';
import { findingOf, findings } from '../../src/finding/findings.js';
import { timeHeaping } from '../../src/finding/time-heaping.js';
import { ask, cells } from './read-finding.js';
import { elkPoint, inspection, look, pineGate, type SmallRow, smallRecords, smallSum } from './small-records.js';

describe('missing values', () => {
  it('count what was left empty, by field and station', () => {
    const book = openBook(
      smallRecords({
        stations: [elkPoint, pineGate],
        inspections: [
          inspection('a', { drive: 'outboard', length_ft: 20 }),
          inspection('b'),
          inspection('c', { station: 'pine', length_ft: 18 }),
        ],
        checks: [look('a', 'bunks', 'clean', 'port')],
      }),
      smallSum(null),
    );
    const found = ask(findingOf('missing values', 'inspections')!, book, ['station']);
    const rows = cells(found, 'station', 'field', 'rows', 'missing', 'missing_share');
    expect(rows.filter((row) => row[1] === 'length_ft')).toEqual([
      ['Elk Point', 'length_ft', 2, 1, 0.5],
      ['Pine Gate', 'length_ft', 1, 0, 0],
    ]);
    const checks = ask(findingOf('missing values', 'checks')!, book);
    expect(cells(checks, 'field', 'missing')).toContainEqual(['finding', 1]);
    expect(cells(ask(findingOf('missing values', 'inspections')!, book, [], []), 'missing_share')[0]).toEqual([null]);
  });
});

describe('time heaping', () => {
  it('is counted by the station’s own clock', () => {
    const kolkata = { ...elkPoint, station: 'half', name: 'Half Hour', time_zone: 'Asia/Kolkata' };
    const book = openBook(
      smallRecords({
        stations: [elkPoint, kolkata],
        inspections: [
          inspection('a'),
          inspection('b', { started_at: '2025-06-01T18:30Z' }),
          inspection('c', { started_at: '2025-06-01T18:31Z' }),
          inspection('d', { started_at: '2025-06-01T19:00:59Z' }),
          // 18:00 UTC reads 23:30 there.
          inspection('e', { station: 'half' }),
        ],
      }),
      smallSum(null),
    );
    expect(cells(ask(timeHeaping, book), 'station', 'starts', 'on_hour', 'on_half')).toEqual([
      ['Elk Point', 4, 2, 1],
      ['Half Hour', 1, 0, 1],
    ]);
  });
});

describe('code shares', () => {
  /** A hundred inspections a season with so many yeses in two fields and so many risks called high. */
  const season = (year: number, water: number, plants: number, high: number): SmallRow[] =>
    Array.from({ length: 100 }, (_, at) =>
      inspection(`${year}-${at}`, {
        started_at: `${year}-06-01T18:00Z`,
        standing_water: at < water ? 'yes' : 'no',
        vegetation: at < plants ? 'yes' : 'no',
        risk: at < high ? 'high' : 'low',
      }),
    );

  const bookOf = (rows: SmallRow[]) =>
    openBook(
      smallRecords({ stations: [elkPoint], inspections: rows }),
      smallSum(null, {
        definitionChanges: [
          { table: 'inspections', field: 'standing_water', season: 2025, was: 'runs out', is: 'damp' },
        ],
      }),
    );

  it('mark a meaning that changed in a season without records at the next that has some', () => {
    const book = bookOf([...season(2023, 10, 30, 40), ...season(2026, 11, 33, 40)]);
    const rows = cells(ask(codeShares, book), 'field', 'code', 'season', 'mark');
    expect(rows.filter(([field, code]) => field === 'standing_water' && code === 'yes')).toEqual([
      ['standing_water', 'yes', 2023, null],
      ['standing_water', 'yes', 2026, 'meaning changed'],
    ]);
  });

  it('mark a code that jumps threefold while the other fields hold still', () => {
    const book = bookOf([...season(2024, 10, 30, 40), ...season(2025, 33, 33, 40)]);
    const rows = cells(ask(codeShares, book), 'field', 'code', 'season', 'coded', 'used', 'ratio', 'mark');
    expect(rows.filter(([field, code]) => field === 'standing_water' && code === 'yes')).toEqual([
      ['standing_water', 'yes', 2024, 100, 10, null, null],
      ['standing_water', 'yes', 2025, 100, 33, expect.closeTo(3.3, 12), 'jumps, others still; meaning changed'],
    ]);
    expect(rows.filter(([field, , , , , , mark]) => field !== 'standing_water' && mark !== null)).toEqual([]);
  });

  it('say where the other fields jumped, too', () => {
    // By hand: three of five fields move threefold or more, so that for each of them half of the other four hold still.
    const book = bookOf([...season(2023, 10, 20, 20), ...season(2024, 40, 60, 80)]);
    const rows = cells(ask(codeShares, book), 'field', 'code', 'season', 'mark');
    expect(rows.filter(([, , , mark]) => mark !== null)).toEqual([
      ['standing_water', 'yes', 2024, 'jumps, others too'],
      ['vegetation', 'yes', 2024, 'jumps, others too'],
      ['risk', 'low', 2024, 'jumps, others too'],
      ['risk', 'high', 2024, 'jumps, others too'],
    ]);
  });

  it('mark nothing on few uses', () => {
    const book = bookOf([...season(2023, 1, 50, 50), ...season(2024, 19, 50, 50)]);
    expect(cells(ask(codeShares, book), 'mark').filter(([mark]) => mark !== null)).toEqual([]);
  });
});

describe('the list of findings', () => {
  it('names each once a table, with a whole account', () => {
    const names = findings.map(({ name, table }) => `${name} of ${table}`);
    expect(new Set(names).size).toBe(names.length);
    for (const { account } of findings) for (const text of Object.values(account)) expect(text).not.toBe('');
  });

  it('answers for empty records with columns, and cells to match', () => {
    const book = openBook(smallRecords({}), smallSum(null));
    for (const finding of findings) {
      const found = ask(finding, book);
      const names = found.columns.map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
      for (const row of found.rows) expect(row).toHaveLength(found.columns.length);
    }
  });
});
