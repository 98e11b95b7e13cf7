import { expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { showFraction } from '../../src/notebook/shown.js';
import { elkPoint, inspection, smallRecords, smallSum } from '../finding/small-records.js';

// Two washes: released after 30 minutes, and after 90.
const wash = (number: string, minutes: number) => ({
  wash: number,
  inspection: 'a',
  ordered_at: '2025-06-01T12:00Z',
  released_at: new Date(Date.parse('2025-06-01T12:00Z') + minutes * 60_000).toISOString(),
  ending: 'released',
  method: 'hot spray',
});
const book = openBook(
  smallRecords({
    stations: [elkPoint],
    inspections: [inspection('a')],
    decontaminations: [wash('1', 30), wash('2', 90)],
  }),
  smallSum('2025-06-02T00:00Z'),
);

function compute(sentence: string) {
  const plain = ['| half | 0.5 | |', '| few | 3 | |', ''];
  const inputs = [
    '| input | value | unit |',
    '|---|---|---|',
    '| goal | 1 | hours |',
    '| wage | 20 | dollars |',
    ...plain,
  ];
  return computeNotebook(readDocument('small.md', [...inputs, sentence].join('\n')), book, '').notebook;
}

function needsOf(sentence: string): readonly string[] {
  const inputs = ['| input | value | unit |', '|---|---|---|', '| goal | 1 | hours |', ''];
  const text = [...inputs, sentence].join('\n');
  return computeNotebook(readDocument('small.md', text), book, '').sheets.get('waits')!.needs;
}

function inside(sentence: string): number | null {
  const sheet = compute(sentence).sheets.get('waits')!;
  const column = sheet.columns.findIndex(({ name }) => name === 'inside');
  const whole = sheet.rows.at(-1)?.cells[column];
  return whole?.kind === 'number' ? whole.value : null;
}

function problems(sentence: string) {
  return compute(sentence).problems.map(({ code, place, seen, remedy }) => [code, place.column, seen, remedy]);
}

test('an option is a number, or an input told in another unit of the same kind', () => {
  expect(inside('Sheet waits: turnaround of decontaminations, with target 60.')).toBe(0.5);
  expect(inside('Sheet waits: turnaround of decontaminations, with target goal.')).toBe(0.5);
  expect(inside('Sheet waits: turnaround of decontaminations, with target 100.')).toBe(1);
});

test('what a finding is told by an input stands on that input', () => {
  expect(needsOf('Sheet waits: turnaround of decontaminations, with target goal.')).toEqual(['goal']);
  expect(needsOf('Sheet waits: turnaround of decontaminations, with target 60.')).toEqual([]);
});

test('an unknown option, and one given twice, are told with the nearest name', () => {
  expect(problems('Sheet waits: turnaround of decontaminations, with targt 60.')).toEqual([
    ['unknown-option', 51, 'targt', 'Did you mean "target"?'],
  ]);
  expect(problems('Sheet waits: turnaround of decontaminations, with target 60 and target 90.')).toEqual([
    ['option-twice', 65, 'target', 'Take one of the two out.'],
  ]);
  expect(problems('Sheet sites: sides of checks, with top 3.')).toEqual([
    ['unknown-option', 36, 'top', '"sides" can be told nothing: take out what stands behind "with".'],
  ]);
});

test('a value of the wrong kind, of the wrong unit, or of no known name is a problem at its place', () => {
  expect(problems('Sheet waits: turnaround of decontaminations, with target "soon".').map(([code]) => code)).toEqual([
    'wrong-option',
  ]);
  expect(problems('Sheet waits: turnaround of decontaminations, with target wage.')).toEqual([
    ['wrong-option', 58, 'wage', 'Give target in that unit.'],
  ]);
  expect(problems('Sheet waits: turnaround of decontaminations, with target gaol.')).toEqual([
    ['wrong-option', 58, 'gaol', 'Did you mean "goal"?'],
  ]);
  expect(problems('Sheet met: wash conformity of decontaminations, with standard "western hul 2016".')).toEqual([
    ['wrong-option', 63, '"western hul 2016"', 'Did you mean "western hull 2016"?'],
  ]);
});

test('a number that counts parts is whole and at least 1, written or from an input', () => {
  const wantedOf = (sentence: string) =>
    compute(sentence).problems.map(({ code, place, seen, wanted }) => [code, place.column, seen, wanted]);
  const wanted = 'a whole number of at least 1 for top';
  for (const seen of ['0', '-2', '2.5']) {
    expect(wantedOf(`Sheet order: fouling ranks of checks, with top ${seen}.`)).toEqual([
      ['wrong-option', 48, seen, wanted],
    ]);
  }
  expect(wantedOf('Sheet order: fouling ranks of checks, with top half.')).toEqual([
    ['wrong-option', 48, 'half', wanted],
  ]);
  for (const held of ['1', '40', 'few']) {
    expect(wantedOf(`Sheet order: fouling ranks of checks, with top ${held}.`)).toEqual([]);
  }
});

test('options may stand with commas between them, and none that is written is passed over', () => {
  const told = (sentence: string) => {
    const [part] = readDocument('small.md', sentence).document.parts;
    if (part?.kind !== 'sheet' || part.sheet.maker.kind !== 'finding') throw new Error('no finding');
    return part.sheet.maker.options.map(({ name, value }) => [name.text, value.text, value.column]);
  };
  const plan = 'Sheet plan: staff plan of station_days, with';
  expect(told(`${plan} hours 1,500, shift 4.`)).toEqual([
    ['hours', '1,500', 52],
    ['shift', '4', 65],
  ]);
  expect(told(`${plan} hours 500,shift 4 and reached 0.8, people most_people.`).map(([name]) => name)).toEqual([
    'hours',
    'shift',
    'reached',
    'people',
  ]);
});

test('a share of records is told apart from a ratio of one thing to another', () => {
  const days = [{ station: 'elk', date: '2025-06-01', state: 'open', staff_hours: 500 }];
  const records = smallRecords({ stations: [elkPoint], inspections: [inspection('a')], station_days: days });
  const sentence = 'Sheet work: effort of station_days.\n\nSheet found: interceptions of inspections.\n';
  const { sheets } = computeNotebook(
    readDocument('small.md', sentence),
    openBook(records, smallSum(null)),
    '',
  ).notebook;
  const words = (sheet: string, column: string) => {
    const { columns, rows } = sheets.get(sheet)!;
    const cell = rows[0]!.cells[columns.findIndex(({ name }) => name === column)]!;
    return cell.kind === 'number' ? showFraction(cell) : cell.kind;
  };
  expect(words('work', 'per_staff_hour')).toBe('1 by 500');
  expect(words('work', 'per_1000_hours')).toBe('0 by 0.50');
  expect(words('found', 'interception')).toBe('0 of 1');
});
