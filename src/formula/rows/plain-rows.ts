import type { EachFunction, PlainFunction, PlainValue, Takes } from '../functions/declaration.js';
import type { FormulaKind } from '../kind.js';
import { no, unknown, yes } from '../missing.js';
import { calendarDay, plainOf, plainResult } from '../value/plain-value.js';
import type { RowValues } from './row-values.js';

/** The plain value of each row. */
function plainAt(values: RowValues, takes: Takes): (row: number) => PlainValue {
  switch (values.kind) {
    case 'constant': {
      const value = plainOf(values.value, takes);
      return () => value;
    }
    case 'text': {
      const { codes, dictionary } = values;
      return (row) => (codes[row] === 0 ? null : dictionary[codes[row]!]!);
    }
    case 'truth':
      return (row) => (values.answers[row] === unknown ? null : Number(values.answers[row] === yes));
    case 'wait':
      throw new Error('a wait is no plain value');
    default:
      return (row) => (Number.isNaN(values.values[row]) ? null : values.values[row]!);
  }
}

function textRows(length: number, textAt: (row: number) => PlainValue): RowValues {
  const codeOf = new Map<string, number>();
  const dictionary = [''];
  const codes = Uint32Array.from({ length }, (_, row) => {
    const text = textAt(row);
    if (text === null) return 0;
    const known = codeOf.get(String(text)) ?? dictionary.push(String(text)) - 1;
    codeOf.set(String(text), known);
    return known;
  });
  return { kind: 'text', codes, dictionary };
}

/** What a function of plain values gives for each row, as values of a kind. */
export function plainRows(
  declaration: EachFunction | PlainFunction,
  kind: FormulaKind['kind'],
  given: readonly RowValues[],
  length: number,
): RowValues {
  const last = declaration.arguments.at(-1)!;
  const at = given.map((values, place) => plainAt(values, (declaration.arguments[place] ?? last).takes));
  const result = (row: number) =>
    plainResult(
      declaration,
      at.map((value) => value(row)),
    );
  if (kind === 'text') return textRows(length, result);
  if (kind === 'truth') {
    const answers = Uint8Array.from({ length }, (_, row) => {
      const truth = result(row);
      return truth === null ? unknown : truth === 1 ? yes : no;
    });
    return { kind: 'truth', answers };
  }
  const unit = declaration.works === 'on values' && declaration.result.kind === 'number' ? declaration.result.unit : [];
  const values = Float64Array.from({ length }, (_, row) => {
    const value = result(row);
    if (typeof value !== 'number') return Number.NaN;
    return (kind === 'date' ? calendarDay(value) : value) ?? Number.NaN;
  });
  return { kind: kind === 'date' ? 'date' : 'number', values, unit };
}
