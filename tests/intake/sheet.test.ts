import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readNumberFormat } from '../../src/intake/source/number-format.js';
import { serialMoment } from '../../src/intake/source/serial-date.js';
import { numberText } from '../../src/intake/source/sheet-cell.js';
import { archiveOf, workbookOf } from './small-archive.js';
import { asideOf, importSmall, notesCrosswalk, valuesOf } from './small-import.js';

const workbook = (name: string) => readFileSync(new URL(`workbooks/${name}`, import.meta.url));
const days = (text: string) => Date.parse(`${text}T00:00:00Z`) / 86_400_000;

const formsCrosswalk = `
crosswalk: sheets
files:
  - files: forms.xlsx/Forms*
    table: wash_units
    dialect: { header_line: 3-4 }
    columns:
      Form: { field: unit }
      When day: { field: in_service_on, pattern: "yyyy-MM-dd" }
      When start: { ignore: not needed }
      Hull port: { ignore: not needed }
      Hull starboard: { ignore: not needed }
      Memo: { field: kind, codes: { "two\\nlines": fixed, "": portable, "TRUE": portable } }
`;

describe('a sheet', () => {
  test('gives its rows by their numbers, merged headings joined, true dates as dates', async () => {
    const result = await importSmall(formsCrosswalk, { 'forms.xlsx': workbook('forms.xlsx') });
    expect(result.problems).toEqual([]);
    expect(valuesOf(result, 'wash_units', 'unit')).toEqual(['1', '4']);
    expect(valuesOf(result, 'wash_units', 'in_service_on')).toEqual([days('2025-06-14'), days('2025-06-17')]);
    expect([...result.records.wash_units.origin.lineOf]).toEqual([5, 9]);
    // Row 6 holds a text in the column of dates, row 8 a date with a time of day; row 7 is blank.
    expect(asideOf(result)).toEqual(['6 When day not-a-date', '6 Memo unknown-code', '8 When day not-a-date']);
    expect(result.setAside[0]).toMatchObject({ file: 'forms.xlsx/Forms 2025', seen: '06/15/2025' });
    expect(result.setAsideRows[0]!.row).toBe('2,06/15/2025,18:45,clean,,"a ""quoted"", cell"');
    expect(result.sum.files[0]).toMatchObject({ file: 'forms.xlsx/Forms 2025', read: 4, kept: 2, setAside: 2 });
  });

  test('of several must be named', async () => {
    const crosswalk = formsCrosswalk.replace('forms.xlsx/Forms*', 'forms.xlsx');
    const result = await importSmall(crosswalk, { 'forms.xlsx': workbook('forms.xlsx') });
    expect(result.problems).toMatchObject([{ code: 'which-member', seen: 'Forms 2025, Notes' }]);
  });

  test('within an archive is read as well', async () => {
    const crosswalk = formsCrosswalk.replace('forms.xlsx/', 'all.zip/2025/forms.xlsx/');
    const all = archiveOf([['2025/forms.xlsx', workbook('forms.xlsx')]]);
    const result = await importSmall(crosswalk, { 'all.zip': all });
    expect(result.sum.files).toMatchObject([{ file: 'all.zip/2025/forms.xlsx/Forms 2025', read: 4, kept: 2 }]);
  });
});

// 5 July 1998 is day 35981 from 1900 and day 34519 from 1904: the vendor's article on the two date systems (Q180162).
describe('days counted from 1900 and from 1904', () => {
  test('fall on the day that the article on both systems names', () => {
    expect(serialMoment(35981, 1900)).toEqual({ day: days('1998-07-05'), second: 0 });
    expect(serialMoment(34519, 1904)).toEqual({ day: days('1998-07-05'), second: 0 });
  });

  // ECMA-376 part 1, 18.17.4.1: day 1 of the 1900 system is 1 January 1900, and day 60 a 29 February that never was.
  test('step over the day that 1900 never had', () => {
    expect(serialMoment(1, 1900)?.day).toBe(days('1900-01-01'));
    expect(serialMoment(59, 1900)?.day).toBe(days('1900-02-28'));
    expect(serialMoment(60, 1900)).toBeNull();
    expect(serialMoment(61, 1900)?.day).toBe(days('1900-03-01'));
    expect(serialMoment(0, 1904)?.day).toBe(days('1904-01-01'));
  });

  test('are told apart by the workbook, which another program wrote', async () => {
    for (const base of [1900, 1904]) {
      const crosswalk = notesCrosswalk
        .replace('notes.csv', `dates-${base}.xlsx`)
        .replace(
          /columns:[\s\S]*constants:.*/,
          'columns: { what: { field: entry }, value: { field: note } }\n    constants: { fiscal_year: 2025, category: supplies, amount: 1 }',
        );
      const result = await importSmall(crosswalk, { [`dates-${base}.xlsx`]: workbook(`dates-${base}.xlsx`) });
      const notes = Object.fromEntries(
        valuesOf(result, 'spending', 'entry').map((what, row) => [what, valuesOf(result, 'spending', 'note')[row]]),
      );
      expect(notes).toEqual({
        day: '1998-07-05',
        serial: '1998-07-05',
        moment: '2025-11-02T01:30:00',
        padded: '00123',
        days: '2.5',
        formula: '2',
        rich: 'plain bold',
      });
    }
  });
});

test('a format is a date by its unquoted letters only', () => {
  // Formats as ECMA-376 part 1, 18.8.31 describes them.
  const shown = [
    'dd/mm/yy',
    'mmm',
    'h:mm AM/PM',
    'mm:ss',
    '[h]:mm',
    '0.00E+00',
    '0 "days"',
    '[Red]0',
    '#,##0\\d',
    'General',
  ];
  expect(shown.map((code) => readNumberFormat(code).shows)).toEqual([
    'date',
    'date',
    'time',
    'time',
    'duration',
    'number',
    'number',
    'number',
    'number',
    'number',
  ]);
});

test('a stored double is written as the shortest decimal that reads back to it, with the declared mark', () => {
  expect(numberText('6.7000000000000002', { shows: 'number' }, 1900, '.')).toBe('6.7');
  expect(numberText('22.5', { shows: 'number' }, 1900, ',')).toBe('22,5');
  // ECMA-376 stores numbers as XML Schema doubles, exponents among them; no cell of an export is written so.
  expect(numberText('1.25E-7', { shows: 'number' }, 1900, ',')).toBe('0,000000125');
  expect(numberText('-2.5E+21', { shows: 'number' }, 1900, '.')).toBe('-2500000000000000000000');
});

describe('a workbook that is not sound', () => {
  const cell = (xml: string) =>
    `<row r="1"><c r="A1" t="inlineStr"><is><t>no</t></is></c></row><row r="2">${xml}</row>`;
  const crosswalk = `
crosswalk: one
files:
  - { files: book.xlsx, table: wash_units, columns: { no: { field: unit } }, constants: { kind: fixed } }
`;
  const problemsOf = async (book: Uint8Array) =>
    (await importSmall(crosswalk, { 'book.xlsx': book })).problems.map(({ code }) => code);

  test('stops the import, whatever is spoilt', async () => {
    const sound = workbookOf(cell('<c r="A2"><v>7</v></c>'));
    expect(await problemsOf(sound)).toEqual([]);
    expect(await problemsOf(workbookOf(cell('<c r="A2" t="s"><v>7</v></c>')))).toEqual(['damaged-workbook']);
    expect(await problemsOf(workbookOf('<row r="2"/><row r="1"/>'))).toEqual(['damaged-workbook']);
    expect(await problemsOf(workbookOf('<row'))).toEqual(['damaged-workbook']);
    expect(await problemsOf(Buffer.from('no archive'))).toEqual(['damaged-archive']);
    expect(await problemsOf(sound.subarray(0, sound.length - 30))).toEqual(['damaged-archive']);
    expect(await problemsOf(archiveOf([['a.txt', 'a']]))).toEqual(['damaged-workbook']);
  });

  test('cannot declare entities', async () => {
    const bomb = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">]><worksheet><sheetData/></worksheet>';
    expect(await problemsOf(workbookOf('', { 'xl/worksheets/sheet1.xml': bomb }))).toEqual(['damaged-workbook']);
  });

  test('cannot grow by saying one long text many times', async () => {
    const long = 'x'.repeat(30_000);
    const rows = Array.from({ length: 60 }, (_, row) => `<row r="${row + 2}"><c t="s"><v>0</v></c></row>`).join('');
    const book = workbookOf(cell('').replace('<row r="2"></row>', '') + rows, {
      'xl/sharedStrings.xml': `<sst><si><t>${long}</t></si></sst>`,
    });
    const small = crosswalk.replace('table:', 'dialect: { unpacked_mib: 1 }, table:');
    const { problems } = await importSmall(small, { 'book.xlsx': book });
    expect(problems.map(({ code }) => code)).toEqual(['too-large-unpacked']);
  });
});

test('an error, a truth and a formula never computed come in as text, never as nothing', async () => {
  const cells = [
    '<c t="e"><v>#N/A</v></c>',
    '<c t="b"><v>1</v></c>',
    '<c><f>A1+1</f></c>',
    '<c t="str"><v>a_x000D_b</v></c>',
  ];
  const rows = cells.map((xml, row) => `<row r="${row + 2}"><c><v>${row}</v></c>${xml}</row>`).join('');
  const head = ['no', 'note'].map((text) => `<c t="inlineStr"><is><t>${text}</t></is></c>`).join('');
  const result = await importSmall(
    `
crosswalk: two
files:
  - files: book.xlsx
    table: spending
    columns: { no: { field: entry }, note: { field: note } }
    constants: { fiscal_year: 2025, category: supplies, amount: 1 }
`,
    { 'book.xlsx': workbookOf(`<row r="1">${head}</row>${rows}`) },
  );
  expect(valuesOf(result, 'spending', 'note')).toEqual(['#N/A', 'TRUE', '=A1+1', 'a\rb']);
});
