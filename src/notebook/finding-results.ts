import type { FindingCell, FindingColumn, FindingTable } from '../finding/finding.js';
import type { NumberResult, Result } from '../formula/result.js';
import type { BookTable } from '../record/book.js';
import { keyResult } from './key-cell.js';

const nothingMore: NumberResult = {
  kind: 'number',
  value: null,
  unit: '',
  numerator: null,
  denominator: null,
  interval: null,
  why: null,
  cautions: [],
};

/** A finding's cell as pages show values. */
export function findingResult(cell: FindingCell, column: FindingColumn, table: BookTable): Result {
  const unit = column.unit ?? '';
  if (cell === null) return { kind: 'missing', why: column.whereNone ?? 'not recorded' };
  if (typeof cell === 'string') {
    const field = table.fields.get(column.name);
    return field === undefined ? { kind: 'text', text: cell } : keyResult(field, cell);
  }
  if (typeof cell === 'number') return { ...nothingMore, value: cell, unit };
  const { value, numerator, denominator, interval, why, cautions } = cell;
  const isShare = column.shownAs === 'percent' || column.shownAs === 'per 1,000';
  return {
    ...{ kind: 'number', value, unit, numerator, denominator, interval, why, cautions },
    ...(numerator === null || denominator === null || isShare ? {} : { isRatio: true }),
  };
}

/** A finding's answer as values, row by row. */
export function findingResults(answer: FindingTable, table: BookTable): Result[][] {
  return answer.rows.map((cells) => cells.map((cell, at) => findingResult(cell, answer.columns[at]!, table)));
}
