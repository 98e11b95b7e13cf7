import { expect, test } from 'vitest';
import { restrictedBook } from '../../../src/finding/book/restricted-book.js';
import { clusterColumn } from '../../../src/finding/book/watched-book.js';
import { openBook } from '../../../src/finding/book.js';
import type { Book, BookColumn } from '../../../src/record/book.js';
import { joinSeason, readSeason } from '../../../src/report/carried/carried-season.js';
import { isPseudonym, packBook } from '../../../src/report/carried/pack-book.js';
import { elkPoint, inspection, look, pineGate, smallRecords, smallSum } from '../../finding/small-records.js';

const book = openBook(
  smallRecords({
    stations: [elkPoint, pineGate],
    station_days: [
      { station: 'elk', date: '2025-06-01', state: 'open', staff_hours: 8.25 },
      { station: 'elk', date: '2025-06-02', state: 'closed' },
    ],
    inspections: [
      inspection('form-7', { craft: 'c0ffee-secret', inspector: 'bea-secret', last_on_water: '2025-05-28' }),
      inspection('form-8', { station: 'pine', watercraft_type: null, started_at: '2025-07-03T01:00Z' }),
      inspection('form-9', { outcome: 'intercepted', craft: 'c0ffee-secret' }),
    ],
    checks: [
      look('form-7', 'transom', 'clean'),
      look('form-7', 'propeller', 'not checked'),
      look('form-9', 'transom', 'mussels'),
      look('form-9', 'propeller', 'absent'),
      look('form-8', 'anchor', 'clean'),
    ],
    rechecks: [{ ...look('form-9', 'transom', 'clean'), inspector: 'other-secret' }],
    decontaminations: [
      { wash: 'w1', inspection: 'form-9', ordered_at: '2025-06-01T18:10Z', started_at: '2025-06-01T18:20Z' },
    ],
  }),
  smallSum('2025-11-30T18:00Z'),
);

/** Every column of some tables, asked for by nobody in particular. */
function everyColumn(from: Book, tables: readonly string[]) {
  return new Map(
    tables.map((name) => {
      const fields = [...from.tables.get(name)!.fields.keys()].filter((field) => !isPseudonym(field));
      return [name, new Map([...fields, clusterColumn].map((field) => [field, new Set([''])]))] as const;
    }),
  );
}

const asked = everyColumn(book, ['inspections', 'checks', 'rechecks', 'decontaminations', 'station_days']);

function carry(from: Book): { readonly back: Book; readonly whole: Uint8Array } {
  const packed = packBook(from, asked, ['station']);
  const head = { book: packed.book } as unknown as Parameters<typeof joinSeason>[0];
  const whole = joinSeason(head, packed.bytes);
  return { back: readSeason(whole).book, whole };
}

/** What stands in each row, whatever the numbers behind it. */
function valuesOf(column: BookColumn): readonly unknown[] {
  if (column.kind === 'text') return [...column.codes].map((code) => (code === 0 ? null : column.dictionary[code]));
  if (column.kind === 'wait') return [...column.minutes].map((minutes, row) => [minutes, column.ending[row]]);
  return [...column.values].map((value, row) => (column.missing?.[row] === 1 ? null : value));
}

const { back, whole } = carry(book);

test.each([...asked.keys()])('%s comes back column by column, with its station-days', (name) => {
  const [before, after] = [book.tables.get(name)!, back.tables.get(name)!];
  expect(after.rowCount).toBe(before.rowCount);
  expect([...after.fields]).toEqual([...before.fields]);
  expect([...after.clusterOf!]).toEqual([...before.clusterOf!]);
  for (const field of before.fields.keys()) {
    if (isPseudonym(field)) continue;
    const [was, is] = [valuesOf(before.column(field)), valuesOf(after.column(field))];
    // Keys of records come back as numbers that are equal where the keys were.
    if (field === 'inspection') expect(is.map((key) => is.indexOf(key))).toEqual(was.map((key) => was.indexOf(key)));
    else expect(is, field).toEqual(was);
  }
  expect(back.clusters.count).toBe(book.clusters.count);
  expect([...back.clusters.stratumOf]).toEqual([...book.clusters.stratumOf]);
});

test('no pseudonym, no key of a record and no line of a file is in the bytes of a page', () => {
  const text = new TextDecoder('latin1').decode(whole);
  expect(text).not.toMatch(/secret|form-\d/);
  for (const table of back.tables.values()) expect(table.origin).toBeNull();
  expect(() => back.tables.get('inspections')!.column('craft')).toThrow('does not carry craft');
});

test('rows that have a field of their own by the name of one chosen by are chosen as in the whole book', () => {
  const washes = new Map([['decontaminations', new Map([['ordered_at', new Set([''])]])]]);
  const packed = packBook(book, washes, ['started_at']);
  const head = { book: packed.book } as unknown as Parameters<typeof joinSeason>[0];
  const { book: back } = readSeason(joinSeason(head, packed.bytes));
  const starts = book.tables.get('inspections')!.column('started_at');
  if (starts.kind !== 'number') throw new Error('starts are numbers');
  const chosen = [...starts.values].map((start) => new Map([['started_at', start]]));
  const counts = (from: Book) =>
    chosen.map((choice) => restrictedBook(from, choice).tables.get('decontaminations')!.rowCount);
  expect(counts(book)).toContain(1);
  expect(counts(back)).toEqual(counts(book));
});
