import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { foulingPairs } from '../../src/finding/fouling-pairs.js';
import { foulingRanks } from '../../src/finding/fouling-ranks.js';
import { foundBy } from '../../src/finding/found-by.js';
import { ask, cells, estimate } from './read-finding.js';
import { elkPoint, inspection, look, type SmallRow, smallRecords, smallSum } from './small-records.js';

const bookOf = (craft: readonly SmallRow[], checks: readonly SmallRow[]) =>
  openBook(smallRecords({ stations: [elkPoint], inspections: craft, checks }), smallSum(null));

describe('fouling ranks', () => {
  // Ten craft on ten days, six fouled on the hull and five on the transom (one of them on both), one on the anchor.
  const day = (at: number) => ({ started_at: `2025-06-${String(at + 1).padStart(2, '0')}T18:00Z` });
  const craft = Array.from({ length: 10 }, (_, at) => inspection(`${at}`, day(at)));
  const checks = [
    ...[0, 1, 2, 3, 4, 5].map((at) => look(`${at}`, 'hull below waterline', 'mussels')),
    ...[5, 6, 7, 8, 9].map((at) => look(`${at}`, 'transom', 'mussels')),
    look('9', 'anchor', 'mussels'),
  ];
  const found = ask(foulingRanks, bookOf(craft, checks), [], undefined, { top: 1 });

  it('give each part its place and the chance to lead', () => {
    expect(cells(found, 'component', 'fouled', 'fouled_craft', 'rank')).toEqual([
      ['hull below waterline', 6, 10, 1],
      ['transom', 5, 10, 2],
      ['anchor', 1, 10, null],
    ]);
    // Days drawn again: the hull leads when days fouled on the hull alone (5 of 10) outnumber those on the transom
    // alone (4 of 10), equals sharing; by enumeration in R 4.2.2 of dmultinom over (5, 4, 1)/10 of ten: 0.6304615. Two
    // thousand draws err by 0.011.
    const [lead] = cells(found, 'in_top')[0] as [number];
    expect(Math.abs(lead - 0.6304615)).toBeLessThan(0.045);
    expect(estimate(found, 0, 'rank').interval).toMatchObject({ low: 1, high: 2 });
  });

  it('are withheld under five craft, and say with which seed they were drawn', () => {
    expect(estimate(found, 2, 'rank').why).toBe('under 5 craft fouled there');
    expect(found.leftOut).toEqual(['1 part has no rank: fouled on fewer than 5 craft.']);
    expect(found.said).toEqual(['The top is 1 part; 2000 resamples of station-days, seed 1.']);
  });
});

describe('fouling pairs', () => {
  const craft = Array.from({ length: 12 }, (_, at) => inspection(`${at}`));
  // Six on both, two on the hull alone, one on the transom alone; one fouled hull whose transom was not looked at; one
  // fouled elsewhere with both clean; one clean craft.
  const both = [0, 1, 2, 3, 4, 5];
  const checks = [
    ...both.flatMap((at) => [look(`${at}`, 'hull below waterline', 'mussels'), look(`${at}`, 'transom', 'mussels')]),
    ...[6, 7].flatMap((at) => [look(`${at}`, 'hull below waterline', 'mussels'), look(`${at}`, 'transom', 'clean')]),
    look('8', 'hull below waterline', 'clean'),
    look('8', 'transom', 'mussels'),
    look('9', 'hull below waterline', 'mussels'),
    look('9', 'transom', 'not checked'),
    ...['hull below waterline', 'transom'].map((part) => look('10', part, 'clean')),
    look('10', 'anchor', 'mussels'),
    ...['hull below waterline', 'transom', 'anchor'].map((part) => look('11', part, 'clean')),
  ];
  const found = ask(foulingPairs, bookOf(craft, checks));

  it('count craft fouled on both among those fouled on either, where both were looked at', () => {
    expect(cells(found, 'component', 'with', 'looked_both', 'either', 'both')).toEqual([
      ['hull below waterline', 'transom', 10, 9, 6],
    ]);
    expect(estimate(found, 0, 'together')).toMatchObject({ numerator: 6, denominator: 9 });
    // By hand: 6 × 10 ÷ (8 × 7).
    expect(cells(found, 'times_chance')).toEqual([[expect.closeTo(60 / 56, 12)]]);
  });

  it('do not show pairs found together on fewer than five craft', () => {
    const few = ask(foulingPairs, bookOf(craft, checks.slice(4)));
    expect(few.rows).toEqual([]);
    expect(few.leftOut).toEqual(['1 pair was found together on fewer than 5 craft, and not shown.']);
  });
});

describe('found by', () => {
  it('is a share of finds that say how, and of nothing else', () => {
    const craft = [inspection('a'), inspection('b')];
    const checks = [
      look('a', 'transom', 'mussels', 'none', { found_by: 'feel' }),
      look('a', 'anchor', 'mussels', 'none', { found_by: 'sight' }),
      look('b', 'transom', 'mussels', 'none', { found_by: 'sight' }),
      look('b', 'anchor', 'mussels'),
      look('b', 'gear', 'clean', 'none', { found_by: 'light' }),
      { ...look('b', 'fenders', 'clean'), state: 'fouled', finding: 'mud', found_by: 'sight' },
    ];
    const found = ask(foundBy, bookOf(craft, checks));
    const rows = cells(found, 'found_by', 'looks', 'recorded', 'share');
    expect(rows.filter(([, looks]) => looks !== 0)).toEqual([
      ['sight', 2, 3, expect.closeTo(2 / 3, 12)],
      ['feel', 1, 3, expect.closeTo(1 / 3, 12)],
    ]);
    expect(found.leftOut).toEqual(['1 look that found mussels does not say how.']);
  });
});
