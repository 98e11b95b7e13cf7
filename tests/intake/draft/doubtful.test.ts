import { expect, test } from 'vitest';
import { draftCrosswalk } from '../../../src/intake/draft/draft-crosswalk.js';
import { readCrosswalk } from '../../../src/intake/read-crosswalk.js';
import { inFolder } from '../small-import.js';

async function draftOf(files: Readonly<Record<string, string>>) {
  const drafted = await inFolder(files, (folder) => draftCrosswalk(folder, Object.keys(files), 'drafted'));
  if ('problems' in drafted) throw new Error(JSON.stringify(drafted.problems));
  return drafted;
}

const rows = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, at) => row(at)).join('\n');

async function columnsOf(file: string, text: string) {
  const { files } = await draftOf({ [file]: text });
  return new Map(files[0]!.columns.map((column) => [column.column, column]));
}

test('a part that was looked at is proposed neither as fouled nor as clean', async () => {
  const text = `form,part,checked,found\n${rows(40, (at) => `F${at},hull,${at % 9 ? 'Y' : 'N'},${at % 9 ? (at % 7 ? 'None' : 'Mud') : ''}`)}\n`;
  const checked = (await columnsOf('checks.csv', text)).get('checked')!;
  expect(Object.fromEntries(checked.codes!)).toEqual({ N: 'not checked', Y: null });
  expect(checked.questions.join()).toContain('"Y None": clean, "Y Mud": fouled, "N": not checked');
});

test('an outcome read off its letters alone is asked about, and Clean is no craft that was cleaned', async () => {
  const results = ['Clean', 'Cleaned', 'Turned', 'Mussels'];
  const text = `form,site,start,result\n${rows(40, (at) => `F${at},A,2025-05-13 08:${10 + at},${results[at % 4]}`)}\n`;
  const { codes, questions } = (await columnsOf('inspections.csv', text)).get('result')!;
  expect(Object.fromEntries(codes!)).toEqual({
    Clean: 'cleared',
    Cleaned: 'cleaned on site',
    Mussels: 'intercepted',
    Turned: 'turned away',
  });
  expect(questions.join()).toContain('Turned as turned away. Is that');
});

test('a header over two lines is joined, and N/A on a checklist is a part that the craft lacks', async () => {
  const head = 'form,site,hull,,prop,bilge\n,,port,stbd,,\n';
  const { files, text } = await draftOf({
    'forms.csv': `${head}${rows(40, (at) => `F${at},A,OK,${at % 9 ? 'OK' : ''},N/A,${at % 5 ? 'OK' : 'N/A'}`)}\n`,
  });
  expect(text).toContain('header_line: 1-2');
  expect(files[0]!.fold!.columns.map(({ column }) => column)).toEqual(['hull port', 'hull stbd', 'prop', 'bilge']);
  expect(files[0]!.fold!.values.find((value) => value.text === 'N/A')!.state).toBe('absent');
});

test('where a column has no heading, no row of records is taken for the header', async () => {
  const { text } = await draftOf({
    'forms.csv': `form,site,,result\n${rows(30, (at) => `F${at},A,Ann Marker,pass`)}\n`,
  });
  expect(text).not.toContain('Marker');
  expect(text).toContain('      column 3:');
});

test('a heading that stands twice is told, and no crosswalk is written that could not be read', async () => {
  const files = { 'forms.csv': `form,site,hull,hull\n${rows(9, (at) => `F${at},A1,OK,OK`)}\n` };
  const drafted = await inFolder(files, (folder) => draftCrosswalk(folder, ['forms.csv'], 'drafted'));
  expect('problems' in drafted && drafted.problems.map(({ code, seen }) => `${code} ${seen}`)).toEqual([
    'repeated-column hull',
  ]);
});

test('money, units in cells and fiscal years by letters are proposed as they are written', async () => {
  const spending = `ref,fy,account,amount\n${rows(30, (at) => `R${at},FY${23 + (at % 3)},wages,"${at % 9 ? `$1,${100 + at}.00` : '($55.00)'}"`)}\n`;
  const columns = await columnsOf('spending.csv', spending);
  expect(columns.get('amount')).toMatchObject({ use: { field: 'amount' }, unit: 'written' });
  expect(columns.get('fy')!.codes!.get('FY23')).toBe('2023');
  const { text } = await draftOf({ 'spending.csv': spending });
  expect(text).toContain('thousands: comma');
  expect(readCrosswalk('c.yaml', text).problems.every(({ code }) => code === 'crosswalk-open-question')).toBe(true);
  const boats = `form,site,length\n${rows(30, (at) => `F${at},A,${at % 3 ? `${20 + at} ft` : `${4 + at / 10} m`}`)}\n`;
  const length = (await columnsOf('inspections.csv', boats)).get('length')!;
  expect(length).toMatchObject({ use: { field: 'length_ft' }, unit: 'written' });
});

test('cells of several waters, rows of totals, and lists that nobody drafted are asked about', async () => {
  const water = (at: number) => (at % 5 ? `Lake ${'ABC'[at % 3]}` : 'Lake A; Lake B');
  const text = `form,site,last water\n${rows(30, (at) => `F${at},elk,${water(at)}`)}\nTotal,,\n`;
  const drafted = await draftOf({ 'inspections.csv': text });
  expect(drafted.text).toContain('several: { between: ";", take: first }');
  expect(drafted.text).toContain('leave_out: [{ first_cell: "Total*", because: totals }]');
  const asked = readCrosswalk('c.yaml', drafted.text).problems.map(({ seen }) => seen);
  expect(asked).toContainEqual(expect.stringContaining('No file drafted here lists the stations'));
  const listed = await draftOf({ 'inspections.csv': text, 'stations.csv': 'station,name,setting\nelk,Elk,launch\n' });
  expect(listed.text).not.toContain('No file drafted here lists the stations');
});
