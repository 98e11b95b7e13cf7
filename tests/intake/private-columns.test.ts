import { createHmac } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importExports } from '../../src/intake/import-exports.js';
import { writeStore } from '../../src/store/write-store.js';
import { importSmall, inFolder, testKey, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: private
files:
  - files: s.csv
    table: stations
    columns: { at: { field: station } }
    constants: { name: A, setting: launch, time_zone: UTC }
  - files: i.csv
    table: inspections
    time_zone: UTC
    columns:
      no: { field: inspection }
      at: { field: station }
      start: { field: started_at, pattern: yyyy-MM-dd HH:mm }
      kind: { field: watercraft_type, codes: { M: open motorboat } }
      hull: { field: craft, private: hash }
      owner: { private: drop }
      staff: { field: inspector, private: hash }
      result: { field: outcome }
    constants: { direction: arriving, extent: full }
    duplicates: [station, craft, started_at]
`;

// Markers in every private column, in rows of every fate: kept, a bad cell, ragged both ways, an open quote, a quoted cell,
// a repeated key, a double entry, a station that is not there, bytes that are no UTF-8.
const rows = [
  '1,A,2025-05-01 08:00,M,MARKHULL1,MARKOWNER1,MARKSTAFF1,cleared',
  '2,A,2025-05-01 08:00,Q,MARKHULL2,MARKOWNER2,MARKSTAFF2,cleared',
  '3,A,2025-05-01 08:00,M,MARKHULL3,MARKOWNER3,MARKSTAFF3',
  '4,A,2025-05-01 08:00,M,MARKHULL4,MARKOWNER4,MARKSTAFF4,cleared,more',
  '5,A,2025-05-01 08:00,M,"MARKHULL5,MARKOWNER5,MARKSTAFF5,cleared',
  '6,A,2025-05-01 08:00,Q,"MARKHULL6","MARK""OWNER6\nMARKOWNER6","MARKSTAFF6",cleared',
  '1,A,2025-05-01 09:00,M,MARKHULL7,MARKOWNER7,MARKSTAFF7,cleared',
  '8,A,2025-05-01 08:00,M,MARKHULL1,MARKOWNER8,MARKSTAFF8,cleared',
  '9,Z,2025-05-01 10:00,M,MARKHULL9,MARKOWNER9,MARKSTAFF9,cleared',
  '10,A,2025-05-01 10:00,M,MARKHULLA,MARKOWNER\u00e9,MARKSTAFFA,cleared',
];
const header = 'no,at,start,kind,hull,owner,staff,result';
const files = {
  's.csv': 'at\nA\n',
  'i.csv': Buffer.from(`${header}\n${rows.join('\n')}\n`, 'latin1'),
};

test('what private columns hold reaches no byte of the store, and no message', async () => {
  await inFolder({ ...files, 'c.yaml': crosswalk }, async (folder) => {
    const said: unknown[] = [];
    const result = await importExports({
      crosswalks: [join(folder, 'c.yaml')],
      from: folder,
      key: testKey,
      progress: (step) => said.push(step),
    });
    expect(result.sum.files[1]).toMatchObject({ read: 10, kept: 1, setAside: 9 });
    expect(await writeStore(join(folder, 'store'), result)).toEqual([]);
    const written = readdirSync(join(folder, 'store'));
    expect(written.length).toBeGreaterThan(10);
    for (const name of written) {
      expect(readFileSync(join(folder, 'store', name)).includes('MARK'), name).toBe(false);
    }
    expect(JSON.stringify([said, result.problems, result.setAside, result.setAsideRows])).not.toContain('MARK');
  });
});

test('rows set aside keep their other cells, private ones withheld; a ragged row is withheld whole', async () => {
  const result = await importSmall(crosswalk, files);
  expect(result.setAsideRows.map(({ line, row }) => `${line} ${row}`)).toEqual([
    '3 2,A,2025-05-01 08:00,Q,withheld,withheld,withheld,cleared',
    '4 withheld',
    '5 withheld',
    '6 withheld',
    '7 6,A,2025-05-01 08:00,Q,withheld,withheld,withheld,cleared',
    '9 1,A,2025-05-01 09:00,M,withheld,withheld,withheld,cleared',
    '10 8,A,2025-05-01 08:00,M,withheld,withheld,withheld,cleared',
    '11 9,Z,2025-05-01 10:00,M,withheld,withheld,withheld,cleared',
    '12 10,A,2025-05-01 10:00,M,withheld,withheld,withheld,cleared',
  ]);
  expect(result.setAside.find(({ code }) => code === 'not-utf-8')!.seen).toBe('withheld');
});

test('a craft is the same craft whatever the case and spaces of its number, and a blank is none', async () => {
  const result = await importSmall(crosswalk, {
    's.csv': 'at\nA\n',
    'i.csv': `${header}
1,A,2025-05-01 08:00,M,qw 12  zz,x,s,cleared
2,A,2025-05-01 09:00,M, QW 12 ZZ ,x,s,cleared
3,A,2025-05-01 10:00,M,,x,s,cleared
`,
  });
  // RFC 2104 over FIPS 180-4, by Node's own HMAC; the first 16 hexadecimal digits.
  const expected = createHmac('sha256', testKey).update('QW 12 ZZ').digest('hex').slice(0, 16);
  expect(valuesOf(result, 'inspections', 'craft')).toEqual([expected, expected, null]);
});

test('another key gives other pseudonyms, and a short key is refused', async () => {
  const one = await importSmall(crosswalk, files);
  const other = await importSmall(crosswalk, files, { key: new Uint8Array(16).fill(8) });
  expect(valuesOf(other, 'inspections', 'craft')).not.toEqual(valuesOf(one, 'inspections', 'craft'));
  const short = await importSmall(crosswalk, files, { key: new Uint8Array(15) });
  expect(short.problems.map(({ code }) => code)).toEqual(['short-key']);
});
