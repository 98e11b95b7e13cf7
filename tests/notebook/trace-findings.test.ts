import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { exampleBook } from '../../src/finding/example/example-book.js';
import { findings } from '../../src/finding/findings.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { traceCell, traceCellAt, traceFigure } from '../../src/notebook/trace.js';
import type { Book } from '../../src/record/book.js';
import { elkPoint, inspection, type SmallRow, smallRecords, smallSum } from '../finding/small-records.js';

// Lines are counted by hand: of every table of the small book row 0 stands on line 2.

const day = { station: 'elk', date: '2025-06-01', state: 'open', staff_hours: 8 };
const wash = (number: string, more: SmallRow): SmallRow => ({
  ...{ wash: `w${number}`, inspection: number, ordered_at: '2025-06-01T18:00Z', ...more },
});
const washed = { started_at: '2025-06-01T18:10Z', finished_at: '2025-06-01T18:30Z' };
const small = openBook(
  smallRecords({
    stations: [elkPoint],
    inspections: ['a', 'b', 'c', 'd'].map((name, at) =>
      inspection(name, {
        outcome: at < 3 ? 'intercepted' : 'cleared',
        started_at: `2025-06-01T18:${at === 3 ? 30 : '00'}Z`,
      }),
    ),
    station_days: [day],
    decontaminations: [
      wash('a', { ...washed, released_at: '2025-06-01T18:40Z', ending: 'released' }),
      wash('b', washed),
      wash('c', { released_at: '2025-06-01T19:00Z', ending: 'left unwashed' }),
    ],
  }),
  smallSum('2025-06-02T00:00Z'),
);

function compute(book: Book, ...lines: string[]) {
  const workings = computeNotebook(readDocument('n.md', ['# N', '', ...lines, ''].join('\n')), book, '');
  expect(workings.notebook.problems).toEqual([]);
  return workings;
}

const lines = (
  counts: readonly { readonly table: string; readonly files: readonly { lines: readonly string[] }[] }[],
) => counts.map(({ table, files }) => [table, files.flatMap((file) => file.lines).join()]);

test('a median of waits says that it is a model’s, and which washes ended, were held and left', () => {
  const workings = compute(small, 'Sheet waits: turnaround of decontaminations.');
  const { counts } = traceCell(workings, 'waits', 'median', 'turnaround')!;
  expect(counts.map(({ model }) => model)).toEqual(Array(4).fill(expect.stringContaining('Kaplan-Meier')));
  expect(lines(counts)).toEqual([
    ['decontaminations', '2-4'],
    ['decontaminations', '2'],
    ['decontaminations', '3'],
    ['decontaminations', '4'],
  ]);
});

test('a number of another table’s records says that table, and how many rows it has', () => {
  const workings = compute(small, 'Sheet worked: effort of station_days, by station.');
  const { counts } = traceCell(workings, 'worked', 'per_1000_hours', 'elk')!;
  expect(lines(counts)).toEqual([
    ['inspections', '2-4'],
    ['station_days', '2'],
  ]);
  expect(counts[0]).toMatchObject({ counted: 3, considered: 4, description: expect.stringContaining('interceptions') });
});

test('under a sum down a column, records told in the same words are told once', () => {
  const figure = ['', '| figure | formula |', '|---|---|', '| all | sum(craft of crowd) |'];
  const book = exampleBook();
  const workings = compute(book, 'Sheet crowd: staffed hours of station_days.', ...figure);
  const { counts, result } = traceFigure(workings, 'all')!;
  expect(counts.length).toBe(1);
  // Each inspection is begun in one hour of the week: what the rows of the column add up to is told as so many records.
  expect(result).toMatchObject({ value: counts[0]!.counted });
});

test('a number that no records make says so, and counts none', () => {
  const workings = compute(small, 'Sheet heaped: time heaping of inspections.');
  const { counts } = traceCell(workings, 'heaped', 'expected', 'elk')!;
  expect(counts).toMatchObject([{ counted: 0, considered: 0, model: expect.stringContaining('whatever'), files: [] }]);
});

test('no finding’s number counts more records than it was asked of, or leaves out fewer than none', () => {
  const book = exampleBook();
  const sheets = findings.map(({ name, table, account: { example } }, at) => {
    const options = Object.entries(example.options).map(([option, value]) => {
      return `${option} ${typeof value === 'string' ? JSON.stringify(value) : value}`;
    });
    const by = example.by.length === 0 ? '' : `, by ${example.by.join(' and ')}`;
    return `Sheet s${at}: ${name} of ${table}${by}${options.length === 0 ? '' : `, with ${options.join(' and ')}`}.\n`;
  });
  const workings = compute(book, ...sheets);
  for (const { name, columns, rows } of workings.notebook.sheets.values()) {
    expect(rows.length, name).toBeGreaterThan(0);
    for (const { name: column } of columns.filter(({ role }) => role === 'value')) {
      rows.forEach((_, row) => {
        for (const { counted, considered, leftOut } of traceCellAt(workings, name, column, row)!.counts) {
          expect([counted <= considered, leftOut.otherwise >= 0], `${name}.${column} ${row}`).toEqual([true, true]);
        }
      });
    }
  }
});
