import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

const wash = { wash: 'a', inspection: 'a', ordered_at: '2025-06-01T12:00Z', method: 'hot spray' };
const washes = [30, 90].map((minutes, at) => ({
  ...wash,
  wash: String(at),
  released_at: new Date(Date.parse('2025-06-01T12:00Z') + minutes * 60_000).toISOString(),
  ending: 'released',
}));
const inspections = [inspection('a')];
const book = openBook(
  smallRecords({ stations: [elkPoint], inspections, decontaminations: washes }),
  smallSum('2025-06-02T00:00Z'),
);

const head = `
| input | value | low | high | unit |
|---|---|---|---|---|
| price | 1,000 | 500 | 2,000 | dollars |
| wage | 20 | 10 | 30 | dollars a staff hour |
| hours | 60 | 60 | 60 | staff hours |
| target | 60 | 20 | 120 | minutes |
| spare | 1 | 0 | 2 | |
| fixed | 5 | | | |

| figure | formula | shown as |
|---|---|---|
| net | wage * hours - price | dollars |
| inside_share | inside of waits for "turnaround" | percent |

Sheet waits: turnaround of decontaminations, with target target.
`;

function compute(sentence: string) {
  return computeNotebook(readDocument('small.md', `${head}\n${sentence}\n`), book, '').notebook;
}

function rowsOf(sentence: string) {
  const sheet = compute(sentence).sheets.get('swings')!;
  return sheet.rows.map(({ cells }) =>
    cells.map((cell) => (cell.kind === 'number' ? cell.value : cell.kind === 'text' ? cell.text : cell.kind)),
  );
}

test('each input moves alone between its ends, the widest swing first, and turns where it crosses zero', () => {
  // By hand: net is 20 × 60 − 1,000 = 200; the wage crosses at 1,000 ÷ 60, the price at 1,200.
  expect(rowsOf('Sheet swings: sensitivity of net.')).toEqual([
    [
      'price',
      '500 to 2,000 dollars',
      200,
      700,
      -800,
      1500,
      'turns',
      expect.stringMatching(/^1,(199|200|201)(\.\d+)? dollars$/),
    ],
    [
      'wage',
      '10 to 30 dollars a staff hour',
      200,
      -400,
      800,
      1200,
      'turns',
      expect.stringMatching(/^16\.6[5-8] dollars/),
    ],
    ['hours', '60 to 60 staff hours', 200, 200, 200, 0, 'stays', 'not within the range'],
  ]);
});

test('a threshold moves the line that the conclusion turns at', () => {
  const rows = rowsOf('Sheet swings: sensitivity of net, with threshold 150.');
  expect(compute('Sheet swings: sensitivity of net, with threshold 150.').sheets.get('swings')!.turnsAt).toBe(150);
  expect(rows[0]!.at(-1)).toMatch(/^1,0(49|50|51)/);
});

test('inputs far below one are moved, and told, with all their digits', () => {
  const text = `
| input | value | low | high | unit |
|---|---|---|---|---|
| rate_a_craft | 0.0000002 | 0 | 0.000001 | |

| figure | formula |
|---|---|
| net | rate_a_craft * 10000000 - 5 |

Sheet swings: sensitivity of net.
`;
  const { sheets } = computeNotebook(readDocument('small.md', text), book, '').notebook;
  const cells = sheets.get('swings')!.rows[0]!.cells.map((cell) => (cell.kind === 'text' ? cell.text : null));
  // By hand: 0 where the input is 5 ÷ 10,000,000; found by halving, to a thousandth of the range.
  expect(cells[1]).toBe('0 to 0.000001');
  expect(Number(cells.at(-1))).toBeCloseTo(5e-7, 9);
});

test('what an input tells a finding is computed again', () => {
  // Released after 30 and 90 minutes: within 20 none, within 60 half, within 120 all.
  expect(rowsOf('Sheet swings: sensitivity of inside_share, with threshold 0.2.')).toEqual([
    ['target', '20 to 120 minutes', 0.5, 0, 1, 1, 'turns', expect.stringMatching(/^(29\.9|30)/)],
  ]);
});

test('a figure asked for again leaves the page’s own values as they were', () => {
  const { figures, problems } = compute('Sheet swings: sensitivity of net.');
  expect(figures.get('net')!.result).toMatchObject({ value: 200 });
  expect(figures.get('inside_share')!.result).toMatchObject({ value: 0.5 });
  expect(problems).toEqual([]);
});

test('what is no figure, and an option that is none, are told in their place', () => {
  const told = (sentence: string) =>
    compute(sentence).problems.map(({ code, place, seen }) => [code, place.line, seen]);
  expect(told('Sheet swings: sensitivity of nett.')).toMatchObject([['not-a-figure', 18, 'nett']]);
  expect(told('Sheet swings: sensitivity of net, with target 3.')).toMatchObject([['unknown-option', 18, 'target']]);
});
