import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { pathPattern } from '../../src/intake/path-pattern.js';
import { importSmall, inFolder, notesCrosswalk, testKey } from './small-import.js';

const codesOf = (problems: readonly { readonly code: string }[]) => problems.map(({ code }) => code);

test('a star stands within one name, two stars for any folders', () => {
  expect(pathPattern('lakes/i-*.csv').test('lakes/i-2025.csv')).toBe(true);
  expect(pathPattern('lakes/i-*.csv').test('lakes/old/i-2025.csv')).toBe(false);
  expect(pathPattern('**/i.csv').test('i.csv')).toBe(true);
  expect(pathPattern('**/i.csv').test('a/b/i.csv')).toBe(true);
  expect(pathPattern('a.csv').test('aXcsv')).toBe(false);
});

test('a missing file, an empty one and a folder stop the import, and nothing is given', async () => {
  const missing = await importSmall(notesCrosswalk, {});
  expect(codesOf(missing.problems)).toEqual(['no-such-file']);
  const empty = await importSmall(notesCrosswalk, { 'notes.csv': '' });
  expect(codesOf(empty.problems)).toEqual(['empty-file']);
  const blank = await importSmall(notesCrosswalk, { 'notes.csv': '\n\n' });
  expect(codesOf(blank.problems)).toEqual(['empty-file']);
  const folder = await importSmall(notesCrosswalk, { 'notes.csv/inside.csv': 'no,note,dollars\n' });
  expect(codesOf(folder.problems)).toEqual(['is-a-folder']);
  for (const result of [missing, empty, blank, folder]) {
    expect(result.sum.files).toEqual([]);
    expect(result.records.spending.rowCount).toBe(0);
  }
});

test('a header without rows is a file of none', async () => {
  const result = await importSmall(notesCrosswalk, { 'notes.csv': 'no,note,dollars' });
  expect(result.problems).toEqual([]);
  expect(result.sum.files[0]).toMatchObject({ read: 0, kept: 0, setAside: 0 });
});

test('a column that the crosswalk does not name stops the file, and so does one that is not there', async () => {
  const result = await importSmall(notesCrosswalk, { 'notes.csv': 'no,note,dolars,extra,no\na,x,1,2,3\n' });
  expect(
    result.problems.map(({ code, seen, place }) => `${place.file}:${place.line}:${place.column} ${code} ${seen}`),
  ).toEqual([
    'notes.csv:1:3 unknown-column dolars',
    'notes.csv:1:4 unknown-column extra',
    'notes.csv:1:5 repeated-column no',
    'notes.csv:1:null missing-column dollars',
  ]);
  expect(result.problems[0]!.remedy).toContain('"dollars"');
});

test('a file without a header shows none of its cells, since they may be private', async () => {
  const result = await importSmall(notesCrosswalk, { 'notes.csv': 'a,Gilda,1\nb,Harl,2\n' });
  expect(codesOf(result.problems)).toEqual(['no-header']);
  expect(JSON.stringify(result.problems)).not.toContain('Gilda');
});

test('a crosswalk that is not there, or a folder, and a folder of exports that is not there', async () => {
  await inFolder({ 'c.yaml': notesCrosswalk }, async (folder) => {
    mkdirSync(join(folder, 'd.yaml'));
    const request = { key: testKey, progress: () => {} };
    const none = await importExports({
      ...request,
      crosswalks: [join(folder, 'x.yaml'), join(folder, 'd.yaml')],
      from: folder,
    });
    expect(codesOf(none.problems)).toEqual(['no-such-file', 'is-a-folder']);
    const nowhere = await importExports({
      ...request,
      crosswalks: [join(folder, 'c.yaml')],
      from: join(folder, 'gone'),
    });
    expect(codesOf(nowhere.problems)).toEqual(['no-such-file']);
  });
});

test('several files of one kind are read in the order of their paths, each with its own sum', async () => {
  const crosswalk = notesCrosswalk.replace('files: notes.csv', 'files: [b/*.csv, a.csv]');
  const result = await importSmall(crosswalk, {
    'b/2.csv': 'no,note,dollars\n3,x,1\n',
    'b/10.csv': 'dollars,no,note\n2,4,x\n',
    'a.csv': 'no,note,dollars\n5,x,1\n4,y,1\n',
  });
  expect(result.sum.files.map(({ file }) => file)).toEqual(['b/10.csv', 'b/2.csv', 'a.csv']);
  expect(result.setAside.map(({ file, line, code }) => `${file}:${line} ${code}`)).toEqual(['a.csv:3 duplicate-key']);
});

test('the fingerprint of a file is the SHA-256 of its bytes', async () => {
  const result = await importSmall(notesCrosswalk, { 'notes.csv': 'no,note,dollars\n' });
  // printf 'no,note,dollars\n' | sha256sum (GNU coreutils)
  expect(result.sum.files[0]!.fingerprint).toBe('4c14929e05f3de01bc1aa5424bc310576bf86f572f5aeac82c7e190b70e2bb97');
});

test('progress tells the file, its rows and the bytes of all files', async () => {
  await inFolder({ 'c.yaml': notesCrosswalk, 'notes.csv': 'no,note,dollars\na,x,1\nb,y,2\n' }, async (folder) => {
    const steps: { file: string; rows: number; bytesDone: number; bytesTotal: number }[] = [];
    await importExports({
      crosswalks: [join(folder, 'c.yaml')],
      from: folder,
      key: testKey,
      progress: ({ file, rows, bytesDone, bytesTotal }) => steps.push({ file, rows, bytesDone, bytesTotal }),
    });
    expect(steps.at(-1)).toEqual({ file: 'notes.csv', rows: 2, bytesDone: 28, bytesTotal: 28 });
  });
});

test('a file that changes between two readings stops the import', async () => {
  await inFolder({ 'c.yaml': notesCrosswalk, 'notes.csv': 'no,note,dollars\na,x,1\na,y,2\n' }, async (folder) => {
    const result = await importExports({
      crosswalks: [join(folder, 'c.yaml')],
      from: folder,
      key: testKey,
      // The repeated key is found after the file was read, and its row is fetched again.
      progress: () => writeFileSync(join(folder, 'notes.csv'), 'no,note\n'),
    });
    expect(codesOf(result.problems)).toEqual(['file-changed']);
  });
});
