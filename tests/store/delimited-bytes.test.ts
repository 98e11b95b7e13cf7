import fc from 'fast-check';
import { expect, test } from 'vitest';
import { delimitedRow } from '../../src/store/delimited.js';
import { DelimitedBytes } from '../../src/store/delimited-bytes.js';

const parts = [
  '=',
  '+',
  '-',
  '@',
  "'",
  '"',
  ',',
  '\r',
  '\n',
  '\t',
  '＝',
  '＠',
  'é',
  '𝄞',
  '1',
  '.5',
  'e3',
  'a',
  ' ',
  '',
];
const text = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.array(fc.constantFrom(...parts), { maxLength: 6 }).map((some) => some.join('')),
);

test('a row put together from bytes is the row put together from texts, whatever its cells hold', () => {
  fc.assert(
    fc.property(text, text, fc.nat(2 ** 32 - 1), (one, other, number) => {
      const rows = new DelimitedBytes(8);
      const bytes = Buffer.from(`<${one}>`, 'utf8');
      rows.repeated(other);
      rows.next();
      rows.cellOf({ bytes, start: 1, end: bytes.length - 1 });
      rows.next();
      rows.whole(number);
      rows.endRow();
      // Half a letter has no bytes of its own.
      const said = Buffer.from(one, 'utf8').toString('utf8');
      expect(Buffer.from(rows.take()).toString('utf8')).toBe(
        Buffer.from(delimitedRow([other, said, number]), 'utf8').toString('utf8'),
      );
      expect(rows.take().length).toBe(0);
    }),
    { numRuns: 500, seed: 20250601 },
  );
});

test('bytes that are no UTF-8 are shown as such, and do not spoil the file', () => {
  const rows = new DelimitedBytes(8);
  rows.cellOf({ bytes: Uint8Array.of(97, 0xff, 98), start: 0, end: 3 });
  expect(Buffer.from(rows.take()).toString('utf8')).toBe('a\uFFFDb');
});
