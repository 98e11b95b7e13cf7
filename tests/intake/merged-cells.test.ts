import { expect, test } from 'vitest';
import { draftCrosswalk } from '../../src/intake/draft/draft-crosswalk.js';
import { workbookOf } from './small-archive.js';
import { asideOf, importSmall, inFolder, valuesOf } from './small-import.js';

/** A sheet from its rows of cells, with cells merged as ECMA-376 part 1, 18.3.1.54 writes them. */
function sheet(rows: readonly (readonly string[])[], merged: readonly string[]): Buffer {
  const cell = (text: string, column: number, row: number) =>
    text === '' ? '' : `<c r="${'ABCDEF'[column]}${row}" t="inlineStr"><is><t>${text}</t></is></c>`;
  const xml = rows.map(
    (cells, row) => `<row r="${row + 1}">${cells.map((c, at) => cell(c, at, row + 1)).join('')}</row>`,
  );
  const areas = merged.map((ref) => `<mergeCell ref="${ref}"/>`).join('');
  return workbookOf('', {
    'xl/worksheets/sheet1.xml': `<worksheet><sheetData>${xml.join('')}</sheetData><mergeCells>${areas}</mergeCells></worksheet>`,
  });
}

const crosswalk = `
crosswalk: sheet
files:
  - files: book.xlsx
    table: spending
    dialect: { header_line: 1 }
    columns:
      no: { field: entry }
      kind: { field: category }
      dollars: { field: amount }
      fund: { field: note }
      memo: { ignore: free text }
    constants: { fiscal_year: 2025 }
`;
const head = ['no', 'kind', 'dollars', 'fund', 'memo'];
const spread = crosswalk.replace('header_line: 1', 'header_line: 1, merged: spread');

const tall = sheet(
  [head, ['1', 'supplies', '5', 'county'], ['2', '', '6', ''], ['3', '', '7', 'state'], ['4', 'travel', '8']],
  ['B2:B4', 'D2:D3', 'E2:E5'],
);

test('a row whose text is in a cell above that it is merged with is set aside at its place, never read as blank', async () => {
  const result = await importSmall(crosswalk, { 'book.xlsx': tall });
  expect(result.problems).toEqual([]);
  expect(valuesOf(result, 'spending', 'entry')).toEqual(['1', '4']);
  expect(asideOf(result)).toEqual(['3 kind merged-cells', '4 kind merged-cells']);
  expect(result.setAsideRows.map(({ line, row }) => `${line} ${row}`)).toEqual(['3 2,,6', '4 3,,7,state']);
  expect(result.sum.files[0]).toMatchObject({ read: 4, kept: 2, setAside: 2 });
});

test('a field that may be missing is not taken for missing where its cell is merged', async () => {
  const book = sheet([head, ['1', 'supplies', '5', 'county'], ['2', 'travel', '6']], ['D2:D3']);
  const result = await importSmall(crosswalk, { 'book.xlsx': book });
  expect([valuesOf(result, 'spending', 'note'), asideOf(result)]).toEqual([['county'], ['3 fund merged-cells']]);
});

test('where the crosswalk says so, merged cells give their text to each of their rows', async () => {
  const result = await importSmall(spread, { 'book.xlsx': tall });
  expect(asideOf(result)).toEqual([]);
  expect(valuesOf(result, 'spending', 'category')).toEqual(['supplies', 'supplies', 'supplies', 'travel']);
  expect(valuesOf(result, 'spending', 'note')).toEqual(['county', 'county', 'state', null]);
  expect([...result.records.spending.origin.lineOf]).toEqual([2, 3, 4, 5]);
});

test('a text merged over several columns is never given to another column', async () => {
  const wide = sheet([head, ['1', 'supplies', '5', 'county'], ['2', 'travel', '6', 'state']], ['C2:D2', 'D3:E3']);
  for (const text of [crosswalk, spread]) {
    const result = await importSmall(text, { 'book.xlsx': wide });
    expect(asideOf(result)).toEqual(['2 fund merged-cells']);
    // What is merged with a column that is not read loses nothing.
    expect(valuesOf(result, 'spending', 'note')).toEqual(['state']);
  }
});

test('merged cells without any text, above the header, and in rows left out by rule, set nothing aside', async () => {
  const book = sheet(
    [['Spending of the year'], head, ['1', 'supplies', '5'], ['2', 'travel', '6'], ['total', '', '11']],
    ['A1:E1', 'D3:D4', 'A5:B5'],
  );
  const text = crosswalk
    .replace('header_line: 1', 'header_line: 2')
    .replace('columns:', 'leave_out: [{ last_rows: 1, because: totals }]\n    columns:');
  const result = await importSmall(text, { 'book.xlsx': book });
  expect(result.problems).toEqual([]);
  expect(asideOf(result)).toEqual([]);
  expect(result.sum.files[0]).toMatchObject({ read: 3, kept: 2, leftOut: 1 });
});

test('merged cells spread over a million rows are refused before they fill the memory', async () => {
  const rows = [head, ['x'.repeat(30_000), 'supplies', '5', 'county']];
  const book = sheet([...rows, ...Array.from({ length: 60 }, (_, row) => [String(row)])], ['A2:A62']);
  const small = spread.replace('merged: spread', 'merged: spread, unpacked_mib: 1');
  const { problems } = await importSmall(small, { 'book.xlsx': book });
  expect(problems.map(({ code }) => code)).toEqual(['too-large-unpacked']);
});

test('a draft asks whether merged cells hold in each of their rows', async () => {
  const drafted = await inFolder({ 'book.xlsx': tall }, (folder) => draftCrosswalk(folder, ['book.xlsx'], 'sheet'));
  if ('problems' in drafted) throw new Error(JSON.stringify(drafted.problems));
  expect(drafted.files[0]!.patterns).toEqual(['book.xlsx/Sheet']);
  expect(drafted.files[0]!.questions.join()).toContain('merged: spread');
});
