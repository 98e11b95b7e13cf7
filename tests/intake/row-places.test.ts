import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keptLines } from '../../src/intake/kept-lines.js';
import { RowPlaces } from '../../src/intake/row-places.js';

/** How many lines, and bytes, lie between a row and the one before. */
const steps = fc.array(
  fc.tuple(fc.oneof({ weight: 30, arbitrary: fc.constant(1) }, fc.integer({ min: 2, max: 5 })), fc.nat({ max: 90 })),
  { minLength: 1, maxLength: 400 },
);

function placed(list: readonly (readonly [lines: number, bytes: number])[]): { line: number; offset: number }[] {
  let [line, offset] = [1, 0];
  return list.map(([lines, bytes]) => {
    line += lines;
    offset += bytes + 1;
    return { line, offset };
  });
}

function hold(places: RowPlaces, rows: readonly { line: number; offset: number }[], asked: readonly number[]): void {
  // Every third row is set aside, and each of the others gives two records.
  const aside = Uint8Array.from(rows, (_, row) => (row % 3 === 1 ? 1 : 0));
  const kept = rows.filter((_, row) => row % 3 !== 1).flatMap(({ line }) => [line, line]);
  expect([...keptLines([{ places, rowCount: rows.length, aside, width: 2 }], kept.length)]).toEqual(kept);
  for (const number of asked) {
    const row = number % rows.length;
    expect(places.lineOf(row)).toBe(rows[row]!.line);
    // A place told of is that of some row before, with none but whole lines between.
    const near = places.placeBefore(row);
    const at = rows.findIndex(({ offset }) => offset === near.offset);
    expect(rows[at]!.line).toBe(near.line);
    expect(rows[row]!.line - near.line).toBe(row - at);
  }
}

test('every row has its line, and a place from which it is reached line by line, whatever order rows are asked for in', () => {
  fc.assert(
    fc.property(steps, fc.array(fc.nat(), { maxLength: 40 }), (list, asked) => {
      const rows = placed(list);
      const places = new RowPlaces();
      for (const [row, { line, offset }] of rows.entries()) places.add(row, line, offset);
      hold(places, rows, asked);
    }),
  );
});

test('rows line by line may be added together, and parts of a file one behind the other', () => {
  fc.assert(
    fc.property(fc.array(fc.nat({ max: 90 }), { minLength: 1, maxLength: 200 }), steps, (lengths, list) => {
      const first = placed(lengths.map((bytes) => [1, bytes]));
      const later = placed(list);
      const starts = Int32Array.from(first, ({ offset }) => offset - 100);
      const places = new RowPlaces();
      places.addLines(0, 2, starts, 0, starts.length, 100);
      const part = new RowPlaces();
      for (const [row, { line, offset }] of later.entries()) part.add(row, line, offset + 100_000);
      places.append(part.pack(), first.length, 500);
      const rows = [...first, ...later.map(({ line, offset }) => ({ line: line + 500, offset: offset + 100_000 }))];
      hold(places, rows, [...rows.keys()]);
    }),
  );
});
