import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { describeProblem } from '../../src/problem/describe.js';
import type { FileSum } from '../../src/record/file-sum.js';
import { readCorrections } from '../../src/store/read-corrections.js';
import { readPast } from '../../src/store/read-past.js';
import { writeStore } from '../../src/store/write-store.js';
import { type SmallSeason, writeSmallSeason } from '../command/small-season.js';
import { workbookOf } from '../intake/small-archive.js';
import { testKey } from '../intake/small-import.js';

// Two forms are wrong by themselves, one look follows one of them, one form is alike another but for the craft.
const checks = ['no,part,state', '1,gear,clean', '4,gear,clean', '5,gear,clean', '9,gear,clean', ''];
const checksRule = `
  - files: checks.csv
    table: checks
    columns: { no: { field: inspection }, part: { field: component }, state: { field: state } }
    constants: { side: none }
`;

function season(): SmallSeason {
  const small = writeSmallSeason({
    crosswalk: (text) => text + checksRule,
    forms: (lines) => [...lines.slice(0, -1), '6,a,2025-06-03 09:00,motor', ''],
  });
  writeFileSync(join(small.exports, 'checks.csv'), checks.join('\n'));
  return small;
}

/** Imports as the command does, and tells what it would tell. */
async function run({ crosswalk, exports, store }: SmallSeason, ...mended: string[]) {
  const read = await Promise.all(mended.map(readCorrections));
  const wrong = read.flatMap(({ problems }) => problems);
  if (wrong.length > 0) return { stopped: wrong, files: [], kept: 0, mended: 0, mendedLost: [], isNew: false };
  const result = await importExports({
    crosswalks: [crosswalk],
    from: exports,
    key: testKey,
    progress: () => {},
    program: 'this',
    past: await readPast(store),
    corrections: read.flatMap(({ corrections }) => corrections),
  });
  if (result.problems.length === 0 && result.isNew) expect(await writeStore(store, result)).toEqual([]);
  const { files } = result.sum;
  const sum = (count: (file: FileSum) => number) => files.reduce((total, file) => total + count(file), 0);
  const counts = { kept: sum(({ kept }) => kept), mended: sum((file) => file.mended ?? 0) };
  return { stopped: result.problems, files, ...counts, mendedLost: result.mendedLost, isNew: result.isNew };
}

const aside = ({ store }: SmallSeason) =>
  readFileSync(join(store, 'set-aside.csv'), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').slice(0, 3).concat(line.split(',')[4]!).join(' '));

const contents = ({ store }: SmallSeason) =>
  Object.fromEntries(readdirSync(store).map((name) => [name, readFileSync(join(store, name), 'latin1')]));

/** A copy of a ledger, changed as a person would in a spreadsheet. */
function corrected(small: SmallSeason, name: string, change: (lines: string[]) => string[]): string {
  const lines = readFileSync(join(small.store, name), 'utf8').trim().split('\n');
  const path = join(small.folder, 'corrected.csv');
  writeFileSync(path, `\uFEFF${change(lines).join('\r\n')}\r\n`);
  return path;
}

test('a cell mended in a copy of the ledger brings its row in, with its file and line, and what followed it', async () => {
  const small = season();
  const first = await run(small);
  expect(aside(small)).toEqual([
    'forms.csv 5 start not-a-date',
    'forms.csv 6 site unknown-reference',
    'forms.csv 7  ragged-row',
    'checks.csv 3 no parent-set-aside',
    'checks.csv 4 no parent-set-aside',
    'checks.csv 5 no unknown-reference',
  ]);
  const file = corrected(small, 'set-aside.csv', (lines) =>
    lines.map((line, index) => {
      const mended = index === 0 ? 'mended' : line.includes('not-a-date') ? '2025-06-30 09:00' : '';
      return `${line},${mended}`;
    }),
  );
  const second = await run(small, file);
  expect([second.stopped, second.mended, second.kept]).toEqual([[], 1, first.kept + 2]);
  for (const one of second.files) expect(one.kept + one.setAside, one.file).toBe(one.read);
  expect(second.files.find((one) => one.file === 'forms.csv')).toMatchObject({ read: 6, kept: 4, mended: 1 });
  expect(aside(small)).not.toContain('forms.csv 5 start not-a-date');
  expect(aside(small)).not.toContain('checks.csv 3 no parent-set-aside');
  expect(readFileSync(join(small.store, 'mended-rows.csv'), 'utf8')).toBe(
    'file,line,row\nforms.csv,5,"4,a,2025-06-30 09:00,paddle,ok,withheld"\n',
  );
  // What was mended once stays mended: neither a repeat nor another file makes it forgotten.
  const before = contents(small);
  expect(await run(small, file)).toMatchObject({ isNew: false, mended: 1 });
  expect((await run(small)).isNew).toBe(false);
  expect(contents(small)).toEqual(before);
  writeFileSync(join(small.exports, 'checks.csv'), checks.filter((line) => !line.startsWith('9')).join('\n'));
  expect(await run(small)).toMatchObject({ mended: 1, mendedLost: [] });
});

test('a row mended in a copy of the rows set aside is read like any other, private cells from the export', async () => {
  const small = season();
  await run(small);
  const file = corrected(small, 'set-aside-rows.csv', (lines) => lines.map((line) => line.replace('5,b,', '5,a,')));
  expect(await run(small, file)).toMatchObject({ stopped: [], mended: 1 });
  expect(Object.values(contents(small)).filter((text) => text.includes('Secretmarker'))).toEqual([]);
});

test('a private cell at fault is never written in a correction: it is left out by a word, or mended in the export', async () => {
  const small = season();
  writeFileSync(
    small.crosswalk,
    readFileSync(small.crosswalk, 'utf8').replace(
      'owner: { private: drop }',
      'owner: { field: home_region, region_from: registration }',
    ),
  );
  const forms = join(small.exports, 'forms.csv');
  const withNumbers = readFileSync(forms, 'utf8').replaceAll(/Secretmarker \w+/gu, 'MC 1234 AB');
  writeFileSync(forms, withNumbers.replace(/(2,a.*)MC 1234 AB/u, '$1QQ 7777 ZZ').replace(/(3,a.*)MC/u, '$1RR'));
  await run(small);
  expect(aside(small)).toContain('forms.csv 3 owner unknown-prefix');
  const mend = async (...lines: string[]) => {
    const path = join(small.folder, 'cells.csv');
    writeFileSync(path, `${lines.join('\n')}\n`);
    return run(small, path);
  };
  const wrong = await mend('file,line,column,mended', 'forms.csv,3,owner,MC 7777 ZZ');
  expect(wrong.stopped.map(({ code }) => code)).toEqual(['private-cell']);
  expect(wrong.stopped[0]!.remedy).toContain('(empty)');
  expect(await mend('file,line,column,mended', 'forms.csv,3,owner,(empty)')).toMatchObject({ stopped: [], mended: 1 });
  // As a whole row too, and the other private cells are still taken from the export by their place.
  expect(await mend('file,line,row', 'forms.csv,4,"3,a,2025-06-02 09:00,paddle,ok,(empty)"')).toMatchObject({
    mended: 2,
  });
  expect(aside(small).filter((line) => line.includes('unknown-prefix'))).toEqual([]);
  const kept = contents(small);
  expect(kept['mended-rows.csv']).toContain('forms.csv,3,"2,a,2025-06-01 10:20,motor,mussels,(empty)"');
  expect(Object.entries(kept).filter(([, text]) => /1234 AB|7777 ZZ/u.test(text))).toEqual([]);
  expect((await run(small)).isNew).toBe(false);
});

test('a row of a sheet with a merged cell is mended like any other, though it ends early', async () => {
  const small = season();
  const cell = (place: string, text: string) => `<c r="${place}" t="inlineStr"><is><t>${text}</t></is></c>`;
  const rows = [
    ['no', 'kind', 'dollars', 'fund'],
    ['1', 'supplies', '5'],
    ['2', '', '6'],
  ].map(
    (cells, row) =>
      `<row r="${row + 1}">${cells.map((text, at) => cell(`${'ABCD'[at]}${row + 1}`, text)).join('')}</row>`,
  );
  const merged = '<mergeCells><mergeCell ref="B2:B3"/></mergeCells>';
  const sheet = `<worksheet><sheetData>${rows.join('')}</sheetData>${merged}</worksheet>`;
  writeFileSync(join(small.exports, 'book.xlsx'), workbookOf('', { 'xl/worksheets/sheet1.xml': sheet }));
  const rule = `
  - files: book.xlsx
    table: spending
    columns: { no: { field: entry }, kind: { field: category }, dollars: { field: amount }, fund: { field: note } }
    constants: { fiscal_year: 2025 }
`;
  writeFileSync(small.crosswalk, readFileSync(small.crosswalk, 'utf8') + rule);
  await run(small);
  expect(aside(small)).toContain('book.xlsx/Sheet 3 kind merged-cells');
  const path = join(small.folder, 'cells.csv');
  writeFileSync(path, 'file,line,column,mended\nbook.xlsx/Sheet,3,kind,travel\n');
  expect(await run(small, path)).toMatchObject({ stopped: [], mended: 1 });
  expect(aside(small).filter((line) => line.startsWith('book'))).toEqual([]);
});

test('rows mended in a file whose last rows are left out by rule count both, whether read at once or recalled', async () => {
  const small = season();
  writeFileSync(
    small.crosswalk,
    readFileSync(small.crosswalk, 'utf8').replace(
      'constants: { direction: arriving',
      'leave_out: [{ last_rows: 2, because: totals }]\n    constants: { direction: arriving',
    ),
  );
  const forms = join(small.exports, 'forms.csv');
  writeFileSync(forms, `${readFileSync(forms, 'utf8')}total,,,,,\nchecked,by,hand\n`);
  const counts = async (...mended: string[]) =>
    (await run(small, ...mended)).files.find(({ file }) => file === 'forms.csv');
  expect(await counts()).toMatchObject({ read: 8, kept: 3, setAside: 3, leftOut: 2 });
  const file = corrected(small, 'set-aside-rows.csv', (lines) =>
    lines.map((line) => line.replace('06-31', '06-30').replace('5,b,', '5,a,')),
  );
  expect(await counts(file)).toMatchObject({ read: 8, kept: 5, setAside: 1, leftOut: 2, mended: 2 });
  expect(readFileSync(join(small.store, 'left-out.csv'), 'utf8')).toBe(
    'file,line,because\nforms.csv,8,totals\nforms.csv,9,totals\n',
  );
  // A further file only: this one is recalled. Then another footer: its mended rows are lost with it, and it is said.
  writeFileSync(join(small.exports, 'checks.csv'), checks.filter((line) => !line.startsWith('9')).join('\n'));
  expect(await counts()).toMatchObject({ read: 8, kept: 5, setAside: 1, leftOut: 2, mended: 2 });
  writeFileSync(forms, `${readFileSync(forms, 'utf8')}seen,by,nobody\n`);
  const { mendedLost } = await run(small);
  expect(mendedLost.map(({ line }) => line)).toEqual([5, 6]);
});

test('a mended row that is still wrong is set aside again, and told as it was mended', async () => {
  const small = season();
  await run(small);
  const file = corrected(small, 'set-aside-rows.csv', (lines) => lines.map((line) => line.replace('06-31', '06-32')));
  expect(await run(small, file)).toMatchObject({ stopped: [], mended: 0 });
  expect(readFileSync(join(small.store, 'set-aside.csv'), 'utf8')).toContain('forms.csv,5,start,2025-06-32 09:00,');
});

test('mended rows are lost with their file, and it is said which', async () => {
  const small = season();
  await run(small);
  const file = corrected(small, 'set-aside-rows.csv', (lines) => lines.map((line) => line.replace('06-31', '06-30')));
  await run(small, file);
  const forms = join(small.exports, 'forms.csv');
  writeFileSync(forms, `${readFileSync(forms, 'utf8')}\n\n`);
  expect(await run(small)).toMatchObject({ mended: 0, mendedLost: [{ file: 'forms.csv', line: 5 }] });
  expect(aside(small)).toContain('forms.csv 5 start not-a-date');
});

test('another crosswalk reads a mended row again as it was mended', async () => {
  const small = season();
  await run(small);
  const file = corrected(small, 'set-aside-rows.csv', (lines) => lines.map((line) => line.replace('06-31', '06-30')));
  await run(small, file);
  writeFileSync(
    small.crosswalk,
    readFileSync(small.crosswalk, 'utf8').replace('paddle: paddlecraft', 'paddle: rowboat'),
  );
  expect(await run(small)).toMatchObject({ mended: 1, mendedLost: [] });
});

test('what cannot be mended is refused with its place in the corrections, and the store stays as it is', async () => {
  const small = season();
  await run(small);
  const before = contents(small);
  const refused = async (lines: string[]) => {
    const path = join(small.folder, 'wrong.csv');
    writeFileSync(path, `${lines.join('\n')}\n`);
    const { stopped } = await run(small, path);
    expect(JSON.stringify(stopped)).not.toContain('Jo Doe');
    return stopped.map((problem) => `${problem.code} ${describeProblem(problem)}`);
  };
  const place = (line: number, column: number) => `${join(small.folder, 'wrong.csv')}:${line}:${column}`;
  expect(await refused(['file,line,column,mended', 'forms.csv,2,start,2025-06-01 10:00'])).toEqual([
    expect.stringContaining('no-such-origin'),
  ]);
  const many = await refused([
    'file,line,column,mended',
    'forms.csv,5,owner,somebody',
    'forms.csv,5,begin,2025-06-30 09:00',
    'forms.csv,7,start,2025-06-30 09:00',
    'form.csv,5,start,2025-06-30 09:00',
  ]);
  expect(many.map((text) => text.split(' ')[0])).toEqual([
    'private-cell',
    'unknown-column',
    'withheld-row',
    'no-such-origin',
  ]);
  expect(many[0]).toContain(place(2, 4));
  expect((await refused(['file,line,row', 'forms.csv,5,"4,a,2025-06-30 09:00,paddle,ok,Jo Doe"']))[0]).toContain(
    'private-cell',
  );
  expect((await refused(['file,line,row', 'forms.csv,5,"4,a,2025-06-30 09:00"']))[0]).toContain('ragged-row');
  expect((await refused(['file,line', 'forms.csv,5']))[0]).toContain('not-corrections');
  expect((await refused(['file,line,row', 'forms.csv,five,"4"']))[0]).toContain('not-corrections');
  expect((await refused(['file,line,row', 'forms.csv,five,"4"']))[0]).toContain('the line "five"');
  for (const row of ['2025-06-30 09:00', '2025-06-30 09:00,5']) {
    expect((await refused(['mended,line,column,file', row]))[0]).toContain('cells under 4 headings');
  }
  expect(contents(small)).toEqual(before);
});
