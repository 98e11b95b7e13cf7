import fc from 'fast-check';
import { expect, test } from 'vitest';
import { textAt } from '../../src/record/column.js';
import { DictionaryBytes, heldColumn } from '../../src/record/dictionary-bytes.js';

const text = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 6 }),
  fc.string({ maxLength: 40 }),
  // Longer than a stretch, so that a text may have one to itself.
  fc.constantFrom('a'.repeat(70_000), `${'b'.repeat(65_530)}é`),
);

test('texts as bytes give the texts again, all of them and some', () => {
  fc.assert(
    fc.property(fc.array(text, { maxLength: 60 }), fc.array(fc.nat(), { maxLength: 20 }), (texts, asked) => {
      const held = DictionaryBytes.of(texts);
      expect(held.size).toBe(texts.length);
      expect(new DictionaryBytes(held.bytes, held.offsets).texts).toEqual(texts);
      // As the platform's own encoder lays out each text by itself.
      const encoder = new TextEncoder();
      expect([...held.offsets].slice(1).map((end, at) => end - held.offsets[at]!)).toEqual(
        texts.map((one) => encoder.encode(one).length),
      );
      const codes = texts.length === 0 ? [] : asked.map((number) => number % texts.length);
      expect(held.chosen(Uint32Array.from(codes)).texts).toEqual(codes.map((code) => texts[code]!));
    }),
    { numRuns: 200 },
  );
});

test('a column over bytes reads as one over strings', () => {
  const column = heldColumn(Uint8Array.of(2, 0, 1), DictionaryBytes.of(['', 'pier', 'ramp']));
  expect([0, 1, 2].map((row) => textAt(column, row))).toEqual(['ramp', null, 'pier']);
  expect(column.dictionary).toEqual(['', 'pier', 'ramp']);
});

test('more bytes than Arrow can tell are refused, not wrapped round', () => {
  expect(() => DictionaryBytes.addUp(Int32Array.of(0, 2 ** 30, 2 ** 30))).toThrow('more than 2 GiB');
});
