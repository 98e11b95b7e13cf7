import { createHash } from 'node:crypto';
import type { Result } from '../../formula/result.js';
import type { EvaluatedSheet } from '../../notebook/evaluated.js';
import { untitled } from '../../notebook/sheet-sentence.js';
import { carriedValue } from './carried-value.js';
import type { CarriedCell, CarriedSheet } from './page-results.js';

/** A sheet of more rows than this is known by its fingerprint alone, so that a page stays small. */
const mostRows = 100;

/** A sheet as a page carries it. */
export function carriedSheet(sheet: EvaluatedSheet, needs: readonly string[]): CarriedSheet {
  const { name, sentence, columns, rows } = sheet;
  return {
    name,
    sentence: untitled(sentence),
    needs,
    columns: columns.map((column, at) => ({
      name: column.name,
      key: column.role === 'key',
      formula: column.formula,
      shownAs: column.shownAs,
      unit: unitOf(rows.map(({ cells }) => cells[at]!)),
    })),
    count: rows.length,
    rows: rows.length > mostRows ? [] : rows.map(({ cells }) => cells.map(carriedCell)),
    fingerprint: shortFingerprint(JSON.stringify(rows.map(({ cells }) => cells.map(carriedValue)))),
  };
}

/** The first 16 digits of a text's SHA-256, in hexadecimal: enough to tell that two are not the same. */
export function shortFingerprint(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}

function unitOf(results: readonly Result[]): string {
  const first = results.find((result) => result.kind === 'number' && result.value !== null);
  return first?.kind === 'number' ? first.unit : '';
}

function carriedCell(result: Result): CarriedCell {
  const { value, interval, text } = carriedValue(result);
  if (text !== undefined) return text;
  if (value === undefined) return null;
  if (interval === undefined) return sixDigits(value);
  return [sixDigits(value), sixDigits(interval.low), sixDigits(interval.high)];
}

function sixDigits(value: number | null): number | null {
  return value === null ? null : Number(value.toPrecision(6));
}
