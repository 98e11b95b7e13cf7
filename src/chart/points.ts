import type { Result } from '../formula/result.js';
import { isWithheld } from '../notebook/shown.js';
import type { Interval } from '../statistic/estimate.js';
import type { AskedChart, PlacedColumn } from './chart-kind.js';
import { keyText } from './key-text.js';
import { shownScale } from './shown-scale.js';

/** One row of the sheet as a chart draws it, on the scale that readers see. */
export interface Point {
  /** The names of the row's keys. */
  readonly name: string;
  /** Null where the row has no value: it is not drawn, and `why` says so. */
  readonly value: number | null;
  /** The limits; null where there are none or an end is not reached. */
  readonly low: number | null;
  readonly high: number | null;
  readonly limits: Interval['sides'] | null;
  /** The confidence of the limits, such as 0.95; null where they are columns of their own. */
  readonly confidence: number | null;
  readonly numerator: number | null;
  readonly denominator: number | null;
  readonly why: string | null;
  /** Whether its value is there but may not be told. */
  readonly isWithheld: boolean;
  readonly row: number;
}

/**
 * Where the line of a point's interval ends, on the scale drawn: at its upper limit; with a lower limit alone, at its mark,
 * since nothing is known above it; else at the edge of the drawing, where the upper limit is not reached.
 */
export function upperEnd({ value, high, limits }: Point, edge: number): number {
  return high ?? (limits === 'lower' && value !== null ? value : edge);
}

/** What is written where a row has no value. */
export function absentWord({ isWithheld: withheld }: Point): string {
  return withheld ? 'withheld' : 'no value';
}

/** The sheet's key columns. */
export function keyColumns({ sheet }: AskedChart): readonly PlacedColumn[] {
  return sheet.columns.flatMap((column, at) => (column.role === 'key' ? [{ at, column }] : []));
}

/** The first of the sheet's keys that tell its rows apart: names of rows need no more than these. */
export function namingColumns(asked: AskedChart): readonly PlacedColumn[] {
  const keys = keyColumns(asked);
  for (let count = 1; count < keys.length; count++) {
    const named = keys.slice(0, count);
    const names = asked.sheet.rows.map(({ cells }) => named.map(({ at }) => keyText(cells[at]!)).join(', '));
    if (new Set(names).size === names.length) return named;
  }
  return keys;
}

/** Every row of the sheet, in its order, with the value asked for. */
export function pointsOf(chart: AskedChart, named: readonly PlacedColumn[]): readonly Point[] {
  const { sheet, columns } = chart;
  const value = columns.get('value')!;
  const { times } = shownScale(sheet, value);
  return sheet.rows.map(({ cells }, row) => {
    const cell = cells[value.at]!;
    const interval = cell.kind === 'number' ? cell.interval : null;
    const low = limitOf('low', interval?.low ?? null);
    const high = limitOf('high', interval?.high ?? null);
    const asked = columns.has('low') || columns.has('high');
    const limits = asked ? (low === null && high === null ? null : 'two') : (interval?.sides ?? null);
    return {
      name: named.map(({ at }) => keyText(cells[at]!)).join(', '),
      value: scaled(numberOf(cell)),
      low: scaled(low),
      high: scaled(high),
      limits,
      confidence: asked ? null : (interval?.confidence ?? null),
      numerator: cell.kind === 'number' ? cell.numerator : null,
      denominator: cell.kind === 'number' ? cell.denominator : null,
      why: whyOf(cell),
      isWithheld: isWithheld(cell),
      row,
    };

    function limitOf(word: string, own: number | null): number | null {
      const column = columns.get(word);
      return column === undefined ? own : numberOf(cells[column.at]!);
    }
  });

  function scaled(number: number | null): number | null {
    return number === null ? null : number * times;
  }
}

/** A result's number, or null. */
export function numberOf(result: Result): number | null {
  return result.kind === 'number' ? result.value : null;
}

/** Why a result has no value or no interval; null where nothing needs saying. */
export function whyOf(result: Result): string | null {
  switch (result.kind) {
    case 'number':
      return result.why;
    case 'missing':
      return result.why;
    case 'problem':
      return result.problems.map((problem) => problem.code.replaceAll('-', ' ')).join('; ');
    default:
      return 'not a number';
  }
}
