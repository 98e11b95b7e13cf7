import { type Checking, refuse } from './checking.js';
import { describeKind, type FormulaKind, unknownKind } from './kind.js';
import { type ArithmeticNode, isWrittenNumber, type Node } from './tree.js';
import { conversion, holdsTemperature } from './unit/convert.js';
import { divideUnits, multiplyUnits } from './unit/product.js';
import { sumUnits, unitsDiffer } from './unit/sum.js';
import { unitOf } from './unit/unit.js';
import { unitWord } from './unit/word.js';
import { daysUnit } from './value/date-arithmetic.js';

/** The unit that moments are apart in. */
export const momentsApart = unitOf(unitWord('minutes')!);

/** Whether a kind is a place in time. */
function isInTime({ kind }: FormulaKind): boolean {
  return kind === 'date' || kind === 'instant';
}

/** Tells a part that is no number; the kind of one that is. */
export function numberKind(
  node: Node,
  kind: FormulaKind,
  checking: Checking,
): Extract<FormulaKind, { kind: 'number' }> | null {
  if (kind.kind === 'number') return kind;
  if (kind.kind === 'unknown') return null;
  const remedy =
    kind.kind === 'rows' || kind.kind === 'sheet'
      ? 'Count the rows with count(…).'
      : 'Calculate with numbers; two dates can be subtracted, and days added to a date.';
  refuse(checking, node, { code: 'wrong-kind', wanted: `a number, not ${describeKind(kind)}`, remedy });
  return null;
}

/** Two places in time: only their difference is anything. */
function between(node: ArithmeticNode, left: FormulaKind, right: FormulaKind, checking: Checking): FormulaKind {
  if (node.operator === '-' && left.kind === right.kind) {
    return { kind: 'number', unit: left.kind === 'date' ? daysUnit : momentsApart };
  }
  const wanted =
    left.kind === right.kind ? 'a difference: two dates can only be subtracted' : 'two dates, or two moments';
  const remedy = 'Subtract one from the other, or add a number of days.';
  return refuse(checking, node.operatorAt, { code: 'wrong-kind', wanted, remedy });
}

/** A place in time moved by a time. */
function moved(node: ArithmeticNode, left: FormulaKind, right: FormulaKind, checking: Checking): FormulaKind {
  const dateFirst = isInTime(left);
  const [start, by, byNode] = dateFirst ? [left, right, node.right] : [right, left, node.left];
  const number = numberKind(byNode, by, checking);
  if (number === null) return unknownKind;
  if (node.operator === '*' || node.operator === '/' || (node.operator === '-' && !dateFirst)) {
    const remedy = 'Add days to a date or subtract them: season_start + 30.';
    return refuse(checking, node.operatorAt, { code: 'wrong-kind', wanted: 'a date that is moved by days', remedy });
  }
  if (start.kind === 'date' && isWrittenNumber(byNode)) return start;
  if (conversion(number.unit, daysUnit) !== null) return start;
  return refuse(checking, node.operatorAt, unitsDiffer(daysUnit, number.unit));
}

/** The kind of two values calculated with: numbers by their units, and dates by their days. */
export function kindOfArithmetic(node: ArithmeticNode, checking: Checking): FormulaKind {
  const [left, right] = [checking.kindOf(node.left, checking), checking.kindOf(node.right, checking)];
  if (left.kind === 'unknown' || right.kind === 'unknown') return unknownKind;
  if (isInTime(left) && isInTime(right)) return between(node, left, right, checking);
  if (isInTime(left) || isInTime(right)) return moved(node, left, right, checking);
  const [one, other] = [numberKind(node.left, left, checking), numberKind(node.right, right, checking)];
  if (one === null || other === null) return unknownKind;
  if (node.operator === '+' || node.operator === '-') {
    const sum = sumUnits(node.operator, one.unit, other.unit);
    return 'unit' in sum ? { kind: 'number', unit: sum.unit } : refuse(checking, node.operatorAt, sum);
  }
  if (holdsTemperature(one.unit) || holdsTemperature(other.unit)) {
    const wanted = 'something with a true zero; a temperature scale has none';
    const remedy = 'Multiply and divide differences of temperatures.';
    return refuse(checking, node.operatorAt, { code: 'units-differ', wanted, remedy });
  }
  const { unit } = node.operator === '*' ? multiplyUnits(one.unit, other.unit) : divideUnits(one.unit, other.unit);
  return { kind: 'number', unit };
}
