import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ImportProgress, importExports } from '../../src/intake/import-exports.js';
import { checksum } from '../../src/intake/source/checksum.js';
import { archiveOf } from './small-archive.js';
import { asideOf, importSmall, inFolder, notesCrosswalk, testKey, valuesOf } from './small-import.js';

const header = 'no,note,dollars\n';
const within = (path: string, dialect = '{}') =>
  notesCrosswalk.replace('notes.csv', path).replace('    columns:', `    dialect: ${dialect}\n    columns:`);
const codesOf = async (path: string, archive: Uint8Array, dialect?: string) =>
  (await importSmall(within(path, dialect), { 'all.zip': archive })).problems.map(({ code }) => code);

test('files within an archive are read with their places, and cells at fault are fetched again', async () => {
  const archive = archiveOf([
    ['a/one.csv', `${header}a,x,1\nb,y,oops\n`],
    ['a/two.csv', `${header}a,again,1\nc,"two\nlines",3\n`],
    ['b/three.csv', 'not asked for'],
  ]);
  const result = await importSmall(within('all.zip/a/*.csv'), { 'all.zip': archive }, { chunk: 5 });
  expect(result.sum.files.map(({ file, read, kept }) => [file, read, kept])).toEqual([
    ['all.zip/a/one.csv', 2, 1],
    ['all.zip/a/two.csv', 2, 1],
  ]);
  expect(valuesOf(result, 'spending', 'note')).toEqual(['x', 'two\nlines']);
  expect(asideOf(result)).toEqual(['3 dollars not-a-number', '2 no duplicate-key']);
  expect(result.setAsideRows.map(({ row }) => row)).toEqual(['b,y,oops', 'a,again,1']);
});

test('an archive of one file stands for that file; of more, the file must be named', async () => {
  const one = archiveOf([
    ['one.csv', `${header}a,x,1\n`],
    ['__MACOSX/._one.csv', 'x'],
  ]);
  const result = await importSmall(within('all.zip'), { 'all.zip': one });
  expect(result.sum.files.map(({ file }) => file)).toEqual(['all.zip/one.csv']);
  const two = archiveOf([
    ['one.csv', header],
    ['two.csv', header],
  ]);
  expect(await codesOf('all.zip', two)).toEqual(['which-member']);
  expect(await codesOf('all.zip/three.csv', two)).toEqual(['no-such-file']);
});

test('an archive that grows too large is refused before it is unpacked, and one that lies about it as soon as it does', async () => {
  const zeros = Buffer.concat([Buffer.from(header), Buffer.alloc(3_000_000, 0x20)]);
  expect(await codesOf('all.zip', archiveOf([['a.csv', zeros]]), '{ unpacked_mib: 1 }')).toEqual([
    'too-large-unpacked',
  ]);
  const liar = archiveOf([['a.csv', zeros, { claimedSize: 100 }]]);
  expect(await codesOf('all.zip', liar, '{ unpacked_mib: 1 }')).toEqual(['damaged-archive']);
});

test('an archive that is spoilt or locked stops the import', async () => {
  const text = `${header}a,x,1\n`;
  expect(await codesOf('all.zip', archiveOf([['a.csv', text, { checksum: 7 }]]))).toEqual(['damaged-archive']);
  expect(await codesOf('all.zip', archiveOf([['a.csv', text, { encrypted: true }]]))).toEqual(['locked-archive']);
  expect(
    await codesOf(
      'all.zip',
      archiveOf([
        ['a.csv', text],
        ['a.csv', text],
      ]),
    ),
  ).toEqual(['damaged-archive']);
  expect(await codesOf('all.zip', Buffer.from('no archive at all'))).toEqual(['damaged-archive']);
});

test('an archive cut or changed anywhere gives rows or problems, never a crash', async () => {
  const sound = archiveOf([['a.csv', `${header}a,x,1\nb,y,2\n`]]);
  await fc.assert(
    fc.asyncProperty(fc.nat(sound.length - 1), fc.nat(255), fc.boolean(), async (at, byte, cut) => {
      const spoilt = cut ? sound.subarray(0, at) : Buffer.from(sound);
      if (!cut) spoilt[at] = byte;
      const result = await importSmall(within('all.zip'), { 'all.zip': spoilt });
      for (const { read, kept, setAside } of result.sum.files) expect(kept + setAside).toBe(read);
      expect(result.problems.length + result.sum.files.length).toBeGreaterThan(0);
    }),
    { numRuns: 120 },
  );
});

test('the checksum is the one that the platform computes', () => {
  fc.assert(
    fc.property(fc.uint8Array(), fc.uint8Array(), (a, b) => {
      expect(checksum(b, checksum(a))).toBe(crc32(b, crc32(a)));
    }),
  );
});

test('progress never runs beyond its end, however much an archive unpacks to', async () => {
  const rows = Array.from({ length: 2000 }, (_, row) => `${row},xxxxxxxxxxxxxxxxxxxxxxxx,1\n`).join('');
  const files = { 'all.zip': archiveOf([['a.csv', header + rows]]), 'small.crosswalk.yaml': within('all.zip') };
  const steps: ImportProgress[] = [];
  await inFolder(files, (folder) => {
    const crosswalks = [`${folder}/small.crosswalk.yaml`];
    const progress = (step: ImportProgress) => steps.push(step);
    return importExports({ crosswalks, from: folder, key: testKey, progress, chunk: 512 });
  });
  expect(steps.length).toBeGreaterThan(3);
  expect(steps.every(({ bytesDone, bytesTotal }) => bytesDone <= bytesTotal)).toBe(true);
  expect(steps.at(-1)).toMatchObject({ bytesDone: files['all.zip'].length, bytesTotal: files['all.zip'].length });
});
