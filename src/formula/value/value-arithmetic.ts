import type { Environment } from '../environment.js';
import { type ArithmeticNode, isWrittenNumber } from '../tree.js';
import { arithmetic } from './arithmetic.js';
import { daysApart, movedDate } from './date-arithmetic.js';
import type { DateValue, Evaluated } from './evaluated.js';
import { plainOf } from './plain-value.js';

/** The date that a value is; a date may be written as text. */
function dateOf(value: Evaluated): DateValue {
  if (value.kind === 'date') return value;
  const day = plainOf(value, 'date');
  return { kind: 'date', day: typeof day === 'number' ? day : null, accounts: [] };
}

/** Two values calculated with: numbers with their units and intervals, and dates by their days. */
export function valueArithmetic(
  node: ArithmeticNode,
  left: Evaluated,
  right: Evaluated,
  environment: Environment,
): Evaluated {
  if (left.kind === 'number' && right.kind === 'number') return arithmetic(node.operator, left, right, environment);
  const sign = node.operator === '-' ? -1 : 1;
  if (left.kind === 'date' && right.kind === 'number') {
    return movedDate(left, right, sign, isWrittenNumber(node.right), environment);
  }
  if (left.kind === 'number' && right.kind === 'date') {
    return movedDate(right, left, 1, isWrittenNumber(node.left), environment);
  }
  return daysApart(dateOf(left), dateOf(right), environment);
}
