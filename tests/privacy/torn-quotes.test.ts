import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ImportResult, importExports } from '../../src/intake/import-exports.js';
import type { PastImport } from '../../src/intake/recall/past-import.js';
import { readPast } from '../../src/store/read-past.js';
import { writeStore } from '../../src/store/write-store.js';
import {
  importSmall,
  inFolder,
  notesCrosswalk,
  stationCrosswalk,
  stationFiles,
  testKey,
} from '../intake/small-import.js';

const notes = notesCrosswalk.replace(
  '    constants',
  '      payee: { private: drop }\n      clerk: { private: drop }\n    constants',
);

test('a private text that a lost comma moved into free text or a key reaches no byte of the store, and no message', async () => {
  const sound = '4,MARK P,wire,MARK C,7';
  const rows = ['1,P,rope"MARK, C",5', '2"MARK, P",rope,MARK C,6', '3,MARK P,wire,MARK C,not a number', sound];
  const files = { 'notes.csv': `no,payee,note,clerk,dollars\n${rows.join('\n')}\n`, 'c.yaml': notes };
  await inFolder(files, async (folder) => {
    const store = join(folder, 'store');
    const said: unknown[] = [];
    const run = async () =>
      importExports({
        crosswalks: [join(folder, 'c.yaml')],
        from: folder,
        key: testKey,
        progress: (step) => said.push(step),
        program: 'this',
        past: await readPast(store),
      });
    const result = await run();
    expect(result.setAside.map(({ line, code }) => `${line} ${code}`)).toEqual([
      '2 torn-quote',
      '3 torn-quote',
      '4 not-a-number',
    ]);
    expect(await writeStore(store, result)).toEqual([]);
    const written = readdirSync(store);
    expect(written.length).toBeGreaterThan(10);
    for (const name of written) expect(readFileSync(join(store, name)).includes('MARK'), name).toBe(false);
    // What the next import has of it, the file unread.
    const again = await run();
    expect(again.filesRead).toEqual([]);
    expect(again.setAside).toEqual(result.setAside);
    expect(JSON.stringify([said, result.problems, result.setAside, result.setAsideRows])).not.toContain('MARK');
  });
});

test('a row that was mended before it was known to be torn is set aside, since its private cells are elsewhere', async () => {
  const files = { 'notes.csv': 'no,payee,note,clerk,dollars\n1,P,rope"MARK, C",5\n', 'c.yaml': notes };
  await inFolder(files, async (folder) => {
    const store = join(folder, 'store');
    const run = async (program: string, past: PastImport | null) =>
      importExports({
        crosswalks: [join(folder, 'c.yaml')],
        from: folder,
        key: testKey,
        progress: () => {},
        program,
        past,
      });
    expect(await writeStore(store, await run('former', null))).toEqual([]);
    const past = (await readPast(store))!;
    const mended = [{ line: 2, row: '1,withheld,"rope""MARK",withheld,6' }];
    const readings = past.readings.map((reading) => ({ ...reading, mended }));
    const result = await run('this', { ...past, readings });
    expect(result.setAside.map(({ line, code }) => `${line} ${code}`)).toEqual(['2 torn-quote']);
    expect(result.mendedLost).toEqual([{ file: 'notes.csv', line: 2 }]);
    expect(await writeStore(store, result)).toEqual([]);
    for (const name of readdirSync(store)) expect(readFileSync(join(store, name)).includes('MARK'), name).toBe(false);
  });
});

const checks = stationCrosswalk.replace(
  'found: { field: finding }',
  'found: { field: finding }\n      by: { private: drop }',
);

/** All that an import gives; its ledgers as lists, since the makers of their lines are alike only in what they make. */
async function all(importing: Promise<ImportResult>): Promise<unknown> {
  return { ...(await importing), ledgers: null };
}

test('rows whose endings are known, and rows of blocks, show a lost comma as rows read by themselves do', async () => {
  const keys = ['i1', 'i2', 'i3', 'i"4', 'i"5 x', '"i6"', 'i"7"'];
  const ends = [
    'anchor,none,clean,,P',
    'anchor,none,clean,mussels,P',
    'anchor,none,clean,mussels"MARK, P"',
    'anchor,none,6" x,8",P',
    'anchor,none,clean,8",MARK"P',
    'anchor,none,the "red" one,mussels,called "P"',
    'anchor,none"MARK, clean",,P',
    'transom,none,clean,,"MARK, P"',
  ];
  let torn = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(fc.nat(), { minLength: 300, maxLength: 400 }), async (numbers) => {
      const rows = numbers.map((number) => {
        const key = number % 5 === 0 ? keys[(number >> 3) % keys.length] : keys[(number >> 3) % 3];
        return `${key},${ends[(number >> 6) % ends.length]}`;
      });
      const files = { ...stationFiles({}), 'checks.csv': `insp,part,side,state,found,by\n${rows.join('\n')}\n` };
      const result = await importSmall(checks, files);
      // In so few bytes at once no ending can be seen to repeat.
      const rowByRow = await importSmall(checks, files, { chunk: 200 });
      const told = await all(Promise.resolve(rowByRow));
      expect(await all(Promise.resolve(result))).toEqual(told);
      expect(await all(importSmall(checks, files, { range: 3000 }))).toEqual(told);
      expect(JSON.stringify([result.setAside, result.setAsideRows, result.notes])).not.toContain('MARK');
      torn += result.setAside.filter(({ code }) => code === 'torn-quote').length;
    }),
    { numRuns: 10 },
  );
  expect(torn).toBeGreaterThan(500);
});
