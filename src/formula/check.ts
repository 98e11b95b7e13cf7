import type { Problem } from '../problem/problem.js';
import { kindOfCall } from './check-call.js';
import { checkComparison } from './check-comparison.js';
import { kindOfName } from './check-name.js';
import { checkRows } from './check-rows.js';
import { type Checking, refuse } from './checking.js';
import { describeKind, type FormulaKind, truthKind, unknownKind } from './kind.js';
import type { Scope } from './scope.js';
import type { ArithmeticNode, Formula, Node, RowsNode } from './tree.js';
import { holdsTemperature } from './unit/convert.js';
import { divideUnits, multiplyUnits } from './unit/product.js';
import { sumUnits } from './unit/sum.js';
import { plain, type Unit } from './unit/unit.js';

/** The unit of a part that must be a number; null where it is none, which is told. */
function numberUnit(node: Node, checking: Checking): Unit | null {
  const kind = checking.kindOf(node, checking);
  if (kind.kind === 'number') return kind.unit;
  if (kind.kind === 'unknown') return null;
  const remedy =
    kind.kind === 'rows' ? 'Count the rows with count(…).' : 'Calculate with numbers; a date or text is only compared.';
  refuse(checking, node, { code: 'wrong-kind', wanted: `a number, not ${describeKind(kind)}`, remedy });
  return null;
}

function kindOfArithmetic(node: ArithmeticNode, checking: Checking): FormulaKind {
  const [left, right] = [numberUnit(node.left, checking), numberUnit(node.right, checking)];
  if (left === null || right === null) return unknownKind;
  if (node.operator === '+' || node.operator === '-') {
    const sum = sumUnits(node.operator, left, right);
    return 'unit' in sum ? { kind: 'number', unit: sum.unit } : refuse(checking, node.operatorAt, sum);
  }
  if (holdsTemperature(left) || holdsTemperature(right)) {
    const wanted = 'something with a true zero; a temperature scale has none';
    const remedy = 'Multiply and divide differences of temperatures.';
    return refuse(checking, node.operatorAt, { code: 'units-differ', wanted, remedy });
  }
  const { unit } = node.operator === '*' ? multiplyUnits(left, right) : divideUnits(left, right);
  return { kind: 'number', unit };
}

function kindOfNegative(of: Node, node: Node, checking: Checking): FormulaKind {
  const unit = numberUnit(of, checking);
  if (unit === null) return unknownKind;
  if (!holdsTemperature(unit)) return { kind: 'number', unit };
  const mistake = { code: 'units-differ', wanted: 'something with a true zero', remedy: 'Take the sign out.' };
  return refuse(checking, node, mistake);
}

function condition(node: Node, checking: Checking): void {
  const kind = checking.kindOf(node, checking);
  if (kind.kind === 'truth' || kind.kind === 'unknown') return;
  const remedy =
    kind.kind === 'text'
      ? 'Several values are listed as: outcome in ("intercepted", "refused").'
      : 'Compare it with something.';
  refuse(checking, node, { code: 'wrong-kind', wanted: `a condition, not ${describeKind(kind)}`, remedy });
}

function kindOfRows(node: RowsNode, checking: Checking): FormulaKind {
  if (node.field !== null) {
    const remedy = 'Put it into a function: sum(… of …), median(… of …).';
    return refuse(checking, node, { code: 'field-alone', wanted: 'one value, not one for each row', remedy });
  }
  const table = checkRows(node, node, { ...checking, row: null });
  return table === null ? unknownKind : { kind: 'rows', table: table.name };
}

function kindOf(node: Node, checking: Checking): FormulaKind {
  const side = (part: Node) => ({ node: part, kind: kindOf(part, checking) });
  switch (node.kind) {
    case 'number':
      return { kind: 'number', unit: plain };
    case 'text':
      return { kind: 'text', codes: null, text: node.text };
    case 'name':
      return kindOfName(node, checking);
    case 'call':
      return kindOfCall(node, checking);
    case 'negative':
      return kindOfNegative(node.of, node, checking);
    case 'arithmetic':
      return kindOfArithmetic(node, checking);
    case 'comparison': {
      const ordered = node.operator !== 'is' && node.operator !== 'is not';
      return checkComparison(side(node.left), side(node.right), node.operatorAt, ordered, checking);
    }
    case 'missing': {
      const kind = kindOf(node.of, checking);
      if (kind.kind !== 'rows') return truthKind;
      const remedy = 'Ask whether their count is 0.';
      return refuse(checking, node.of, { code: 'wrong-kind', wanted: 'a value, not rows', remedy });
    }
    case 'among': {
      const subject = side(node.of);
      for (const value of node.values) checkComparison(subject, side(value), node.operatorAt, false, checking);
      return truthKind;
    }
    case 'between': {
      const subject = side(node.of);
      for (const end of [node.low, node.high]) checkComparison(subject, side(end), node.operatorAt, true, checking);
      return truthKind;
    }
    case 'not':
      condition(node.of, checking);
      return truthKind;
    case 'logic':
      condition(node.left, checking);
      condition(node.right, checking);
      return truthKind;
    case 'rows':
      return kindOfRows(node, checking);
    case 'broken':
      return unknownKind;
  }
}

/** What a formula gives, and every mistake in it; of unknown kind where a mistake keeps it from giving anything. */
export function checkFormula(
  formula: Formula,
  scope: Scope,
): { readonly kind: FormulaKind; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const kind = kindOf(formula.body, { formula, scope, row: null, problems, kindOf });
  return { kind, problems };
}
