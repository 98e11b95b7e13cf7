import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import type { Result } from '../../src/formula/result.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { showResult } from '../../src/notebook/shown.js';
import { withheldNotebook } from '../../src/notebook/withhold/withheld-notebook.js';
import {
  elkPoint,
  inspection,
  look,
  pineGate,
  type SmallRow,
  smallRecords,
  smallSum,
} from '../finding/small-records.js';

// What is expected here is counted by hand from the rows below: 40 craft at Elk Point (4 intercepted), 30 at Pine Gate (12).
const craft = (station: string, count: number, intercepted: number): SmallRow[] =>
  Array.from({ length: count }, (_, at) =>
    inspection(`${station} ${at}`, {
      station,
      craft: `${station} craft ${at}`,
      length_ft: 12 + at,
      outcome: at < intercepted ? 'intercepted' : 'cleared',
    }),
  );
const inspections = [...craft('elk', 40, 4), ...craft('pine', 30, 12)];
const fouled = inspections.filter(({ outcome }) => outcome === 'intercepted').map((row) => String(row.inspection));
const checks = inspections.flatMap(({ inspection: number }, at) => [
  look(String(number), 'transom', fouled.includes(String(number)) ? 'mussels' : 'clean'),
  look(String(number), 'anchor line', fouled.indexOf(String(number)) > 12 ? 'mussels' : 'clean'),
  look(String(number), 'bilge', at % 2 === 0 ? 'clean' : 'not checked'),
]);
const book = openBook(
  smallRecords({ stations: [elkPoint, pineGate], inspections, checks }),
  smallSum('2025-11-30T18:00Z'),
);

function shown(...lines: string[]) {
  const workings = computeNotebook(readDocument('n.md', ['# N', '', ...lines].join('\n')), book, 'f');
  expect(workings.notebook.problems).toEqual([]);
  const { notebook, ...sums } = withheldNotebook(workings, 10);
  const word = (result: Result): string => showResult(result, '');
  return {
    ...sums,
    figures: Object.fromEntries([...notebook.figures].map(([name, { result }]) => [name, word(result)])),
    rows: (name: string) => notebook.sheets.get(name)!.rows.map(({ cells }) => cells.map(word)),
    sheet: (name: string) => notebook.sheets.get(name)!,
  };
}

const figures = (...rows: (readonly [string, string])[]): string[] => [
  '| figure | formula |',
  '|---|---|',
  ...rows.map(([name, formula]) => `| ${name} | ${formula} |`),
  '',
];
const elk = 'inspections where station is "elk"';

test('a count of few is withheld, and so are its share, what is calculated with it, and a text that it decides', () => {
  const { figures: told } = shown(
    ...figures(
      ['all', `count(${elk})`],
      ['few', `count(${elk} and outcome is "intercepted")`],
      ['part', 'rate(few, all)'],
      ['twice', 'few * 2'],
      ['word', 'if(few > 3, "many", "few")'],
      ['none', `count(${elk} and outcome is "turned away")`],
    ),
  );
  expect(told).toEqual({
    all: '40',
    few: 'withheld',
    part: 'withheld',
    twice: 'withheld',
    word: 'withheld',
    none: '0',
  });
});

test('two numbers that differ by few craft do not both stand, whichever they are', () => {
  const { figures: told } = shown(
    ...figures(['all', `count(${elk})`], ['most', `count(${elk} and outcome is "cleared")`]),
  );
  expect(told).toEqual({ all: '40', most: 'withheld' });
});

test('what one craft has is withheld, and a middle value of many is not', () => {
  const { figures: told } = shown(
    ...figures(
      ['longest', 'highest(length_ft of inspections)'],
      ['nearly', 'quantile(length_ft of inspections, 0.95)'],
      ['middle', `median(length_ft of ${elk})`],
      ['craft', `distinct(craft of ${elk} and length_ft < 15)`],
      ['names', `listed(craft of ${elk})`],
    ),
  );
  // 40 lengths from 12 to 51: the middle lies between 31 and 32.
  expect(told).toMatchObject({ longest: 'withheld', nearly: 'withheld', craft: 'withheld', names: 'withheld' });
  expect(told.middle).toContain('31.5');
});

const byStation = [
  'Sheet by_station: each station of inspections, highest found first.',
  '',
  '| column | formula |',
  '|---|---|',
  '| found | count(where outcome is "intercepted") |',
  '| place | rank_from_highest(found of by_station) |',
  '',
];

test('a place among withheld numbers is withheld, and rows do not stand in their order', () => {
  const { rows, withheld, cells } = shown(...byStation);
  expect(rows('by_station')).toEqual([
    ['Elk Point', 'withheld', 'withheld'],
    ['Pine Gate', 'withheld', 'withheld'],
  ]);
  expect([withheld, cells]).toEqual([4, 4]);
});

test('a sum down a sheet is a number like any other, and its order is not', () => {
  const { figures: told } = shown(
    ...byStation,
    ...figures(['both', 'sum(found of by_station)'], ['best', 'highest(found of by_station)']),
  );
  expect(told).toEqual({ both: '16', best: 'withheld' });
});

test('a finding that tells more than the craft it counts is withheld whole, with what stands on it', () => {
  const {
    sheets,
    sheet,
    figures: told,
  } = shown(
    'Sheet compared: stations compared of inspections.',
    '',
    'Sheet each_craft: each craft of inspections.',
    '',
    '| column | formula |',
    '|---|---|',
    '| found | count() |',
    '',
    ...figures(['from', 'highest(interception of compared)']),
  );
  expect(sheets).toEqual(['compared', 'each_craft']);
  expect(sheet('compared')).toMatchObject({ rows: [], withheld: true });
  expect(told).toEqual({ from: 'withheld' });
});

test('counts and shares alone make no finding one for the public: its other words and places tell too', () => {
  const { sheets } = shown(
    'Sheet heaped: time heaping of inspections.',
    '',
    'Sheet missing: missing values of inspections.',
    '',
    'Sheet covered: fouling coverage of checks.',
    '',
  );
  expect(sheets).toEqual(['heaped', 'missing', 'covered']);
});

test('of fouling sites each number says its craft, and none found stays none', () => {
  const { sheet, rows } = shown('Sheet sites: fouling sites of checks.', '');
  const names = sheet('sites').columns.map(({ name }) => name);
  const cell = (part: string, column: string): string =>
    rows('sites').find(([component]) => component === part)![names.indexOf(column)]!;
  // 16 craft fouled on the transom, 3 of them on the anchor line too, none in the bilge; 35 of 70 bilges looked into.
  expect(cell('anchor line', 'fouled')).toBe('withheld');
  expect(cell('anchor line', 'share_of_fouled')).toBe('withheld');
  expect(cell('bilge', 'fouled')).toBe('0');
  expect(cell('bilge', 'looked')).toBe('35');
  // 13 of the 16 have the transom alone: with both shown, 3 would follow.
  expect([cell('transom', 'fouled'), cell('transom', 'sole')].filter((word) => word === 'withheld').length).toBe(1);
});
