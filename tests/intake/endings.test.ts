import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findEndings } from '../../src/intake/find-endings.js';
import type { ImportResult } from '../../src/intake/import-exports.js';
import { RowEndings } from '../../src/intake/row-endings.js';
import { importSmall, stationCrosswalk, stationFiles } from './small-import.js';

const comma = 44;
const bytesOf = (text: string): Uint8Array => Buffer.from(text, 'latin1');

test('equal endings have equal numbers wherever they stand, and an ending that is cut off has none', () => {
  const ending = fc.string({ unit: fc.constantFrom('a', 'b', ',', '\r', '\v'), maxLength: 12 });
  fc.assert(
    fc.property(fc.array(ending, { maxLength: 60 }), fc.nat({ max: 7 }), (endings, before) => {
      const known = new RowEndings(1);
      const order = [...new Set(endings)];
      for (const text of endings) {
        const bytes = bytesOf(`${'x'.repeat(before)}${text}\n...`);
        const feed = before + text.length;
        const number = order.indexOf(text) + 1;
        const isNew = known.size === number;
        expect(known.find(bytes, before, feed + 1)).toBe(isNew ? 0 : number);
        expect(known.learn(bytes, before, feed)).toBe(number);
        expect(known.find(bytes, before, feed + 1)).toBe(number);
        expect(known.end).toBe(feed);
        expect(known.find(bytes, before, feed)).toBe(0);
        expect(Buffer.from(known.textBytes(number)).toString('latin1')).toBe(text);
      }
    }),
  );
});

test('endings are looked for behind the fewest cells, and only where they repeat', () => {
  const rows = (of: (row: number) => string) => bytesOf(Array.from({ length: 400 }, (_, row) => of(row)).join('\n'));
  const read = Int32Array.of(0, 1, 2, 3);
  expect(
    findEndings(
      rows((row) => `${row},${row % 7},b,c`),
      comma,
      read,
    )?.cellsBefore,
  ).toBe(1);
  expect(
    findEndings(
      rows((row) => `a,${row},${row % 7},c`),
      comma,
      read,
    )?.cellsBefore,
  ).toBe(2);
  expect(
    findEndings(
      rows((row) => `a,b,${row},c`),
      comma,
      read,
    ),
  ).toBeNull();
  expect(
    findEndings(
      rows((row) => `${row},a,b,c`),
      comma,
      Int32Array.of(0, 3),
    ),
  ).toBeNull();
  expect(findEndings(bytesOf('1,a,b\n2,a,b\n'), comma, Int32Array.of(0, 1, 2))).toBeNull();
});

/** All that an import gives; its ledgers as lists, since the makers of their lines are alike only in what they make. */
async function all(importing: Promise<ImportResult>): Promise<unknown> {
  return { ...(await importing), ledgers: null };
}

const crosswalk = stationCrosswalk.replace(
  'part: { field: component }',
  'part: { field: component, missing: ["", "?"] }',
);
const parts = ['anchor', 'transom', 'propeller', 'no such part', '', '?', ' anchor '];
const looks = [
  'none,clean,',
  'none,fouled,mussels',
  'port,clean,',
  'none,clean,mussels',
  'none,fouled,',
  'none,,',
  ',',
];
const ends = ['\n', '\n', '\n', '\n', '\r\n', '\r', '\n\n'];

test('rows whose endings are known give what they give when every cell is read', async () => {
  const pick = (list: readonly string[], number: number) => list[number % list.length]!;
  await fc.assert(
    fc.asyncProperty(fc.array(fc.nat(), { minLength: 300, maxLength: 400 }), async (numbers) => {
      const rows = numbers.map((number, row) => {
        const key = number % 53 === 0 ? '' : number % 41 === 0 ? '"i1"' : `i${Math.floor(row / 5) % 9}`;
        const slip = number % 47 === 0 ? ',more' : number % 43 === 0 ? '\u00fc' : number % 37 === 0 ? '"' : '';
        return `${key},${pick(parts, number >> 3)},${pick(looks, number >> 6)}${slip}${pick(ends, number >> 9)}`;
      });
      const inspections = Array.from(
        { length: 8 },
        (_, at) => `i${at},L1,2025-06-01 08:0${at},2025-06-01 08:1${at},M,h${at},C,N`,
      );
      const files = { ...stationFiles({ inspections }), 'checks.csv': `insp,part,side,state,found\n${rows.join('')}` };
      // In so few bytes at once no ending can be seen to repeat.
      const cellByCell = await all(importSmall(crosswalk, files, { chunk: 200 }));
      expect(await all(importSmall(crosswalk, files))).toEqual(cellByCell);
      expect(await all(importSmall(crosswalk, files, { range: 3000 }))).toEqual(cellByCell);
    }),
    { numRuns: 10 },
  );
});

test('where endings stop repeating, rows are read on as before', async () => {
  const inspections = ['i1,L1,2025-06-01 08:00,2025-06-01 08:10,M,h,C,N'];
  const alike = Array.from({ length: 1000 }, () => 'i1,anchor,none,clean,');
  const unlike = Array.from({ length: 14_000 }, (_, row) => `i1,anchor,none,part ${row},`);
  const files = stationFiles({ inspections, checks: [...alike, ...unlike, ...alike] });
  const result = await importSmall(crosswalk, files);
  expect(await all(Promise.resolve(result))).toEqual(await all(importSmall(crosswalk, files, { chunk: 200 })));
  expect(result.sum.files.find(({ file }) => file === 'checks.csv')).toMatchObject({ read: 16_000, kept: 1 });
}, 20_000);
