import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import { groupRows } from '../../src/finding/group-rows.js';
import { byNaturalOrder } from '../../src/finding/natural-order.js';
import { numberColumn } from '../../src/record/column.js';
import { elkPoint, inspection, smallRecords, smallSum } from './small-records.js';

const book = openBook(
  smallRecords({
    stations: [elkPoint],
    inspections: [
      inspection('a', { watercraft_type: 'sail only', length_ft: 30, home_region: 'R10' }),
      inspection('b', { watercraft_type: 'air boat', length_ft: null, home_region: 'R9' }),
      inspection('c', { watercraft_type: 'sail only', length_ft: 9, home_region: null }),
      inspection('d', { watercraft_type: 'sail only', length_ft: 30, home_region: 'R9' }),
    ],
  }),
  smallSum(null),
);
const table = book.tables.get('inspections')!;
const every = Uint32Array.of(0, 1, 2, 3);
const grouped = (rows: Uint32Array, ...fields: string[]) =>
  groupRows(table, rows, fields).map(({ key, rows: own }) => [...key, [...own]]);

describe('grouping rows', () => {
  it('shows codes in the order of their list', () => {
    expect(grouped(every, 'watercraft_type')).toEqual([
      ['air boat', [1]],
      ['sail only', [0, 2, 3]],
    ]);
  });

  it('shows numbers by size and texts in natural order, missing last', () => {
    expect(grouped(every, 'length_ft')).toEqual([
      [9, [2]],
      [30, [0, 3]],
      [null, [1]],
    ]);
    expect(grouped(every, 'home_region')).toEqual([
      ['R9', [1, 3]],
      ['R10', [0]],
      [null, [2]],
    ]);
  });

  it('crosses several fields, only where there are rows', () => {
    expect(grouped(every, 'watercraft_type', 'length_ft')).toEqual([
      ['air boat', null, [1]],
      ['sail only', 9, [2]],
      ['sail only', 30, [0, 3]],
    ]);
  });

  it('puts every row into exactly one group, whatever the fields', () => {
    const fields = ['watercraft_type', 'length_ft', 'home_region', 'season', 'craft', 'station'];
    fc.assert(
      fc.property(fc.subarray(fields), fc.subarray([0, 1, 2, 3]), (by, rows) => {
        const groups = groupRows(table, Uint32Array.from(rows), by);
        expect(groups.flatMap((group) => [...group.rows]).sort()).toEqual(rows);
        expect(new Set(groups.map(({ key }) => JSON.stringify(key))).size).toBe(groups.length);
      }),
    );
  });

  it('keeps groups apart whose fields together have more values than whole numbers are exact', () => {
    // 20,000⁴ is some 1.6e17; rows that differ in the last field alone would fall together from 2⁵³, 9.0e15, on.
    const count = 20_000;
    const last = count - 1;
    const names = ['a', 'b', 'c', 'd'];
    const values = (at: number): number[] => (at < count ? [at, at, at, at] : [last, last, last, at - count]);
    const rows = Uint32Array.from({ length: 2 * count - 1 }, (_, at) => at);
    const columns = new Map(
      names.map((name, field) => [name, numberColumn(Array.from(rows, (at) => values(at)[field]!))]),
    );
    const many = { ...table, fields: new Map(), rowCount: rows.length, column: (name: string) => columns.get(name)! };
    const groups = groupRows(many, rows, names);
    expect(groups).toHaveLength(rows.length);
    for (const { key, rows: own } of groups) expect([key, own.length]).toEqual([values(own[0]!), 1]);
    expect(groups[last + 1]!.key).toEqual([last, last, last, 1]);
  });

  it('keeps the order of texts and numbers that are too many, or lie too far apart, for a code each', () => {
    // Row r has region R(r × 7 mod 150), craft number (r × 11 mod 150) and, but for every tenth, a length of so many halves.
    const many = openBook(
      smallRecords({
        stations: [elkPoint],
        inspections: Array.from({ length: 150 }, (_, row) =>
          inspection(`i${row}`, {
            home_region: `R${(row * 7) % 150}`,
            craft: `c${(row * 11) % 150}`,
            length_ft: row % 10 === 0 ? null : ((row * 13) % 150) / 2 + 1,
          }),
        ),
      }),
      smallSum(null),
    ).tables.get('inspections')!;
    const rows = Uint32Array.from({ length: 150 }, (_, row) => row);
    const keys = (...fields: string[]) => groupRows(many, rows, fields).map(({ key }) => key);
    const places = Array.from(rows, (row) => [(row * 7) % 150, (row * 11) % 150] as const);
    // 150 regions by 150 craft are far more codes than rows.
    expect(keys('home_region', 'craft')).toEqual(
      places.toSorted(([one], [other]) => one - other).map(([region, craft]) => [`R${region}`, `c${craft}`]),
    );
    const lengths = Array.from(rows)
      .filter((row) => row % 10 !== 0)
      .map((row) => ((row * 13) % 150) / 2 + 1)
      .toSorted((one, other) => one - other);
    expect(keys('length_ft')).toEqual([...lengths.map((length) => [length]), [null]]);
    expect(groupRows(many, rows, ['length_ft']).at(-1)!.rows).toEqual(rows.filter((row) => row % 10 === 0));
  });

  it('without fields is one group, also of nothing', () => {
    expect(grouped(Uint32Array.of())).toEqual([[[]]]);
    expect(grouped(Uint32Array.of(), 'season')).toEqual([]);
  });
});

describe('natural order', () => {
  it('puts ramp 9 before ramp 10', () => {
    expect(['ramp 10', 'ramp 9', 'pier', 'ramp'].toSorted(byNaturalOrder)).toEqual([
      'pier',
      'ramp',
      'ramp 9',
      'ramp 10',
    ]);
  });
});
