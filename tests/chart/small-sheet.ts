import type { NumberResult, Result } from '../../src/formula/result.js';
import type { ChartRequest, EvaluatedSheet, SheetColumn } from '../../src/notebook/evaluated.js';

/** A number as a formula gives it; whatever is not named is absent. */
export function number(value: number | null, more: Partial<NumberResult> = {}): NumberResult {
  return {
    kind: 'number',
    value,
    unit: '',
    numerator: null,
    denominator: null,
    interval: null,
    why: null,
    cautions: [],
    ...more,
  };
}

/** A share of `trials` with limits of 95 %. */
export function share(cases: number, trials: number, low: number, high: number): NumberResult {
  return number(cases / trials, {
    numerator: cases,
    denominator: trials,
    interval: { low, high, confidence: 0.95, sides: cases === 0 ? 'upper' : 'two', method: 'invented limits' },
  });
}

export const text = (words: string): Result => ({ kind: 'text', text: words });
export const missing = (why: string): Result => ({ kind: 'missing', why });

export const key = (name: string): SheetColumn => column(name, 'key', '');
export const value = (name: string, shownAs = ''): SheetColumn => column(name, 'value', shownAs);

function column(name: string, role: SheetColumn['role'], shownAs: string): SheetColumn {
  return { name, label: name, role, formula: '', shownAs, meaning: '' };
}

export function sheet(columns: readonly SheetColumn[], rows: readonly (readonly Result[])[]): EvaluatedSheet {
  return {
    name: 'small',
    sentence: 'Sheet small: each key of rows.',
    columns,
    rows: rows.map((cells) => ({ cells })),
    notes: [],
    problems: [],
    line: 1,
  };
}

export function request(kind: string, options: Record<string, string>): ChartRequest {
  return { name: `${kind}-small`, kind, caption: 'A small chart', sheet: 'small', options, line: 7, column: 3 };
}
