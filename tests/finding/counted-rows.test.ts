import { describe, expect, test } from 'vitest';
import { openBook } from '../../src/finding/book.js';
import type { Finding } from '../../src/finding/finding.js';
import { foulingSites } from '../../src/finding/fouling-sites.js';
import { foundBy } from '../../src/finding/found-by.js';
import { interceptions } from '../../src/finding/interceptions.js';
import { stationFunnel } from '../../src/finding/station-funnel.js';
import { many } from './many-inspections.js';
import { ask } from './read-finding.js';
import { elkPoint, inspection, look, smallRecords, smallSum } from './small-records.js';

const book = openBook(
  smallRecords({
    stations: [elkPoint],
    inspections: [
      ...many('m', 7, 2),
      ...many('p', 3, 1, { watercraft_type: 'pontoon boat' }),
      inspection('paper', { extent: 'paper check' }),
    ],
    checks: [
      look('m0', 'bunks', 'mussels', 'port', { found_by: 'sight' }),
      look('m0', 'bunks', 'mussels', 'starboard', { found_by: 'feel' }),
      look('m1', 'propeller', 'mussels', 'none', { found_by: 'sight' }),
      look('m1', 'bunks', 'not checked', 'port'),
      look('p0', 'propeller', 'mussels'),
      look('p0', 'bunks', 'clean', 'port'),
      look('m2', 'propeller', 'absent'),
    ],
  }),
  smallSum(null),
);

/** How many things some rows are: craft where looks are counted by craft, rows everywhere else. */
function things(finding: Finding, rows: Uint32Array): number {
  if (finding !== foulingSites) return rows.length;
  const column = book.tables.get('checks')!.column('inspection');
  if (column.kind !== 'text') throw new Error('an inspection is named by text');
  return new Set(Array.from(rows, (row) => column.codes[row])).size;
}

describe.each([
  [foulingSites, 'watercraft_type'],
  [foundBy, 'component'],
  [interceptions, 'watercraft_type'],
  [stationFunnel, 'watercraft_type'],
])('$name', (finding, by) => {
  test.each([[[]], [[by]]])('counts as many rows as its numbers say, split by %j', (fields) => {
    const found = ask(finding, book, fields);
    let estimates = 0;
    let counts = 0;
    found.rows.forEach((cells, row) => {
      found.columns.forEach(({ name }, at) => {
        const counted = found.counted!(row, name);
        const cell = cells[at]!;
        if (counted === null) return;
        const numerator = things(finding, counted.numerator.rows);
        if (counted.denominator === null) {
          expect(cell, name).toBe(numerator);
          counts++;
        } else {
          const denominator = things(finding, counted.denominator.rows);
          if (denominator > 0) expect(cell, name).toMatchObject({ numerator, denominator });
          estimates++;
        }
      });
    });
    expect(Math.min(estimates, counts)).toBeGreaterThan(0);
  });
});
