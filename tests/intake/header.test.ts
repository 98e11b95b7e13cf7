import { describe, expect, test } from 'vitest';
import { joinHeadings } from '../../src/intake/header.js';
import { asideOf, importSmall, notesCrosswalk, valuesOf } from './small-import.js';

const withDialect = (dialect: string) =>
  notesCrosswalk.replace('    columns:', `    dialect: ${dialect}\n    columns:`);
const read = (dialect: string, text: string, chunk = 4096) =>
  importSmall(withDialect(dialect), { 'notes.csv': text }, { chunk });

describe('a header found by its headings', () => {
  test('may stand below any preamble, and rows keep their lines', async () => {
    for (const chunk of [1, 4096]) {
      const text = 'Season 2025\n"made by\nhand",x\n\nno,note,dollars\na,x,1\nb,y,two\n';
      const result = await read('{ header_line: by name }', text, chunk);
      expect(valuesOf(result, 'spending', 'note')).toEqual(['x']);
      expect(asideOf(result)).toEqual(['7 dollars not-a-number']);
    }
  });

  test('that lacks a column still says which', async () => {
    const result = await read('{ header_line: by name }', 'Season\nno,note\na,x\n');
    expect(result.problems).toMatchObject([{ code: 'missing-column', seen: 'dollars', place: { line: 2 } }]);
  });

  test('that is nowhere stops the file', async () => {
    const result = await read('{ header_line: by name }', 'Season\na,b,c\n');
    expect(result.problems.map(({ code }) => code)).toEqual(['empty-file']);
  });
});

describe('loose headings', () => {
  test('match whatever their case, spaces and order, and ledgers spell them as the file does', async () => {
    const files = { 'notes-1.csv': ' NO ,Note,dollars\na,x,1\n', 'notes-2.csv': 'Dollars,  note,no\noops,y,b\n' };
    const crosswalk = withDialect('{ headers: loose }').replace('notes.csv', 'notes-*.csv');
    const result = await importSmall(crosswalk, files);
    expect(valuesOf(result, 'spending', 'entry')).toEqual(['a']);
    expect(asideOf(result)).toEqual(['2 Dollars not-a-number']);
  });

  test('still refuse a column that is not named, and one that stands twice', async () => {
    const result = await read('{ headers: loose }', 'no,NOTE,note,extra,dollars\n');
    expect(result.problems.map(({ code, seen }) => `${code} ${seen}`)).toEqual([
      'repeated-column note',
      'unknown-column extra',
    ]);
  });

  test('must be declared', async () => {
    const result = await read('{}', 'No,note,dollars\n');
    expect(result.problems.map(({ code }) => code)).toEqual(['unknown-column', 'missing-column']);
  });
});

describe('a header of several lines', () => {
  test('joins what stands above one another, an upper heading reaching right over blanks', () => {
    const lines = [
      ['Form', 'Hull', '', 'Memo'],
      ['', 'port', 'starboard', 'Memo'],
    ];
    expect(joinHeadings(lines, false)).toEqual(['Form', 'Hull port', 'Hull starboard', 'Memo']);
    expect(joinHeadings(lines, true)).toEqual(['Form', 'Hull port', 'starboard', 'Memo']);
  });

  test('is passed over whole where it is said again', async () => {
    const crosswalk = withDialect('{ header_line: 1-2 }')
      .replace('no:', 'Form no:')
      .replace('note:', 'Form note:')
      .replace('dollars:', 'Paid dollars:');
    const head = 'Form,,Paid\nno,note,dollars\n';
    const result = await importSmall(crosswalk, { 'notes.csv': `${head}a,x,1\n${head}b,y,2\n` });
    expect(valuesOf(result, 'spending', 'entry')).toEqual(['a', 'b']);
    expect(result.sum.files[0]!.read).toBe(2);
  });
});

test('a column without a heading is called by its place', async () => {
  const crosswalk = notesCrosswalk.replace('note:', 'column 2:');
  const result = await importSmall(crosswalk, { 'notes.csv': 'no,,dollars\na,x,1\n' });
  expect(valuesOf(result, 'spending', 'note')).toEqual(['x']);
});
