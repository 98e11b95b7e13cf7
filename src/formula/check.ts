import type { Problem } from '../problem/problem.js';
import { kindOfArithmetic, numberKind } from './check-arithmetic.js';
import { kindOfCall } from './check-call.js';
import { checkComparison } from './check-comparison.js';
import { kindOfLookup, sheetNamed } from './check-lookup.js';
import { kindOfName } from './check-name.js';
import { checkRows } from './check-rows.js';
import { kindOfWith } from './check-with.js';
import { type Checking, refuse } from './checking.js';
import { describeKind, type FormulaKind, truthKind, unknownKind } from './kind.js';
import type { Scope } from './scope.js';
import type { Formula, Node, RowsNode } from './tree.js';
import { holdsTemperature } from './unit/convert.js';
import { plain } from './unit/unit.js';

function kindOfNegative(of: Node, node: Node, checking: Checking): FormulaKind {
  const number = numberKind(of, checking.kindOf(of, checking), checking);
  if (number === null) return unknownKind;
  if (!holdsTemperature(number.unit)) return number;
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
  const outside = { ...checking, row: null };
  if (node.base !== null && sheetNamed(node.base.name, outside) !== null) {
    const remedy = 'Count the rows of the sheet, or sum one of its columns: sum(inspected of by_station).';
    return refuse(checking, node, { code: 'wrong-kind', wanted: 'records, not rows of a sheet', remedy });
  }
  const table = checkRows(node, node, outside);
  return table === null ? unknownKind : { kind: 'rows', table: table.name };
}

function kindOf(node: Node, checking: Checking): FormulaKind {
  const side = (part: Node) => ({ node: part, kind: checking.kindOf(part, checking) });
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
      const kind = checking.kindOf(node.of, checking);
      if (kind.kind !== 'rows' && kind.kind !== 'sheet' && kind.kind !== 'list') return truthKind;
      const remedy = 'Ask whether a count is 0, or whether a single value is missing.';
      const wanted = `a value, not ${describeKind(kind)}`;
      return refuse(checking, node.of, { code: 'wrong-kind', wanted, remedy });
    }
    case 'among': {
      const subject = side(node.of);
      for (const value of node.values.map(side)) {
        const asked = value.kind.kind === 'list' ? { ...value, kind: value.kind.of } : value;
        checkComparison(subject, asked, node.operatorAt, false, checking);
      }
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
    case 'lookup':
      return kindOfLookup(node, checking);
    case 'with':
      return kindOfWith(node, checking);
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
  let failed = false;
  // A condition is true or false whatever it asks about; a part of it that failed must not be forgotten for that.
  const watching: Checking['kindOf'] = (node, checking) => {
    const kind = kindOf(node, checking);
    if (kind.kind === 'unknown') failed = true;
    return kind;
  };
  const kind = watching(formula.body, { formula, scope, row: null, problems, kindOf: watching });
  return { kind: failed ? unknownKind : kind, problems };
}
