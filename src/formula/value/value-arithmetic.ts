import type { Environment } from '../environment.js';
import { type ArithmeticNode, isWrittenNumber } from '../tree.js';
import { arithmetic } from './arithmetic.js';
import { daysApart, movedDate } from './date-arithmetic.js';
import type { Evaluated } from './evaluated.js';

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
  if (left.kind === 'date' && right.kind === 'date') return daysApart(left, right, environment);
  throw new Error(`${left.kind} ${node.operator} ${right.kind} was not checked`);
}
