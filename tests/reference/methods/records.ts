import { readFileSync } from 'node:fs';
import { dayAsText, weekdayOfDay, weekOfDay, weekYearOfDay } from '../../../src/finding/book/calendar.js';
import { lazyTable } from '../../../src/finding/book/lazy-table.js';
import { zoneOffsets } from '../../../src/finding/book/zone-offsets.js';
import { groupRows } from '../../../src/finding/group-rows.js';
import { bookNumber } from '../../../src/finding/row-tests.js';
import { conversion, convert } from '../../../src/formula/unit/convert.js';
import { readUnit } from '../../../src/formula/unit/read-unit.js';
import type { Unit } from '../../../src/formula/unit/unit.js';
import { plainDialect } from '../../../src/intake/read-dialect.js';
import { met, RecordScanner } from '../../../src/intake/record-scanner.js';
import type { BookTable } from '../../../src/record/book.js';
import { numberAt, numberColumn, textColumn } from '../../../src/record/column.js';
import { quantile } from '../../../src/statistic/quantile.js';
import { summary } from '../../../src/statistic/summary.js';
import type { Inputs, Method } from '../inputs.js';

const dayOf = (date: string): number => Date.parse(date) / 86_400_000;
const two = (number: number): string => String(number).padStart(2, '0');

/** The rows of a delimited text, cut by the importer's own scanner. */
function rowsOf(text: string): string[][] {
  const bytes = new TextEncoder().encode(text);
  const scanner = new RecordScanner(plainDialect, bytes.length + 1);
  const rows: string[][] = [];
  let handed = false;
  for (let state = scanner.next(); state !== met.end; state = scanner.next()) {
    if (state === met.row) rows.push(Array.from({ length: scanner.count }, (_, at) => scanner.cellText(at)));
    else {
      if (!handed) scanner.room().set(bytes);
      scanner.filled(handed ? 0 : bytes.length);
      handed = true;
    }
  }
  return rows;
}

type Row = Readonly<Record<string, unknown>>;

/** The rows of a file of datasets/open, by the names of its columns. */
function openRows(file: string): Row[] {
  const text = readFileSync(new URL(`../../../datasets/open/${file}`, import.meta.url), 'utf8');
  if (file.endsWith('.json')) return JSON.parse(text) as Row[];
  const [head = [], ...rows] = rowsOf(text);
  return rows.map((cells) => Object.fromEntries(cells.map((cell, at) => [head[at], cell])));
}

/** Rows as a table of the book: a key, and columns of numbers in which null is missing. */
function bookTable(rows: readonly Row[], key: (row: Row) => string, values: readonly string[]): BookTable {
  const field = (name: string, kind: 'text' | 'number') => ({
    ...{ name, kind, unit: null, codes: null, labels: null },
    meaning: name,
  });
  const numbers = (name: string) =>
    rows.map((row) => (row[name] === null || row[name] === '' ? null : Number(row[name])));
  return lazyTable({
    ...{ name: 'rows', row: 'a row', counted: 'rows', rowCount: rows.length, clusterOf: null, origin: null },
    sources: [
      { field: field('key', 'text'), build: () => textColumn(rows.map(key)) },
      ...values.map((name) => ({ field: field(name, 'number'), build: () => numberColumn(numbers(name)) })),
    ],
  });
}

function grouped(inputs: Inputs) {
  const by = inputs.text('by');
  const cut = inputs.has('key_expr') ? inputs.numbers('key_expr') : null;
  const key = (row: Row): string => {
    const text = String(row[by]);
    return cut === null ? text : text.slice(cut[0]! - 1, cut[1]);
  };
  const values = inputs.texts('values');
  const table = bookTable(openRows(inputs.text('file')), key, values);
  const groups = groupRows(
    table,
    Uint32Array.from({ length: table.rowCount }, (_, row) => row),
    ['key'],
  );
  const described = values.flatMap((name): [string, unknown][] => {
    const column = bookNumber(table, name);
    const numbers = groups.map(({ rows }) =>
      Float64Array.from([...rows].flatMap((row) => numberAt(column, row) ?? [])).sort(),
    );
    const sums = numbers.map((some) => summary(some));
    return [
      [`n_${name}`, sums.map(({ n }) => n)],
      [`mean_${name}`, sums.map(({ mean }) => mean)],
      [`median_${name}`, numbers.map((some) => quantile(some, 0.5))],
      [`sd_${name}`, sums.map(({ standardDeviation }) => standardDeviation)],
    ];
  });
  return {
    rows: table.rowCount,
    keys: groups.map(({ key: [first] }) => first),
    count: groups.map(({ rows }) => rows.length),
    ...Object.fromEntries(described),
  };
}

function unit(words: string): Unit {
  const read = readUnit(words);
  if ('unknown' in read) throw new Error(`no unit ${words}`);
  return read.unit;
}

function temperatures(inputs: Inputs, to: string): number[] {
  const how = conversion(unit('degrees F'), unit(to));
  if (how === null) throw new Error(`degrees F are not told in ${to}`);
  return inputs.numbers('fahrenheit').map((value) => convert(value, how));
}

/** A moment as its zone's clock shows it, with its offset: `2025-03-09 03:00:00 -0600`. */
function clockText(instant: string, zone: string): string {
  const moment = Date.parse(instant);
  const offset = zoneOffsets(zone, moment, moment)?.(moment);
  if (offset === undefined) throw new Error(`no zone ${zone}`);
  const day = Math.floor((moment + offset) / 86_400_000);
  const seconds = (moment + offset) / 1000 - day * 86_400;
  const clock = [seconds / 3600, (seconds / 60) % 60, seconds % 60].map((part) => two(Math.floor(part))).join(':');
  const minutes = Math.abs(offset) / 60_000;
  return `${dayAsText(day)} ${clock} ${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}${two(minutes % 60)}`;
}

export const records: Readonly<Record<string, Method>> = {
  'csv.rfc4180': (inputs) => ({ rows: rowsOf(inputs.text('text')) }),
  'calendar.iso_week': (inputs) => ({
    iso: inputs
      .texts('dates')
      .map(dayOf)
      .map((day) => `${weekYearOfDay(day)}-W${two(weekOfDay(day))}-${weekdayOfDay(day) + 1}`),
  }),
  'calendar.dst': (inputs) => {
    const zones = inputs.texts('zones');
    return { local_with_offset: inputs.texts('instants').map((instant, at) => clockText(instant, zones[at] ?? '')) };
  },
  'units.temperature': (inputs) => ({
    celsius: temperatures(inputs, 'degrees C'),
    kelvin: temperatures(inputs, 'kelvins'),
  }),
  'table.group_by': grouped,
};
