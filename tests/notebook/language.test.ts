import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { Memory } from '../../src/notebook/memory.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { showResult } from '../../src/notebook/shown.js';
import { traceCell } from '../../src/notebook/trace.js';
import type { NotebookWorkings } from '../../src/notebook/workings.js';
import { smallRecords, smallSum } from '../finding/small-records.js';
import { smallBook } from '../formula/small-book.js';

// Every expected number in this file can be counted on the rows of the small book: two seasons at two stations, two
// inspections each, with one interception a station in 2024 and none in 2025.

function compute(lines: readonly string[], memory = new Memory()): NotebookWorkings {
  return computeNotebook(readDocument('small.md', lines.join('\n')), smallBook, '', memory);
}

const inputs = (...rows: readonly string[]) => ['', '| input | value | unit |', '|---|---|---|', ...rows, ''];
const figures = (...rows: readonly string[]) => ['', '| figure | formula |', '|---|---|', ...rows, ''];
const selections = (...rows: readonly string[]) => ['', '| selection | rows |', '|---|---|', ...rows, ''];
const sheet = (sentence: string, ...rows: readonly string[]) => [
  '',
  `Sheet ${sentence}.`,
  '',
  '| column | formula |',
  '|---|---|',
  ...rows,
  '',
];

/** The sheet's rows as they are shown, a text a cell. */
function shown({ notebook }: NotebookWorkings, name: string): readonly (readonly string[])[] {
  return notebook.sheets.get(name)!.rows.map(({ cells }) => cells.map((cell) => showResult(cell, '')));
}

function figure({ notebook }: NotebookWorkings, name: string): string {
  return showResult(notebook.figures.get(name)!.result, '');
}

function problems({ notebook }: NotebookWorkings): readonly (readonly [string, number, string])[] {
  return notebook.problems.map(({ code, place, seen }) => [code, place.line, seen]);
}

const season = [
  ...inputs('| this_season | 2025 | year |', '| last_season | 2024 | year |'),
  ...selections('| of_season | inspections where season is this_season |'),
  ...figures(
    '| inspected | count(of_season) |',
    '| intercepted | count(of_season where outcome is "intercepted") |',
    '| caught | rate(intercepted, inspected) |',
  ),
];

test('a figure is asked for an earlier season, and all that the season reaches follows', () => {
  const workings = compute([
    ...season,
    ...figures(
      '| before | intercepted with this_season as last_season |',
      '| rate_before | caught with this_season as 2024 |',
      '| change | inspected - inspected with this_season as last_season |',
    ),
  ]);
  expect(problems(workings)).toEqual([]);
  expect(['intercepted', 'before', 'rate_before', 'change'].map((name) => figure(workings, name))).toEqual([
    '0',
    '2',
    '0.50',
    '0',
  ]);
  const { result } = workings.notebook.figures.get('rate_before')!;
  expect(result).toMatchObject({ numerator: 2, denominator: 4 });
});

test('a figure is asked with another input only where that can be done, and the problem says what is wrong', () => {
  const workings = compute([
    ...season,
    ...inputs('| wage | 20 | dollars |'),
    ...sheet(
      'by_station: each station of of_season',
      '| looked | count() |',
      '| again | looked with this_season as 2024 |',
    ),
    ...figures(
      '| a | inspected with last_season as 2023 |',
      '| b | of_season with this_season as 2024 |',
      '| c | inspected with inspected as 3 |',
      '| d | inspected with this_season as wage |',
      '| e | stacked with this_season as 2023 |',
      '| stacked | inspected with this_season as 2024 |',
      '| f | summed with this_season as 2024 |',
      '| summed | sum(looked of by_station) |',
    ),
  ]);
  expect(problems(workings).map(([code, , seen]) => [code, seen])).toEqual([
    ['not-a-figure', 'looked'],
    ['no-effect', 'last_season'],
    ['not-a-figure', 'of_season'],
    ['not-an-input', 'inspected'],
    ['units-differ', 'wage'],
    ['not-again', 'stacked'],
    ['not-again', 'summed'],
  ]);
});

test('a sheet is known to figures and sheets anywhere on the page, and computed before them', () => {
  const workings = compute([
    ...figures('| largest | highest(looked of by_station) |', '| north | looked of by_station for "North" |'),
    ...sheet(
      'by_season: each station and season of inspections',
      '| looked | count() |',
      '| of_station | looked / looked of by_station for station |',
    ),
    ...sheet('by_station: each station of inspections', '| looked | count() |'),
  ]);
  expect(problems(workings)).toEqual([]);
  expect([figure(workings, 'largest'), figure(workings, 'north')]).toEqual(['4', '4']);
  expect(shown(workings, 'by_season')).toEqual([
    ['South', '2,024', '2', '0.50'],
    ['South', '2,025', '2', '0.50'],
    ['North', '2,024', '2', '0.50'],
    ['North', '2,025', '2', '0.50'],
  ]);
});

test('a column asks about the other rows of its own sheet: shares, ranks, and sums down the rows as shown', () => {
  const workings = compute(
    sheet(
      'by_length: each season and outcome of inspections, lowest longest first',
      '| down | running_sum(looked of by_length) |',
      '| part | share(looked, sum(looked of by_length)) |',
      '| in_season | share(looked, sum(looked of by_length where season is 2024)) |',
      '| place | rank_from_highest(longest of by_length) |',
      '| looked | count() |',
      '| longest | highest(length_ft) |',
    ),
  );
  expect(problems(workings)).toEqual([]);
  // Season, outcome, running sum, part of all, by 2024’s, place, looked, longest.
  expect(shown(workings, 'by_length').map((row) => row.filter((_, at) => at !== 4))).toEqual([
    ['2,024', 'cleared', '1', '0.13', '4', '1', '10'],
    ['2,024', 'intercepted', '3', '0.25', '2', '2', '20'],
    ['2,024', 'refused', '4', '0.13', '2', '1', '20'],
    ['2,025', 'cleared', '8', '0.50', '1', '4', '50'],
  ]);
});

test('a loop through a sheet is named whole, and one among its columns too', () => {
  const through = compute([
    ...figures('| usual | mean(looked of by_station) |'),
    ...sheet('by_station: each station of inspections', '| looked | count() |', '| over | looked - usual |'),
  ]);
  expect(through.notebook.problems.map(({ remedy }) => remedy)[0]).toContain('usual → by_station → usual');
  const among = compute(
    sheet(
      's: each station of inspections, highest down first',
      '| down | running_sum(looked of s) |',
      '| looked | count() |',
    ),
  );
  expect(among.notebook.problems.map(({ remedy }) => remedy).join()).toMatch(/^The circle is down → down:[^,]*$/);
});

test('a field is never taken for a sheet or figure of the same name', () => {
  const workings = compute([
    ...figures('| minutes | median(minutes of inspections) |', '| looked | sum(looked of craft) |'),
    ...sheet('craft: each craft of inspections', '| looked | count() |', '| craft_seen | distinct(craft) |'),
    ...sheet('length_ft: each station of inspections', '| usual | median(length_ft) |'),
  ]);
  expect(problems(workings)).toEqual([]);
  expect([figure(workings, 'minutes'), figure(workings, 'looked')]).toEqual(['6', '8']);
});

test('a sheet’s column with a problem is told once, and what stands on it says so', () => {
  const workings = compute([
    ...sheet('s: each station of inspections', '| looked | cont() |', '| ok | count() |'),
    ...figures('| total | sum(looked of s) |', '| fine | sum(ok of s) |'),
  ]);
  expect(problems(workings)).toEqual([['unknown-function', 6, 'cont']]);
  expect(workings.notebook.figures.get('total')!.result).toEqual({
    kind: 'missing',
    why: 'it stands on s, which has a problem',
  });
  expect(figure(workings, 'fine')).toBe('8');
});

test('a list is an input, and stands after in', () => {
  const workings = compute([
    ...inputs('| watched | North, East | list |'),
    ...figures('| seen | count(inspections where station in watched) |', '| wrong | watched |'),
  ]);
  expect(figure(workings, 'seen')).toBe('4');
  expect(problems(workings)).toEqual([['not-a-value', 10, 'watched']]);
});

test('what stands on a sheet is computed again when the sheet changes, and only then', () => {
  const memory = new Memory();
  const lines = (first: string, second: string) => [
    ...sheet('s: each station of inspections', `| looked | ${first} |`, `| other | ${second} |`),
    ...figures('| total | sum(looked of s) |', '| apart | count(station_days) |'),
  ];
  compute(lines('count()', '1'), memory);
  expect(figure(compute(lines('count(where season is 2025)', '1'), memory), 'total')).toBe('4');
  expect(memory.computedNames).toEqual(['s.looked', 'total']);
  compute(lines('count(where season is 2025)', '1'), memory);
  expect(memory.computedNames).toEqual([]);
});

test('a finding’s numbers are looked up with their intervals, and traced to the records that were asked', () => {
  const records = smallRecords({
    stations: [{ station: 'a', name: 'Alder', setting: 'launch', time_zone: 'UTC' }],
    inspections: ['cleared', 'intercepted', 'cleared'].map((outcome, at) => ({
      inspection: String(at),
      station: 'a',
      started_at: `2025-06-0${at + 1}T10:00Z`,
      direction: 'arriving',
      extent: 'full',
      watercraft_type: at === 2 ? 'paddlecraft' : 'open motorboat',
      outcome,
    })),
  });
  const book = openBook(records, smallSum('2025-11-01T00:00Z'));
  const text = [
    'Sheet found: interceptions of inspections, by watercraft_type.',
    ...figures(
      '| boats | rate of found for "open motorboat" |',
      '| more | boats * 2 |',
      '| apart | boats / rate of found for "paddlecraft" |',
    ),
  ].join('\n');
  const workings = computeNotebook(readDocument('small.md', text), book, '');
  const column = workings.notebook.sheets.get('found')!.columns.find(({ role, shownAs }) => {
    return role === 'value' && shownAs === 'per 1,000';
  })!;
  const again = computeNotebook(readDocument('small.md', text.replaceAll('rate of', `${column.name} of`)), book, '');
  expect(again.notebook.problems).toEqual([]);
  const boats = again.notebook.figures.get('boats')!.result;
  expect(boats).toMatchObject({ kind: 'number', value: 0.5, numerator: 1, denominator: 2 });
  expect(boats.kind === 'number' && boats.interval !== null).toBe(true);
  const apart = again.notebook.figures.get('apart')!.result;
  expect(apart.kind === 'number' && apart.interval).toBeNull();
  const traced = traceCell(again, 'found', column.name, 'open motorboat')!;
  // The interception stands on line 3; both are full inspections.
  expect(traced.counts).toMatchObject([
    { counted: 1, considered: 2, files: [{ file: 'inspections.csv', rows: 1, lines: ['3'] }] },
    { counted: 2, considered: 2, files: [{ file: 'inspections.csv', rows: 2, lines: ['2-3'] }] },
  ]);
});

test('what comes from records and decides the rows of a sheet is said in its cells, and of a finding’s under its table', () => {
  const text = [
    '# Small',
    '',
    '| selection | rows |',
    '|---|---|',
    '| long | inspections where length_ft > mean(length_ft of inspections) |',
    '',
    'Sheet each_long: each station of long.',
    '',
    '| column | formula |',
    '|---|---|',
    '| n | count() |',
    '',
    'Sheet found_long: station funnel of long.',
    '',
  ].join('\n');
  const { notebook } = computeNotebook(readDocument('small.md', text), smallBook, '');
  expect(notebook.problems).toEqual([]);
  const said = 'mean(length_ft of inspections) decides which rows are counted';
  const cell = notebook.sheets.get('each_long')!.rows[0]!.cells[1]!;
  expect(cell).toMatchObject({ kind: 'number', cautions: [`${said}, anew in every resample`] });
  expect(notebook.sheets.get('found_long')!.notes).toContain(`Caution: ${said}, and is taken as known.`);
});

test('an account tells rows counted, left out by the conditions and without the value, and they add up', () => {
  const workings = compute(
    sheet('s: each station of inspections', '| usual | mean(length_ft where standing_water is not "yes") |'),
  );
  // North: four rows; standing water yes once, unknown once; of the two others one has no length.
  const [count] = traceCell(workings, 's', 'usual', 'north')!.counts;
  expect(count).toMatchObject({ considered: 4, counted: 1, leftOut: { otherwise: 1, unknown: 1, missing: 1 } });
});
