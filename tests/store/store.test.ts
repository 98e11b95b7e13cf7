import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from '@uwdata/flechette';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ImportResult } from '../../src/intake/import-exports.js';
import { numberAt, textAt } from '../../src/record/column.js';
import type { RecordTable } from '../../src/record/records.js';
import { asArqueroTable } from '../../src/store/arquero.js';
import { ownRows } from '../../src/store/read-delimited.js';
import { readPast } from '../../src/store/read-past.js';
import { readStore } from '../../src/store/read-store.js';
import { writeStore } from '../../src/store/write-store.js';
import { importSmall, stationCrosswalk, stationFiles } from '../intake/small-import.js';

const folder = mkdtempSync(join(tmpdir(), 'store-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let result: ImportResult;
beforeAll(async () => {
  result = await importSmall(
    stationCrosswalk,
    stationFiles({
      inspections: [
        '1,L1,1969-07-20 20:17,,M,AB12,C,N',
        '2,L1,2025-05-01 09:00,2025-05-01 09:10,P,,I,',
        '3,L1,2025-05-01 10:00,,M,,C,"=1+1, ""so"""',
        '4,L1,2025-05-01 11:00,2025-05-01 11:05,M,CD34,C,Y',
      ],
      checks: ['1,bilge,none,clean,', '2,hull below waterline,port,fouled,mussels', '3,bilge,none,clean,'],
    }),
  );
});

/** Every value of a table with its origin, as plain data. */
function plain(table: RecordTable): unknown {
  return Array.from({ length: table.rowCount }, (_, row) => [
    table.origin.files[table.origin.fileOf[row]!],
    table.origin.lineOf[row],
    ...[...table.columns.values()].map((column) =>
      column.kind === 'text' ? textAt(column, row) : numberAt(column, row),
    ),
  ]);
}

async function stored(path: string) {
  const reading = await readStore(path);
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems));
  return reading;
}

const codes = (reading: object) =>
  'problems' in reading ? (reading.problems as { code: string }[]).map(({ code }) => code) : [];

test('what is read back is what was written, every value and every origin', async () => {
  const path = join(folder, 'same');
  expect(await writeStore(path, result)).toEqual([]);
  const { records, sum } = await stored(path);
  expect(sum).toEqual(result.sum);
  for (const [name, table] of Object.entries(result.records)) {
    expect(plain(records[name as keyof typeof records]), name).toEqual(plain(table));
  }
});

test('moments before 1970 keep their sign', async () => {
  const path = join(folder, 'old');
  await writeStore(path, result);
  const { records } = await stored(path);
  const started = records.inspections.columns.get('started_at')!;
  expect(started.kind === 'number' && started.values[0]).toBe(Date.parse('1969-07-21T02:17:00Z'));
});

test('the same import gives the same bytes', async () => {
  const [one, two] = [join(folder, 'one'), join(folder, 'two')];
  await writeStore(one, result);
  await writeStore(two, result);
  expect(readdirSync(one)).toEqual(readdirSync(two));
  for (const name of readdirSync(one)) {
    expect(readFileSync(join(one, name)).equals(readFileSync(join(two, name))), name).toBe(true);
  }
});

test('a stored table is an Arrow file that another reader opens, nulls and types in place', async () => {
  const path = join(folder, 'arrow');
  await writeStore(path, result);
  // The reader is flechette's own, with its own decoding of dictionaries, bitmaps and timestamps.
  const table = tableFromIPC(readFileSync(join(path, 'inspections.arrow')), { useDate: true });
  expect(table.numRows).toBe(3);
  expect(table.getChild('inspection')!.toArray()).toEqual(['1', '2', '4']);
  expect([...table.getChild('standing_water')!]).toEqual(['no', null, 'yes']);
  expect([...table.getChild('finished_at')!]).toEqual([
    null,
    new Date('2025-05-01T15:10:00Z'),
    new Date('2025-05-01T17:05:00Z'),
  ]);
  expect([...table.getChild('source_line')!]).toEqual([2, 3, 5]);
  expect([...table.getChild('source_file')!]).toEqual(Array(3).fill('inspections.csv'));
  expect(readFileSync(join(path, 'inspections.arrow')).subarray(0, 6).toString()).toBe('ARROW1');
});

test('the ledgers are read back, honest text beginning with = unchanged', async () => {
  const path = join(folder, 'ledger');
  await writeStore(path, result);
  const header = readFileSync(join(path, 'set-aside.csv'), 'utf8').split('\n')[0];
  expect(header).toBe('file,line,column,seen,code,reason,remedy');
  const toCode = async (file: string) => (await ownRows(join(path, file))).map((cells) => cells.slice(0, 5));
  expect(await toCode('set-aside.csv')).toEqual([
    ['inspections.csv', '4', 'wet', '=1+1, "so"', 'unknown-code'],
    ['checks.csv', '4', 'insp', '3', 'parent-set-aside'],
  ]);
  expect((await toCode('notes.csv')).map((cells) => cells.at(-1))).toEqual(['one-side-only']);
});

test('a table goes to arquero with its nulls, numbers and origin', async () => {
  const table = asArqueroTable(result.records.inspections);
  expect(table.numRows()).toBe(3);
  expect(table.groupby('watercraft_type').count().objects()).toEqual([
    { watercraft_type: 'open motorboat', count: 2 },
    { watercraft_type: 'paddlecraft', count: 1 },
  ]);
  expect(table.array('standing_water')).toEqual(['no', null, 'yes']);
  expect(table.array('source_line')).toEqual([2, 3, 5]);
  expect(table.filter('d.finished_at != null').numRows()).toBe(2);
});

describe('where nothing may be written', () => {
  test('a folder with other files is refused, and nothing in it is touched', async () => {
    const path = join(folder, 'mine');
    mkdirSync(path);
    writeFileSync(join(path, 'letter.txt'), 'dear');
    expect((await writeStore(path, result)).map(({ code }) => code)).toEqual(['not-a-store']);
    expect(readdirSync(path)).toEqual(['letter.txt']);
    expect(readdirSync(folder).filter((name) => name.startsWith('mine'))).toEqual(['mine']);
  });

  test('a place below a file cannot be written to', async () => {
    writeFileSync(join(folder, 'leaf'), 'x');
    const problems = await writeStore(join(folder, 'leaf', 'store'), result);
    expect(problems.map(({ code }) => code)).toEqual(['cannot-write']);
  });

  test('a file is refused', async () => {
    const path = join(folder, 'file');
    writeFileSync(path, 'x');
    expect((await writeStore(path, result)).map(({ code }) => code)).toEqual(['not-a-store']);
    expect(readFileSync(path, 'utf8')).toBe('x');
  });
});

test('an empty folder becomes a store, and an earlier store is replaced whole', async () => {
  const path = join(folder, 'again');
  mkdirSync(path);
  expect(await writeStore(path, result)).toEqual([]);
  writeFileSync(join(path, 'stray.csv'), 'of the earlier store');
  expect(await writeStore(path, result)).toEqual([]);
  expect(readdirSync(path)).not.toContain('stray.csv');
  expect(readdirSync(folder).filter((name) => name.startsWith('again'))).toEqual(['again']);
});

test('a store that was moved aside when a write was stopped is read where it stands', async () => {
  const path = join(folder, 'stopped');
  await writeStore(`${path}.writing-replaced`, result);
  expect((await stored(path)).sum).toEqual(result.sum);
});

describe('what is no store', () => {
  test('a missing folder, a file, and a folder without a description', async () => {
    expect(codes(await readStore(join(folder, 'nowhere')))).toEqual(['no-such-store']);
    writeFileSync(join(folder, 'plain'), 'x');
    expect(codes(await readStore(join(folder, 'plain')))).toEqual(['not-a-store']);
    mkdirSync(join(folder, 'bare'));
    expect(codes(await readStore(join(folder, 'bare')))).toEqual(['not-a-store']);
    writeFileSync(join(folder, 'bare', 'store.json'), '{"store":');
    expect(codes(await readStore(join(folder, 'bare')))).toEqual(['not-a-store']);
  });

  test('another version, a table cut short, and a table gone', async () => {
    const path = join(folder, 'hurt');
    await writeStore(path, result);
    truncateSync(join(path, 'checks.arrow'), 100);
    rmSync(join(path, 'spending.arrow'));
    const reading = await readStore(path);
    expect(codes(reading)).toEqual(['damaged-store', 'damaged-store']);
    const description = JSON.parse(readFileSync(join(path, 'store.json'), 'utf8'));
    writeFileSync(join(path, 'store.json'), JSON.stringify({ ...description, version: 0 }));
    expect(codes(await readStore(path))).toEqual(['other-version']);
  });

  test('bytes of the right length that are no Arrow', async () => {
    const path = join(folder, 'noise');
    await writeStore(path, result);
    const file = join(path, 'checks.arrow');
    writeFileSync(file, new Uint8Array(readFileSync(file).length).fill(7));
    expect(codes(await readStore(path))).toEqual(['damaged-store']);
  });

  test('a table or description changed within its length is damaged, and the next import puts whole ones in its place', async () => {
    const path = join(folder, 'bitten');
    for (const [name, from, to] of [
      ['checks.arrow', /[^\0]\0{4}/, 'x\0\0\0\0'],
      ['store.json', /"read": \d/, '"read": 9'],
    ] as const) {
      expect(await writeStore(path, result)).toEqual([]);
      const file = join(path, name);
      const text = readFileSync(file, 'latin1');
      writeFileSync(file, text.replace(from, to), 'latin1');
      expect(readFileSync(file, 'latin1')).not.toBe(text);
      expect(codes(await readStore(path))).toEqual(['damaged-store']);
      expect(await readPast(path)).toBeNull();
    }
    expect(await writeStore(path, result)).toEqual([]);
    expect(codes(await readStore(path))).toEqual([]);
    // What the next import would follow is looked at too.
    writeFileSync(join(path, 'notes.csv'), 'other');
    expect(await readPast(path)).toBeNull();
  });
});
