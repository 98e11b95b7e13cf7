import { expect, test } from 'vitest';
import { draftCrosswalk } from '../../../src/intake/draft/draft-crosswalk.js';
import { readCrosswalk } from '../../../src/intake/read-crosswalk.js';
import { workbookOf } from '../small-archive.js';
import { inFolder } from '../small-import.js';

async function draftOf(files: Readonly<Record<string, string | Uint8Array>>, paths = Object.keys(files)) {
  const drafted = await inFolder(files, (folder) => draftCrosswalk(folder, paths, 'drafted'));
  if ('problems' in drafted) throw new Error(JSON.stringify(drafted.problems));
  return drafted;
}

const list = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, at) => row(at)).join('\n');

function sheetXml(rows: readonly (readonly string[])[], merged: readonly string[]): string {
  const cell = (text: string, column: number, row: number) =>
    text === '' ? '' : `<c r="${'ABCDEF'[column]}${row}" t="inlineStr"><is><t>${text}</t></is></c>`;
  const xml = rows.map(
    (cells, row) => `<row r="${row + 1}">${cells.map((c, at) => cell(c, at, row + 1)).join('')}</row>`,
  );
  const areas = merged.map((ref) => `<mergeCell ref="${ref}"/>`).join('');
  return `<worksheet><sheetData>${xml.join('')}</sheetData><mergeCells>${areas}</mergeCells></worksheet>`;
}

test('a merged title is no header, and headings merged over two rows below it are joined', async () => {
  const rows = [
    ['Gap station', '', '', '', '', ''],
    [],
    ['No', 'Craft', '', 'Hull', '', 'Result'],
    ['', 'Type', 'Length', 'Port', 'Stbd', ''],
    ...Array.from({ length: 20 }, (_, at) => [`G${at}`, 'Rowboat', `${10 + at}`, 'ok', 'ok', 'Passed']),
  ];
  const merged = ['A1:F1', 'A3:A4', 'B3:C3', 'D3:E3', 'F3:F4'];
  const book = workbookOf('', { 'xl/worksheets/sheet1.xml': sheetXml(rows, merged) });
  const { files, text } = await draftOf({ 'inspections.xlsx': book });
  expect(text).toContain('header_line: 3-4');
  const { columns, fold } = files[0]!;
  const named = [...columns, ...(fold?.columns ?? [])].map(({ column }) => column);
  expect(named.sort()).toEqual(['Craft Length', 'Craft Type', 'Hull Port', 'Hull Stbd', 'No', 'Result']);
});

test('a sheet that holds a sentence alone is passed over and said so; alone it is a problem', async () => {
  const note = workbookOf('', { 'xl/worksheets/sheet1.xml': sheetXml([['Ask about July.']], []) });
  const forms = `form,site,start\n${list(9, (at) => `F${at},A,2025-05-0${at + 1} 08:00`)}\n`;
  const { files, text } = await draftOf({ 'forms.csv': forms, 'note.xlsx': note });
  expect(files.length).toBe(1);
  expect(text).toMatch(/# note\.xlsx\S* holds no table/u);
  const alone = await inFolder({ 'note.xlsx': note }, (folder) => draftCrosswalk(folder, ['note.xlsx'], 'drafted'));
  expect('problems' in alone && alone.problems.map(({ code }) => code)).toEqual(['empty-file']);
});

test('registration numbers stay private under a heading that is like a region’s', async () => {
  const forms = `form,site,start,Reg. no,State reg\n${list(30, (at) => `F${at},A,2025-05-13 08:${10 + at},TL ${1000 + at} AB,TL ${1000 + at} AB`)}\n`;
  const { files } = await draftOf({ 'forms.csv': forms });
  const uses = files[0]!.columns.map(({ column, use }) => `${column} ${use.kind}`);
  expect(uses).toContain('Reg. no drop');
  expect(uses).toContain('State reg drop');
});

const wide = (at: number) => {
  const minute = 10 + at;
  const wash = at % 10 ? ',,' : `W${at},2025-05-13 09:00,2025-05-13 09:30`;
  return `F${at},2025-05-13,08:${minute},08:${minute + 5},Rowboat,${wash}`;
};

test('columns of washes beside an inspection are none of its times, and are asked about', async () => {
  const head = 'form,Date,Start time,End time,Boat type,Wash no,Wash ordered,Wash end\n';
  const { files, text } = await draftOf({ 'inspections.csv': `${head}${list(40, wide)}\n` });
  const [file] = files;
  expect(file!.table.name).toBe('inspections');
  expect(file!.combined.map(({ field, columns }) => [field, ...columns])).toEqual([
    ['started_at', 'Date', 'Start time'],
    ['finished_at', 'Date', 'End time'],
  ]);
  expect(file!.questions.join()).toContain('"Wash no", "Wash ordered", "Wash end" tell of washes');
  expect(readCrosswalk('c.yaml', text).problems.every(({ code }) => code === 'crosswalk-open-question')).toBe(true);
});

test('numbers that begin anew in each file are the key, with a question', async () => {
  const of = (year: number) => `Insp. no,site,start\n${list(20, (at) => `${at + 1},A,${year}-05-13 08:${10 + at}`)}\n`;
  const { files } = await draftOf({ 'inspections-2024.csv': of(2024), 'inspections-2025.csv': of(2025) });
  const number = files[0]!.columns.find(({ column }) => column === 'Insp. no')!;
  expect(number.use).toMatchObject({ field: 'inspection' });
  expect(number.questions.join()).toContain('begin anew in each file');
});

test('dates with names of months are known, and files whose dates differ in form are drafted apart', async () => {
  const row = (date: (day: number) => string, more = '') =>
    list(20, (at) => `F${at};${date(at + 3)};08 h ${10 + at};Ponton;RAS${more}`);
  const head = "No fiche;Date;Heure;Type d'embarcation;Coque";
  const { files } = await draftOf({
    'f-2023.csv': `${head}\n${row((day) => `${day} août 2023`)}\n`,
    'f-2024.csv': `${head}\n${row((day) => `${day < 10 ? '0' : ''}${day}/08/2024`)}\n`,
    'f-2025.csv': `${head};Vivier\n${row((day) => `${day < 10 ? '0' : ''}${day}/08/2025`, ';RAS')}\n`,
  });
  expect(files.map(({ patterns, combined }) => [...patterns, combined[0]?.pattern])).toEqual([
    ['f-2023.csv', "d MMMM yyyy HH 'h' mm"],
    ['f-2024.csv', "dd/MM/yyyy HH 'h' mm"],
    ['f-2025.csv', "dd/MM/yyyy HH 'h' mm"],
  ]);
});

test('no pattern of files reaches over a file that is drafted apart', async () => {
  const of = (year: number, head: string) =>
    `${head},site,start\n${list(20, (at) => `F${at}-${year},A,${year}-05-13 08:${10 + at}`)}\n`;
  const { files } = await draftOf({
    'forms-2023.csv': of(2023, 'form'),
    'forms-2024.csv': of(2024, 'form'),
    'forms-2025.csv': of(2025, 'form no'),
  });
  expect(files.map(({ patterns }) => patterns)).toEqual([['forms-2023.csv', 'forms-2024.csv'], ['forms-2025.csv']]);
});

test('a date that is joined with times of day is still the date of its station day', async () => {
  const days = `Station,Date,Opened,Closed\n${list(20, (at) => `A,"June ${at + 1}, 2025",06:00,20:00`)}\n`;
  const { files } = await draftOf({ 'opening days.csv': days });
  expect(files[0]!.columns.find(({ column }) => column === 'Date')).toMatchObject({
    use: { field: 'date' },
    pattern: 'MMMM d, yyyy',
  });
});

test('marks of a checklist are known whatever their case and signs', async () => {
  const marks = ['OK', 'mussels!!', 'MUSSELS', 'n/a'];
  const forms = `form,hull port,hull stbd,bilge,anchor\n${list(40, (at) => `F${at},${[0, 1, 2, 3].map((c) => marks[(at + c) % 4]).join(',')}`)}\n`;
  const { files } = await draftOf({ 'forms.csv': forms });
  const said = files[0]!.fold!.values.find(({ text }) => text === 'mussels!!');
  expect(said).toMatchObject({ state: 'fouled', finding: 'mussels' });
});

test('an outcome known by its values alone is asked about', async () => {
  const forms = `form,site,start,Below\n${list(20, (at) => `F${at},A,2025-05-13 08:${10 + at},ok`)}\n`;
  const { files } = await draftOf({ 'inspections.csv': forms });
  expect(files[0]!.columns.find(({ column }) => column === 'Below')!.questions.join()).toContain('Is this outcome?');
});

test('words of a program’s own for outcomes stay with the column that its heading names, for a person to map', async () => {
  const results = ['Good to go', 'STOPPED, shells', 'Drained + go'];
  const forms = `form,site,start,Result\n${list(30, (at) => `F${at},A,2025-05-13 08:${10 + at},"${results[at % 3]}"`)}\n`;
  const { files } = await draftOf({ 'inspections.csv': forms });
  const result = files[0]!.columns.find(({ column }) => column === 'Result')!;
  expect(result.use).toMatchObject({ field: 'outcome' });
  expect([...result.codes!.values()]).toEqual([null, null, null]);
  expect(result.questions.join()).toContain('What do the texts without a code stand for?');
});

test('ledgers of two columns, years named by two, and files that only add to others are asked about', async () => {
  const ledger = `Voucher,FY,Account,Debit,Credit\n${list(30, (at) => `V${at},FY2${3 + (at % 2)}/2${4 + (at % 2)},wages,${at % 9 ? `${at}.50,` : `,${at}.75`}`)}\n`;
  const { files, text } = await draftOf({ 'ledger.csv': ledger });
  expect(files[0]!.questions.join()).toContain(
    'combine: { amount: { columns: ["Debit", "Credit"], minus: ["Credit"] } }',
  );
  const year = files[0]!.columns.find(({ column }) => column === 'FY')!;
  expect(year).toMatchObject({
    use: { field: 'fiscal_year' },
    questions: ['Which number does each of these texts stand for?'],
  });
  expect(readCrosswalk('c.yaml', text).problems.every(({ code }) => code === 'crosswalk-open-question')).toBe(true);
  const pay = `Day,Station,Hours\n${list(20, (at) => `${at + 1}-Jun-2025,A,${at % 3}`)}\n`;
  const days = await draftOf({ 'daily pay.csv': pay });
  expect(days.files[0]!.questions.join()).toContain('completes: other files');
});
