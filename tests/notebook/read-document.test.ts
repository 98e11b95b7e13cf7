import { expect, test } from 'vitest';
import { editDocument } from '../../src/notebook/edit/edit-document.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { untitled } from '../../src/notebook/sheet-sentence.js';

const read = (...lines: string[]) => readDocument('n.md', lines.join('\n'));
const placed = (problems: readonly { code: string; place: { line: number; column: number | null } }[]): string[] =>
  problems.map(({ code, place }) => `${place.line}:${place.column} ${code}`);

test('a figure keeps the place of its formula, bars and blanks left aside', () => {
  const { document, problems } = read(
    '# T',
    '',
    '| figure | formula | shown as |',
    '|---|---|---|',
    '| inspected |   count(inspections) | whole |',
  );
  expect(problems).toEqual([]);
  expect(document.title).toBe('T');
  expect(document.parts[1]).toMatchObject({
    kind: 'figures',
    rows: [
      {
        name: { text: 'inspected', line: 5, column: 3 },
        formula: { text: 'count(inspections)', line: 5, column: 17 },
        shownAs: { text: 'whole' },
      },
    ],
  });
});

test('stars and underscores in a formula are never taken for emphasis', () => {
  const { document } = read('| figure | formula |', '|---|---|', '| a | b_c * d_e * "x_y_" |');
  expect(document.parts[0]).toMatchObject({
    rows: [{ formula: { text: 'b_c * d_e * "x_y_"' }, shownAs: { text: '' } }],
  });
});

test('a sheet is its sentence and the table below it', () => {
  const { document, problems } = read(
    'Sheet by_station: each station and month of inspections where season is 2025, highest interception first, at most 12.',
    '',
    '| column | formula | shown as |',
    '|---|---|---|',
    '| inspected | count() | whole |',
  );
  expect(problems).toEqual([]);
  expect(document.parts).toMatchObject([
    {
      kind: 'sheet',
      sheet: {
        name: { text: 'by_station', line: 1, column: 7 },
        maker: {
          kind: 'each',
          fields: [{ text: 'station' }, { text: 'month' }],
          rows: { text: 'inspections where season is 2025', line: 1, column: 45 },
        },
        order: { column: { text: 'interception' }, from: 'highest', most: 12 },
        columns: [{ name: { text: 'inspected' } }],
      },
    },
  ]);
});

test('a sheet may have a title for readers, which changes nothing of what it holds', () => {
  const { document, problems } = read('Sheet sites "Parts, found', 'fouled: all": fouling sites of checks, by drive.');
  expect(problems).toEqual([]);
  expect(document.parts).toMatchObject([
    {
      sheet: {
        name: { text: 'sites', line: 1, column: 7 },
        title: 'Parts, found fouled: all',
        maker: { finding: { text: 'fouling sites', line: 2, column: 15 }, by: [{ text: 'drive' }] },
      },
    },
  ]);
  expect(untitled('Sheet sites "Parts": fouling sites of checks.')).toBe('Sheet sites: fouling sites of checks.');
  expect(untitled('Sheet sites: each reason of checks where part is "a": b.')).toContain('"a": b');
});

test('a sheet may come from a finding, and its sentence may run over lines', () => {
  const { document, problems } = read(
    'Sheet sites: fouling sites of checks',
    'where season is 2025, by watercraft_type and drive.',
  );
  expect(problems).toEqual([]);
  expect(document.parts).toMatchObject([
    {
      sheet: {
        maker: {
          kind: 'finding',
          finding: { text: 'fouling sites' },
          rows: { text: 'checks\nwhere season is 2025', line: 1 },
          by: [{ text: 'watercraft_type', line: 2, column: 26 }, { text: 'drive' }],
        },
        columns: [],
      },
    },
  ]);
});

test('charts of one address, or of two that read alike, have names of their own', () => {
  const addresses = ['dots?sheet=a&value=b_c', 'dots?sheet=a_b&value=c', 'dots?sheet=a&value=b_c'];
  const { document } = read(...addresses.flatMap((address) => [`![A chart](${address})`, '']));
  const names = document.parts.map((part) => part.kind === 'chart' && part.chart.name);
  expect(names).toEqual(['dots-a-b-c', 'dots-a-b-c-2', 'dots-a-b-c-3']);
});

test('a chart is an image whose address names its kind and sheet', () => {
  const { document, problems } = read('![Interceptions, by station](dots?sheet=by_station&value=interception)');
  expect(problems).toEqual([]);
  expect(document.parts).toMatchObject([
    {
      kind: 'chart',
      chart: {
        kind: 'dots',
        sheet: 'by_station',
        caption: 'Interceptions, by station',
        options: { value: 'interception' },
      },
    },
  ]);
});

test('values in prose keep their place; code spans are left alone', () => {
  const { document } = read('Stopped {intercepted} of', 'the {inspected}, not `{this}`.');
  expect(document.proseValues.map(({ name }) => [name.text, name.line, name.column])).toEqual([
    ['intercepted', 1, 10],
    ['inspected', 2, 6],
  ]);
});

test('every mistake of form is told at once, each at its place', () => {
  const { problems } = read(
    '| figure | formla |',
    '|---|---|',
    '| a | 1 |',
    '',
    '| input | value | unt |',
    '|---|---|---|',
    '| Wage | 1 | dollars |',
    '',
    'Sheet x: every station of inspections',
    '',
    '| column | formula |',
    '|---|---|',
    '| n | count() |',
    '',
    '![no sheet](dots?value=n)',
  );
  expect(placed(problems)).toEqual([
    '1:12 unknown-head',
    '1:3 missing-head',
    '5:19 unknown-head',
    '7:3 bad-name',
    '9:1 sheet-sentence',
    '15:1 chart-incomplete',
  ]);
  expect(problems[0]?.remedy).toBe('Did you mean "formula"?');
});

test('columns without the sentence of a sheet are a problem', () => {
  expect(placed(read('| column | formula |', '|---|---|', '| n | count() |').problems)).toEqual([
    '1:1 columns-without-sheet',
  ]);
});

test('settings at the head are checked by name and value', () => {
  const { document, problems } = read('---', 'for: the board', 'seed: x', 'resample: 500', '---', '# T');
  expect(document.settings).toEqual({
    for: 'the board',
    seed: 1,
    resamples: 2000,
    filters: null,
    public: false,
    withhold_under: 10,
  });
  expect(placed(problems)).toEqual(['3:1 bad-setting', '4:1 unknown-setting']);
});

test('a finding may be told things behind `with`, each at its place', () => {
  const { document, problems } = read(
    'Sheet waits: turnaround of washes, by station, with target release_target and',
    'standard "hot, common practice", highest median first.',
  );
  expect(problems).toEqual([]);
  expect(document.parts).toMatchObject([
    {
      sheet: {
        maker: {
          rows: { text: 'washes' },
          by: [{ text: 'station' }],
          options: [
            { name: { text: 'target', line: 1, column: 53 }, value: { text: 'release_target', column: 60 } },
            { name: { text: 'standard', line: 2, column: 1 }, value: { text: '"hot, common practice"', column: 10 } },
          ],
        },
        order: { column: { text: 'median' } },
      },
    },
  ]);
});

test.each(['constructor', 'toString', '__proto__'])(
  'the word %s, which every object knows, is a word like any other',
  (word) => {
    const table = `| ${word} | b |\n|---|---|\n| 1 | 2 |\n`;
    expect(readDocument('a.md', table).problems).toEqual([]);
    expect(readDocument('a.md', `---\n${word}: 3\n---\n\n${table}`).problems.map(({ code }) => code)).toEqual([
      'unknown-setting',
    ]);
    expect(editDocument(`| a | ${word} |\n|---|---|\n| 1 | 2 |\n`, { change: 'add row', below: 1 })).toMatchObject({
      line: 3,
    });
  },
);

test('what stands behind the rows of a sheet and is no form of its sentence is a problem of the sentence, at its comma', () => {
  const seen = (sentence: string) => {
    const { problems } = read(sentence, '', '| column | formula |', '|---|---|', '| n | count() |');
    return problems.map(({ code, place, seen: said }) => `${place.column} ${code} ${said}`);
  };
  expect(seen('Sheet s: each station of inspections, station first.')).toEqual(['37 sheet-sentence , station first']);
  expect(seen('Sheet s: fouling sites of checks, for station.')).toEqual(['33 sheet-sentence , for station']);
  expect(seen('Sheet s: each station of inspections where season in (2024, 2025), lowest n first, at most 3.')).toEqual(
    [],
  );
  expect(seen('Sheet s: each station of inspections where station is "a, b".')).toEqual([]);
});
