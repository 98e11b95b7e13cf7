import { describe, expect, test } from 'vitest';
import { feasibleRange, type KnownSum } from './feasible-range.js';
import { cells, drawnCounts, fewest, publicPage } from './public-notebook.js';
import { type Read, readPage } from './read-public-page.js';

// Numbers under 10 withheld, none shown, and nothing from which they follow: common practice of health statistics in the
// United States (ResDAC for CMS, 2024: no cell from 1 to 10, and none from which one can be derived). The attack is that of
// Federal Statistical Policy Working Paper 22 (2005), from memory: a withheld cell must stay feasible over a wide range.

const seeds = [1, 2, 3, 4, 5, 6];
const pages = new Map(seeds.map((seed) => [seed, readPage(publicPage(drawnCounts(seed)))]));

const sumOf = (of: readonly number[], counts: readonly number[]): number =>
  of.reduce((sum, at) => sum + counts[at]!, 0);

/** The withheld sums, and the few that stand nowhere, that a reader could tell to less than the fewest that may be told. */
function tooNarrow(reads: readonly Read[], counts: readonly number[]): readonly string[] {
  const known = reads.flatMap(({ of, sum }): KnownSum[] => (sum === null ? [] : [{ of, sum }]));
  const withheld = reads.filter(({ sum }) => sum === null);
  const cleared = reads.map(({ name, of }) => {
    return { name: `${name}, cleared`, of: of.filter((at) => cells[at]!.outcome === 'cleared') };
  });
  const few = cleared.filter(({ of }) => sumOf(of, counts) > 0 && sumOf(of, counts) < fewest);
  const wanted = new Map([...withheld, ...few].map(({ name, of }) => [of.join(' '), { name, of }]));
  return [...wanted.values()].flatMap(({ name, of }) => {
    const { least, most } = feasibleRange(cells.length, known, of);
    expect(least).toBeLessThanOrEqual(sumOf(of, counts) + 0.01);
    expect(most).toBeGreaterThanOrEqual(sumOf(of, counts) - 0.01);
    return most - least >= fewest - 0.01 ? [] : [`${name}: ${least.toFixed(1)} to ${most.toFixed(1)}`];
  });
}

describe('a public page, attacked by linear programs', () => {
  test.each(seeds)('what is withheld can be anything over a wide range (counts %i)', (seed) => {
    const counts = drawnCounts(seed);
    const reads = pages.get(seed)!;
    const told = reads.filter(({ sum }) => sum !== null);
    for (const { name, of, sum } of told) {
      expect([name, sum]).toEqual([name, sumOf(of, counts)]);
      expect(sum === 0 || sum! >= fewest, `${name} tells ${sum}`).toBe(true);
    }
    expect(told.length).toBeGreaterThan(10);
    expect(told.length).toBeLessThan(reads.length);
    expect(tooNarrow(reads, counts)).toEqual([]);
  });

  test('the attack finds numbers where small ones alone are withheld, and nothing beside them', () => {
    const found = seeds.filter((seed) => {
      const counts = drawnCounts(seed);
      const reads = pages.get(seed)!.map(({ name, of }): Read => {
        const sum = sumOf(of, counts);
        return { name, of, sum: sum > 0 && sum < fewest ? null : sum };
      });
      return tooNarrow(reads, counts).length > 0;
    });
    expect(found).toEqual(seeds);
  });
});

test('none is 0, withheld says so in table, chart and file, and the page says what it withholds', () => {
  const counts = cells.map(({ station, type, outcome }) => {
    if (outcome === 'cleared') return 40;
    return type !== 'paddlecraft' ? 0 : station === 'birch' ? 3 : station === 'cedar' ? 12 : 0;
  });
  const page = publicPage(counts);
  const cell = (head: string): Element => {
    const rows = [...page.querySelectorAll('#table-by-station tbody tr')];
    return rows.find((row) => row.querySelector('th')!.textContent === head)!.querySelectorAll('td')[1]!;
  };
  expect(cell('alder').textContent).toBe('0');
  expect(cell('birch').querySelector('abbr.withheld')!.textContent).toBe('withheld');
  // The only other station with any: shown, it would tell what is withheld.
  expect(cell('cedar').textContent).toBe('withheld');
  expect(page.querySelector('[id^=chart-bars] svg')!.textContent).toContain('withheld');
  expect(page.querySelector('[id^=chart-bars] .note')!.textContent).toContain('2 of 4 withheld');
  expect(page.querySelector('[id^=numbers-bars]')!.textContent).toContain('withheld');
  expect(page.querySelector('.public')!.textContent).toContain('a number of fewer than 10 craft is withheld');
  expect(page.querySelector('#sheet-by-station .note')!.textContent).toContain('It is not zero');
});

test('it carries no rows, no accounts of cells, no lines of files, and offers no choice', () => {
  const page = publicPage(drawnCounts(1));
  expect(page.querySelectorAll('script.cells, #carried-season, #carried-engine, #choice, form, input').length).toBe(0);
  expect(page.body.textContent).not.toMatch(/rows, lines |left open whether they meet|inspections-2025\.csv/);
});
