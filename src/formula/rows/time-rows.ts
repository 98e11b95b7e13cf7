import { momentsApart } from '../check-arithmetic.js';
import { type ArithmeticNode, isWrittenNumber, type Node } from '../tree.js';
import { conversion, convert } from '../unit/convert.js';
import { daysUnit } from '../value/date-arithmetic.js';
import { calendarDay, plainOf } from '../value/plain-value.js';
import type { RowNumbers, RowValues } from './row-values.js';

const millisecondsPerMinute = 60_000;
const millisecondsPerDay = 86_400_000;

function timeKind(values: RowValues): 'date' | 'instant' | null {
  const { kind } = values.kind === 'constant' ? values.value : values;
  return kind === 'date' || kind === 'instant' ? kind : null;
}

/** The number at each row: days, milliseconds, or a time in days; NaN where missing. */
function at(node: Node, values: RowValues): (row: number) => number {
  if (values.kind === 'constant') {
    const plain = plainOf(values.value, 'date');
    const number = typeof plain === 'number' ? plain : Number.NaN;
    const asTime = values.value.kind === 'number' && !isWrittenNumber(node);
    const days = asTime ? convert(number, conversion(values.value.unit, daysUnit)!) : number;
    return () => days;
  }
  if (values.kind !== 'number' && values.kind !== 'date' && values.kind !== 'instant') {
    throw new Error(`${values.kind} was not checked`);
  }
  if (values.kind !== 'number') return (row) => values.values[row]!;
  const step = conversion(values.unit, daysUnit)!;
  return (row) => convert(values.values[row]!, step);
}

/** Dates or moments of rows subtracted from one another, or moved by a time; null where neither side is one. */
export function timeRows(node: ArithmeticNode, left: RowValues, right: RowValues, length: number): RowNumbers | null {
  const kind = timeKind(left) ?? timeKind(right);
  if (kind === null) return null;
  const [one, other] = [at(node.left, left), at(node.right, right)];
  const sign = node.operator === '-' ? -1 : 1;
  if (timeKind(left) !== null && timeKind(right) !== null) {
    const [unit, step] = kind === 'date' ? [daysUnit, 1] : [momentsApart, millisecondsPerMinute];
    const apart = Float64Array.from({ length }, (_, row) => (one(row) - other(row)) / step);
    return { kind: 'number', values: apart, unit };
  }
  if (kind === 'date') {
    const moved = Float64Array.from({ length }, (_, row) => calendarDay(one(row) + sign * other(row)) ?? Number.NaN);
    return { kind: 'date', values: moved, unit: [] };
  }
  const [start, by] = timeKind(left) === null ? [other, one] : [one, other];
  const moments = Float64Array.from({ length }, (_, row) => start(row) + sign * by(row) * millisecondsPerDay);
  return { kind: 'instant', values: moments, unit: [] };
}
