import { describe, expect, test } from 'vitest';
import { comparePages, saysTheSame } from '../../../src/report/comparison/compare-pages.js';
import { comparisonPage } from '../../../src/report/comparison/comparison-page.js';
import type { PageResults } from '../../../src/report/results/page-results.js';
import { earlier, withFigure } from './results-to-compare.js';

const otherRecords = { records: 'd'.repeat(64) };
const otherProgram = { program: { version: '0.2.0', fingerprint: 'e'.repeat(64) } };
const otherWage = { inputs: [{ ...earlier.inputs[0]!, value: 25 }, earlier.inputs[1]!] };

/** The names that differ, each with its causes. */
function causesOf(after: PageResults, before = earlier): Record<string, readonly string[]> {
  const { figures, sheets } = comparePages(before, after);
  return Object.fromEntries([...figures, ...sheets].map(({ name, causes }) => [name, causes]));
}

test('two renderings that say the same have nothing to tell, whatever made them', () => {
  expect(saysTheSame(comparePages(earlier, { ...earlier, ...otherProgram, ...otherRecords, title: 'Other' }))).toBe(
    true,
  );
});

describe('how far a figure moved', () => {
  const moved = (value: number, before = earlier) => comparePages(before, withFigure('rate', { value })).figures[0]!;

  test('is told absolutely, and relative to what it was', () => {
    // 0.05 − 0.04 = 0.01, a quarter of 0.04.
    expect(moved(0.05).by).toBeCloseTo(0.01, 12);
    expect(moved(0.05).relative).toBeCloseTo(0.25, 12);
  });

  test('is told against the former interval, whose ends still belong to it', () => {
    expect([0.01, 0.02, 0.1, 0.101].map((value) => moved(value).beyond)).toEqual([
      'below',
      'within',
      'within',
      'above',
    ]);
  });

  test('has no share of zero, and none of another unit', () => {
    expect(moved(0.05, withFigure('rate', { value: 0 })).relative).toBeNull();
    const { by, relative, beyond } = comparePages(earlier, withFigure('cost', { unit: 'hours', value: 9 })).figures[0]!;
    expect({ by, relative, beyond }).toEqual({ by: null, relative: null, beyond: null });
  });

  test('an end that is not reached bounds nothing', () => {
    const open = { low: 0.02, high: null, confidence: 0.95, sides: 'two' } as const;
    expect(moved(0.9, withFigure('rate', { interval: open })).beyond).toBe('within');
  });

  test('a figure whose interval alone differs is told too', () => {
    const interval = { ...earlier.figures[0]!.interval!, high: 0.11 };
    expect(comparePages(earlier, withFigure('rate', { interval })).figures[0]).toMatchObject({ name: 'rate', by: 0 });
  });

  test('a figure that came or went stands beside nothing', () => {
    const without = { ...earlier, figures: earlier.figures.slice(1) };
    expect(comparePages(without, earlier).figures[0]).toMatchObject({ name: 'rate', before: null, by: null });
    expect(comparePages(earlier, without).figures[0]).toMatchObject({ name: 'rate', after: null, by: null });
  });
});

describe('why a value differs', () => {
  test('data, where records differ and records were counted for it; never for a figure of inputs alone', () => {
    expect(causesOf(withFigure('rate', { value: 0.05 }, { ...earlier, ...otherRecords }))).toEqual({ rate: ['data'] });
    const both = { ...earlier, ...otherRecords, ...otherWage };
    expect(causesOf(withFigure('cost', { value: 250 }, both))).toEqual({ cost: ['input'] });
  });

  test('an input under it, however far down', () => {
    const after = withFigure('twice', { value: 500 }, withFigure('cost', { value: 250 }, { ...earlier, ...otherWage }));
    expect(causesOf(after)).toEqual({ cost: ['input'], twice: ['input'] });
    expect(comparePages(earlier, after).figures.map(({ inputs }) => inputs)).toEqual([['wage'], ['wage']]);
  });

  test('a definition at it or under it', () => {
    const after = withFigure('twice', { value: 440 }, withFigure('cost', { value: 220, formula: 'wage * 11' }));
    const { figures, definitions } = comparePages(earlier, after);
    expect(figures.map(({ causes, formulas }) => [causes, formulas])).toEqual([
      [['formula'], ['cost']],
      [['formula'], ['cost']],
    ]);
    expect(definitions).toEqual([{ name: 'cost', before: 'wage * 10', after: 'wage * 11' }]);
  });

  test('the program, alone or beside others', () => {
    expect(causesOf(withFigure('cost', { value: 201 }, { ...earlier, ...otherProgram }))).toEqual({
      cost: ['program'],
    });
    const all = { ...earlier, ...otherProgram, ...otherRecords };
    expect(causesOf(withFigure('rate', { value: 0.05 }, all))).toEqual({ rate: ['data', 'program'] });
  });

  test('the choice of records, and how limits were resampled', () => {
    const chosen = { ...earlier, chosen: ['Shown: station Alder.'] };
    expect(causesOf(withFigure('rate', { value: 0.05 }, chosen))).toEqual({ rate: ['choice'] });
    const interval = { ...earlier.figures[0]!.interval!, high: 0.11 };
    expect(causesOf(withFigure('rate', { interval }, { ...earlier, seed: 2 }))).toEqual({ rate: ['resampling'] });
  });

  test('nothing, where nothing that the pages carry explains it', () => {
    expect(causesOf(withFigure('cost', { value: 201 }))).toEqual({ cost: [] });
  });
});

describe('files', () => {
  const [forms, stations] = earlier.files;

  test('that came, went or changed are told apart', () => {
    const roads = { ...forms!, file: 'roads.csv' };
    const after = { ...earlier, ...otherRecords, files: [{ ...forms!, fingerprint: '9'.repeat(16), kept: 90 }, roads] };
    const { added, removed, changed, readOtherwise } = comparePages(earlier, after).files;
    expect([added, removed, changed.map((file) => file.after.kept)]).toEqual([[roads], [stations], [90]]);
    expect(readOtherwise).toBe(false);
  });

  test('that are the same may have been read otherwise', () => {
    expect(comparePages(earlier, { ...earlier, ...otherRecords }).files.readOtherwise).toBe(true);
  });
});

describe('a sheet', () => {
  const [sheet] = earlier.sheets;
  const withRows = (rows: PageResults['sheets'][number]['rows']): PageResults => ({
    ...earlier,
    ...otherRecords,
    sheets: [{ ...sheet!, rows, count: rows.length, fingerprint: '4'.repeat(16) }],
  });

  test('tells rows that came and went, and the cells that moved most first', () => {
    const after = withRows([
      ['Cedar', [0.01, 0, 0.05]],
      ['Birch', [0.066, 0.03, 0.12]],
      ['Alder', [0.09, 0.05, 0.15]],
    ]);
    const [changed] = comparePages(earlier, after).sheets;
    expect(changed).toMatchObject({ rowsAdded: ['Cedar'], rowsRemoved: [], causes: ['data'] });
    expect(changed!.cells.map(({ row, column, beyond }) => [row, column, beyond])).toEqual([
      ['Alder', 'rate', 'above'],
      ['Birch', 'rate', 'within'],
    ]);
    expect(changed!.cells[0]!.before).toBe('2.0 (1.0 to 8.0)');
  });

  test('whose rows are in another order is not another sheet, but says so by its fingerprint', () => {
    const [changed] = comparePages(earlier, withRows([...sheet!.rows].reverse())).sheets;
    expect(changed).toMatchObject({ rowsAdded: [], rowsRemoved: [], cells: [] });
  });

  test('too long to be carried differs by its fingerprint alone', () => {
    const long = { ...withRows([]), sheets: [{ ...withRows([]).sheets[0]!, count: 500 }] };
    expect(comparePages(earlier, long).sheets[0]).toMatchObject({ rowsRemoved: [], cells: [], rowsAfter: 500 });
  });
});

test('the page of a comparison is the same each time, and escapes what notebooks hold', () => {
  const after = {
    ...withFigure('rate', { value: 0.2, formula: '<b>' }, { ...earlier, ...otherRecords }),
    title: '</script><i>',
  };
  const html = comparisonPage([comparePages(earlier, after)]);
  expect(comparisonPage([comparePages(earlier, after)])).toBe(html);
  expect(html).not.toMatch(/<i>|<b>|\bNaN\b|undefined|Infinity|\[object/);
  expect(html.match(/<script/g)).toHaveLength(2);
  expect(html).toContain('+16.0 percentage points');
  expect(html).toContain('beyond it, above');
});
