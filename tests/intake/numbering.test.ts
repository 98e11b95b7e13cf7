import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayNumber, daysInMonth } from '../../src/intake/calendar.js';
import { Interner } from '../../src/intake/interner.js';
import { RowSet } from '../../src/intake/row-set.js';
import { DictionaryBytes } from '../../src/record/dictionary-bytes.js';

test('equal bytes have equal numbers, in order of first appearance, however many there are', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ maxLength: 4 }), { maxLength: 300 }), (texts) => {
      const interner = new Interner();
      const order = [...new Set(texts)];
      const codes = texts.map((text) => interner.codeOfText(text));
      expect(codes).toEqual(texts.map((text) => order.indexOf(text) + 1));
      expect(order.map((_, index) => interner.textOf(index + 1))).toEqual(
        order.map((text) => Buffer.from(text, 'utf8').toString()),
      );
    }),
  );
});

test('texts are taken in an order of their own, some left out, whatever letters they have', () => {
  const text = fc.oneof(fc.string({ maxLength: 4 }), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 3 }));
  fc.assert(
    fc.property(fc.uniqueArray(text, { maxLength: 200 }), fc.nat(), (texts, seed) => {
      const interner = new Interner();
      const wanted = [''];
      const placeOf = new Uint32Array(texts.length + 1);
      // Stretches of five in their order, the last stretch first, and every few of them left out.
      for (const said of texts) interner.codeOfText(said);
      const stretchOf = (index: number) => Math.floor(index / 5);
      const turned = [...texts.entries()].sort(([a], [b]) => stretchOf(b) - stretchOf(a) || a - b);
      for (const [index, said] of turned) {
        if ((index + seed) % 7 === 0) continue;
        placeOf[index + 1] = wanted.length;
        wanted.push(Buffer.from(said, 'utf8').toString());
      }
      const taken = interner.takeTexts(placeOf, wanted.length);
      expect(taken.texts).toEqual(wanted);
      const bytes = Buffer.from(wanted.join(''), 'utf8');
      expect(Buffer.from(taken.bytes).equals(bytes)).toBe(true);
      expect([...taken.offsets]).toEqual([...DictionaryBytes.of(wanted).offsets]);
      if (texts.length > 0) expect(() => interner.textOf(1)).toThrow('given up');
    }),
  );
});

test('once all texts are numbered, a new one is a mistake of the program', () => {
  const interner = new Interner();
  interner.codeOfText('known');
  interner.settle();
  expect(interner.textOf(1)).toBe('known');
  expect(() => interner.codeOfText('new')).toThrow('numbered after all were');
});

test('rows are equal when all their values are, across drafts', () => {
  const value = fc.integer({ min: -2, max: 2 });
  const rows = fc.array(fc.tuple(value, value), { maxLength: 200 });
  fc.assert(
    fc.property(rows, rows, (first, second) => {
      const columns = [first, second].map((draft) => [
        Float64Array.from(draft, ([a]) => a * 1e12),
        Int32Array.from(draft, ([, b]) => b),
      ]);
      const set = new RowSet(columns);
      const known = new Set<string>();
      for (const [draft, some] of [first, second].entries()) {
        for (const [row, pair] of some.entries()) {
          const name = pair.map((part) => part + 0).join(' ');
          expect(set.add(draft, row)).toBe(!known.has(name));
          known.add(name);
        }
      }
    }),
  );
});

test('days are counted as ECMAScript counts them', () => {
  const date = fc.tuple(
    fc.integer({ min: 1600, max: 2400 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 28 }),
  );
  fc.assert(
    fc.property(date, ([year, month, day]) => {
      expect(dayNumber(year, month, day)).toBe(Date.UTC(year, month - 1, day) / 86_400_000);
      expect(daysInMonth(year, month)).toBe(new Date(Date.UTC(year, month, 0)).getUTCDate());
    }),
  );
});
