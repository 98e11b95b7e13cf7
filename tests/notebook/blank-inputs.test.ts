import { expect, test } from 'vitest';
import { drawChart } from '../../src/chart/draw-chart.js';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { chartFigure } from '../../src/report/chart-figure.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

const wash = {
  wash: '1',
  inspection: 'a',
  ordered_at: '2025-06-01T12:00Z',
  released_at: '2025-06-01T12:30Z',
  ending: 'released',
  method: 'hot spray',
};
const book = openBook(
  smallRecords({ stations: [elkPoint], inspections: [inspection('a')], decontaminations: [wash] }),
  smallSum('2025-06-02T00:00Z'),
);

function compute(lines: readonly string[]) {
  return computeNotebook(readDocument('small.md', lines.join('\n')), book, '').notebook;
}

const inputs = [
  '| input | value | unit | source |',
  '|---|---|---|---|',
  '| goal | | minutes | ask the stations |',
  '| place | nowhere | | |',
  '',
];

test('an input that nobody filled in is named, with what stands beside it', () => {
  expect(compute(inputs).problems.map(({ wanted, remedy }) => `${wanted}: ${remedy}`)).toEqual([
    'a value of goal: Write a number, a date or a text. Beside it stands: ask the stations.',
  ]);
});

test('a finding that was to be told a blank input does not fall back on anything else', () => {
  const told = compute([...inputs, 'Sheet waits: turnaround of decontaminations, with target goal.']);
  expect(told.problems).toHaveLength(1);
  expect(told.sheets.get('waits')).toMatchObject({ failed: true, rows: [], problems: [] });
});

test('a column that stands on a blank input is named as not filled, and a chart of it has no problem of its own', () => {
  const notebook = compute([
    ...inputs,
    'Sheet by_station: each station of inspections.',
    '',
    '| column | formula |',
    '|---|---|',
    '| seen | count() |',
    '| late | goal * seen |',
    '',
    '![Late](dots?sheet=by_station&value=late)',
    '',
    '![Late](dots?sheet=by_station&value=lte)',
  ]);
  const sheet = notebook.sheets.get('by_station')!;
  expect(sheet.failedColumns).toEqual(['late']);
  const charts = notebook.blocks.flatMap((block) => (block.kind === 'chart' ? [block.chart] : []));
  expect(drawChart(charts[0]!, sheet, 'small.md')).toHaveProperty('problems');
  expect(charts.map((chart) => chartFigure(chart, notebook).problems.length)).toEqual([0, 1]);
});

test('an input whose text is no value of a field is what has to be changed', () => {
  const figures = ['| figure | formula |', '|---|---|', '| here | count(inspections where station is place) |'];
  const [, problem] = compute([...inputs, ...figures]).problems;
  expect(problem!.remedy).toBe('Give `place` one of these values: it is “nowhere”.');
});
