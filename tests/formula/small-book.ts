import type { Book, BookColumn, BookField, BookTable } from '../../src/record/book.js';
import { waitEnding } from '../../src/record/book.js';
import { numberColumn, textColumn } from '../../src/record/column.js';

type FieldWords = Partial<Pick<BookField, 'unit' | 'codes' | 'labels'>>;

/** A field with its values, one a row. */
export interface FilledField {
  readonly field: BookField;
  readonly column: BookColumn;
}

function field(name: string, kind: BookField['kind'], words: FieldWords): BookField {
  return { name, kind, unit: null, codes: null, labels: null, meaning: `The ${name}.`, ...words };
}

export function texts(name: string, values: readonly (string | null)[], codes: readonly string[] | null = null) {
  return { field: field(name, 'text', { codes }), column: textColumn(values) } satisfies FilledField;
}

export function numbers(name: string, unit: string | null, values: readonly (number | null)[]) {
  return { field: field(name, 'number', { unit }), column: numberColumn(values) } satisfies FilledField;
}

/** Dates as days since 1970-01-01. */
export function dates(name: string, values: readonly (number | null)[]) {
  return { field: field(name, 'date', {}), column: numberColumn(values) } satisfies FilledField;
}

/** Waits as minutes and how each ended. */
export function waits(name: string, values: readonly (readonly [number, keyof typeof waitEnding])[]): FilledField {
  const minutes = Float64Array.from(values, ([minute]) => minute);
  const ending = Uint8Array.from(values, ([, how]) => waitEnding[how]);
  return { field: field(name, 'wait', { unit: 'minutes' }), column: { kind: 'wait', minutes, ending } };
}

export function table(
  name: string,
  counted: string,
  filled: readonly FilledField[],
  clusterOf: readonly number[] | null,
): BookTable {
  const columns = new Map(filled.map((one) => [one.field.name, one.column]));
  const [first] = filled;
  const column = first!.column;
  const rowCount =
    column.kind === 'text' ? column.codes.length : column.kind === 'wait' ? column.ending.length : column.values.length;
  return {
    name,
    row: `one of ${counted}`,
    counted,
    rowCount,
    fields: new Map(filled.map((one) => [one.field.name, one.field])),
    column: (wanted) => columns.get(wanted)!,
    clusterOf: clusterOf === null ? null : Uint32Array.from(clusterOf),
    origin: null,
  };
}

export function book(tables: readonly BookTable[], stratumOf: readonly number[]): Book {
  return {
    tables: new Map(tables.map((one) => [one.name, one])),
    clusters: { count: stratumOf.length, stratumOf: Uint32Array.from(stratumOf) },
    sum: { files: [], definitionChanges: [], asOf: null, fingerprint: '' },
  };
}

const outcomes = ['cleared', 'intercepted', 'refused'];

/** Days since 1970-01-01 of 2025-05-01; `date -u -d 2025-05-01 +%s` divided by 86,400. */
export const firstOfMay = 20209;

/**
 * Two stations with two days each. Eight inspections, two of them interceptions; standing water is missing twice,
 * length once. Four station days, one of them closed. Five washes, one still held, one left unwashed, one never begun.
 */
export const smallBook: Book = book(
  [
    table(
      'inspections',
      'inspections',
      [
        texts(
          'station',
          ['North', 'North', 'North', 'North', 'South', 'South', 'South', 'South'],
          ['South', 'North', 'East'],
        ),
        numbers('season', 'year', [2024, 2024, 2025, 2025, 2024, 2024, 2025, 2025]),
        texts(
          'extent',
          ['full', 'full', 'full', 'paper check', 'full', 'full', 'full', 'full'],
          ['full', 'paper check'],
        ),
        texts(
          'outcome',
          ['cleared', 'intercepted', 'cleared', 'cleared', 'intercepted', 'refused', 'cleared', 'cleared'],
          outcomes,
        ),
        texts('standing_water', ['yes', 'no', null, 'no', 'yes', null, 'no', 'no'], ['yes', 'no']),
        numbers('length_ft', 'feet', [10, 20, 30, null, 20, 20, 40, 50]),
        numbers('minutes', 'minutes', [4, 30, 6, 2, 45, null, 8, 5]),
        texts('craft', ['a', 'b', 'a', 'c', 'd', null, 'b', 'e']),
        texts('inspector', ['p', 'p', 'q', 'q', 'p', 'r', 'r', 'r']),
        dates(
          'day',
          [0, 0, 1, 1, 0, 0, 1, null].map((day) => (day === null ? null : firstOfMay + day)),
        ),
      ],
      [0, 0, 1, 1, 2, 2, 3, 3],
    ),
    table(
      'station_days',
      'station days',
      [
        texts('station', ['North', 'North', 'South', 'South'], ['South', 'North', 'East']),
        texts('state', ['open', 'open', 'open', 'closed'], ['open', 'closed', 'not recorded']),
        numbers('staff_hours', 'staff hours', [16, 8, 8, null]),
        numbers('staff_cost', 'dollars', [400, 200, 200, null]),
      ],
      [0, 1, 2, 3],
    ),
    table(
      'decontaminations',
      'washes',
      [
        waits('turnaround', [
          [30, 'ended'],
          [60, 'ended'],
          [120, 'open'],
          [45, 'otherwise'],
          [0, 'unknown'],
        ]),
        numbers('contact_temp_f', 'degrees F', [140, 141, null, 130, 150]),
        numbers('contact_seconds', 'seconds', [10, 130, 60, 20, null]),
      ],
      [0, 0, 1, 2, 3],
    ),
    table(
      'spending',
      'entries',
      [
        texts('category', ['personnel', 'travel', 'personnel'], ['personnel', 'travel']),
        numbers('amount', 'dollars', [1000, 250, -50]),
      ],
      null,
    ),
  ],
  [0, 0, 1, 1],
);
