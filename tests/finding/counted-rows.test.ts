import { describe, expect, test } from 'vitest';
import { exampleBook } from '../../src/finding/example/example-book.js';
import type { Finding, FindingTable, RowsBehind, ToldRows } from '../../src/finding/finding.js';
import { findings } from '../../src/finding/findings.js';
import { numberAt } from '../../src/record/column.js';
import { ask } from './read-finding.js';

// Whatever an answer shows is held against the rows it names: nothing here is taken from the program's own counts.
const book = exampleBook();

/** What estimates show as their numerator or denominator although it is no number of rows: what it is instead. */
const noRows: Readonly<Record<string, string>> = {
  'stations compared: ratio, denominator': 'interceptions expected',
  'staff plan: chosen_again, numerator': 'resamples',
  'staff plan: chosen_again, denominator': 'resamples',
  'detection: positive, numerator': 'finds of both looks, added up',
  'detection: positive, denominator': 'finds of both looks, added up',
};
const inThousands = ['effort: per_1000_hours, denominator'];

/** How many things some rows are: what they add up to, or the craft that they are of, or the rows themselves. */
function things({ table: home }: Finding, told: ToldRows, counts: RowsBehind['counts']): number {
  const table = book.tables.get(told.table ?? home)!;
  if (told.adds !== undefined) {
    const column = table.column(told.adds);
    if (column.kind !== 'number') throw new Error('what is added up is a number');
    return told.rows.reduce((sum, row) => sum + numberAt(column, row)!, 0);
  }
  if (counts === 'rows') return told.rows.length;
  const column = table.column('inspection');
  if (column.kind !== 'text') throw new Error('an inspection is named by text');
  return new Set(Array.from(told.rows, (row) => column.codes[row])).size;
}

/** What a number shows of itself: a share its two sides, a count itself. */
function shown(cell: FindingTable['rows'][number][number], isShare: boolean): readonly [number | null, number | null] {
  if (cell === null || typeof cell === 'string') return [null, null];
  if (typeof cell === 'number') return [isShare ? null : cell, null];
  return [cell.numerator, cell.denominator];
}

/** Checks one answer; how many of its numbers are counts or shares of rows, and how many a model makes. */
function checked(
  finding: Finding,
  answer: FindingTable,
  by: readonly string[],
): { readonly counted: number; readonly modelled: number } {
  const number = { counted: 0, modelled: 0 };
  answer.rows.forEach((cells, row) => {
    answer.columns.forEach(({ name, kind, names }, at) => {
      const cell = cells[at]!;
      const isName = kind === 'text' || names === true || by.includes(name);
      if (isName || cell === null) return;
      const title = `${finding.name}: ${name}`;
      const behind = answer.counted?.(row, name) ?? null;
      if (behind === null) throw new Error(`${title} does not say which rows stand behind it`);
      const { numerator, denominator, uses, model, counts } = behind;
      for (const { rows, words } of [numerator, denominator, ...uses].filter((told) => told !== null)) {
        expect(words, title).not.toBe('');
        expect(
          rows.every((own, place) => place === 0 || own > rows[place - 1]!),
          `${title}: ascending`,
        ).toBe(true);
      }
      expect(model === null && numerator === null, `${title} counts rows, or says what makes it`).toBe(false);
      const isShare = typeof cell === 'number' && denominator !== null;
      if (isShare)
        expect(cell * things(finding, denominator, counts)).toBeCloseTo(things(finding, numerator!, counts), 6);
      shown(cell, isShare).forEach((side, place) => {
        const [told, which] = place === 0 ? [numerator, 'numerator'] : [denominator, 'denominator'];
        const key = `${title}, ${which}`;
        if (side === null || noRows[key] !== undefined || (typeof cell === 'number' && model !== null)) return;
        if (told === null) throw new Error(`${key} is shown, and no rows are told`);
        expect(things(finding, told, counts) / (inThousands.includes(key) ? 1000 : 1), key).toBeCloseTo(side, 6);
      });
      if (model === null) number.counted++;
      else number.modelled++;
    });
  });
  return number;
}

/** Fields by which every finding of a table can be split besides its own. */
const further: Readonly<Record<string, readonly string[]>> = {
  inspections: ['watercraft_type'],
  checks: ['watercraft_type'],
  rechecks: ['watercraft_type'],
  decontaminations: ['station'],
  station_days: ['station'],
};

/** Two of every three rows of a table, so that rows which were not asked about show up. */
function someRows(table: string): number[] {
  return Array.from({ length: book.tables.get(table)!.rowCount }, (_, row) => row).filter((row) => row % 3 > 0);
}

describe.each(findings.map((finding) => [`${finding.name} of ${finding.table}`, finding] as const))(
  '%s says of every number which rows stand behind it, as many as it shows',
  (_, finding) => {
    const { by, options } = finding.account.example;

    test('asked as the methods page asks it', () => {
      const { counted, modelled } = checked(finding, ask(finding, book, by, undefined, options), by);
      expect(counted + modelled).toBeGreaterThan(0);
    });

    test('split, and asked of some rows only', () => {
      const fields = further[finding.table] ?? [];
      checked(finding, ask(finding, book, fields, someRows(finding.table), options), fields);
    });
  },
);
