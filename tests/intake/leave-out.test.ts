import { describe, expect, test } from 'vitest';
import { matchesText, textPattern } from '../../src/intake/text-pattern.js';
import { asideOf, importSmall, notesCrosswalk, valuesOf } from './small-import.js';

const withRules = (rules: string) => notesCrosswalk.replace('    columns:', `    leave_out:\n${rules}\n    columns:`);
const text = 'no,note,dollars\na,x,1\nb,TEST,oops\nc,y,2\n\nTotal,,3\nTotal of all\n';

test('rows left out by rule are counted as such, whatever is wrong with them', async () => {
  const rules =
    '      - { first_cell: "Total*", because: totals }\n      - { column: note, is: [TEST, DRILL], because: practice }';
  const result = await importSmall(withRules(rules), { 'notes.csv': text });
  expect(result.sum.files[0]).toMatchObject({
    read: 5,
    kept: 2,
    setAside: 0,
    leftOut: 3,
    leftOutBecause: { practice: 1, totals: 2 },
  });
  expect(asideOf(result)).toEqual([]);
  expect(valuesOf(result, 'spending', 'entry')).toEqual(['a', 'c']);
});

test('without a rule the same rows are read as records, and what is none is set aside', async () => {
  const result = await importSmall(notesCrosswalk, { 'notes.csv': text });
  expect(result.sum.files[0]).toMatchObject({ read: 5, kept: 3, setAside: 2, leftOut: 0 });
  expect(asideOf(result)).toEqual(['3 dollars not-a-number', '7  ragged-row']);
});

test('a number of last rows is left out, blank lines and line breaks in cells not counted', async () => {
  const rules = '      - { last_rows: 2, because: foot }';
  for (const chunk of [1, 4096]) {
    const quoted = 'no,note,dollars\na,"x\n\nx",1\nb,y,2\nsum,"z\nz",3\n\nmade by hand\n\n';
    const result = await importSmall(withRules(rules), { 'notes.csv': quoted }, { chunk });
    expect(valuesOf(result, 'spending', 'entry')).toEqual(['a', 'b']);
    expect(result.sum.files[0]).toMatchObject({ read: 4, kept: 2, setAside: 0, leftOut: 2 });
  }
});

test('rows may be kept by what a column says', async () => {
  const rules = '      - { column: note, is_not: [x, y], because: other forms }';
  const result = await importSmall(withRules(rules), { 'notes.csv': 'no,note,dollars\na,x,1\nb,,2\nc, y ,2\n' });
  expect(valuesOf(result, 'spending', 'entry')).toEqual(['a', 'c']);
});

describe('a crosswalk that leaves rows out', () => {
  const codesOf = async (rules: string) =>
    (await importSmall(withRules(rules), { 'notes.csv': text })).problems.map(({ code }) => code);

  test('must say why, by one condition, of a column that it names', async () => {
    expect(await codesOf('      - { last_rows: 2 }')).toEqual(['crosswalk-missing-setting']);
    expect(await codesOf('      - { last_rows: 2, first_cell: x, because: y }')).toEqual(['crosswalk-wrong-shape']);
    expect(await codesOf('      - { column: nota, is: [x], because: y }')).toEqual(['crosswalk-unknown-column']);
    expect(await codesOf('      - { column: note, because: y }')).toEqual(['crosswalk-missing-setting']);
    expect(await codesOf('      - { last_rows: all, because: y }')).toEqual(['crosswalk-wrong-value']);
  });
});

test('a star stands for any letters, and every other sign for itself', () => {
  const like = (pattern: string, some: string) => matchesText(textPattern(pattern), some);
  expect(['Total', 'Total 2025', 'Grand Total'].map((some) => like('Total*', some))).toEqual([true, true, false]);
  expect(['a.b', 'axb'].map((some) => like('a.b', some))).toEqual([true, false]);
  expect(like('ab*ba', 'aba')).toBe(false);
  expect(like('*a*b*', `${'a'.repeat(100_000)}c`)).toBe(false);
});
