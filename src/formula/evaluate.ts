import { evaluateCall } from './call.js';
import type { Evaluation } from './context.js';
import type { Environment } from './environment.js';
import { fieldKind } from './kind.js';
import { lookUp } from './lookup.js';
import { outerNames, type TableOf } from './outer-names.js';
import { conditionsOf } from './rows/evaluate-rows.js';
import type { RowsReading } from './rows/rows-reading.js';
import { selectedRows, tableIn } from './rows/select-rows.js';
import type { Formula, Node } from './tree.js';
import { arithmetic } from './value/arithmetic.js';
import type { Evaluated, FailedValue, NumberValue } from './value/evaluated.js';
import { givenNumber } from './value/number.js';
import { isCondition, truthFrom } from './value/truth.js';
import { valueArithmetic } from './value/value-arithmetic.js';
import { withInputs } from './with-inputs.js';

function keyValue(name: string, { book, group }: Environment): Evaluated {
  const kind = fieldKind(tableIn(book, group!.table).fields.get(name)!);
  const value = group!.keys.get(name) ?? null;
  if (kind.kind === 'text') return { kind: 'text', text: value === null ? null : String(value), accounts: [] };
  const number = typeof value === 'number' ? value : null;
  if (kind.kind === 'date') return { kind: 'date', day: number, accounts: [] };
  const unit = kind.kind === 'number' ? kind.unit : [];
  return givenNumber(number, unit, number === null ? `${name} is missing in this group` : null);
}

function rowsValue(reading: RowsReading, evaluation: Evaluation): Evaluated {
  const { formula, environment } = evaluation;
  const { table, account } = selectedRows(reading, formula, environment, conditionsOf(evaluation));
  return { kind: 'rows', table: table.name, counted: account };
}

function nameValue(node: Extract<Node, { kind: 'name' }>, evaluation: Evaluation): Evaluated {
  const { environment } = evaluation;
  const known = environment.known.get(node.name);
  if (known !== undefined) return known;
  if (environment.group?.keys.has(node.name)) return keyValue(node.name, environment);
  return rowsValue({ field: null, base: node, here: false, where: null }, evaluation);
}

function numberOf(value: Evaluated): NumberValue {
  if (value.kind !== 'number') throw new Error(`a number was not checked: ${value.kind}`);
  return value;
}

function valueIn(node: Node, evaluation: Evaluation): Evaluated {
  const { environment, single } = evaluation;
  if (isCondition(node)) return truthFrom(node, single, environment);
  switch (node.kind) {
    case 'number':
      return givenNumber(node.value);
    case 'text':
      return { kind: 'text', text: node.text, accounts: [] };
    case 'name':
      return nameValue(node, evaluation);
    case 'negative':
      return arithmetic('*', givenNumber(-1), numberOf(single(node.of)), environment);
    case 'arithmetic':
      return valueArithmetic(node, single(node.left), single(node.right), environment);
    case 'call':
      return evaluateCall(node, evaluation);
    case 'rows':
      return rowsValue(node, evaluation);
    case 'lookup':
      return lookUp(node, evaluation);
    case 'with':
      return withInputs(node, evaluation);
    default:
      throw new Error(`${node.kind} has no value`);
  }
}

/** What fails because a name that the formula uses has failed; null when all are well. */
function failureIn(formula: Formula, { known, book, group }: Environment): FailedValue | null {
  // Nearly always nothing has failed, and then the formula need not be walked.
  if (![...known.values()].some(({ kind }) => kind === 'problem')) return null;
  const tableOf: TableOf = (base) => {
    if (base === null) return group === null ? null : tableIn(book, group.table);
    const value = known.get(base);
    if (value === undefined) return book.tables.get(base) ?? null;
    if (value.kind === 'sheet') return value.table;
    return value.kind === 'rows' ? tableIn(book, value.table) : null;
  };
  const failed = outerNames(formula, tableOf, (name) => known.get(name)?.kind === 'sheet')
    .map((name) => known.get(name))
    .filter((value) => value?.kind === 'problem');
  return failed.length === 0 ? null : { kind: 'problem', problems: failed.flatMap(({ problems }) => problems) };
}

/**
 * The value of a formula that has been checked without problems; one that was not makes it throw. Where something that it
 * names has failed, it gives that one's problems. Intervals and draws are made only when asked for.
 */
export function evaluate(formula: Formula, environment: Environment): Evaluated {
  const failure = failureIn(formula, environment);
  if (failure !== null) return failure;
  const kept = new Map<Node, Evaluated>();
  const evaluation: Evaluation = {
    environment,
    formula,
    evaluate,
    single: (node) => {
      const found = kept.get(node);
      if (found !== undefined) return found;
      const value = valueIn(node, evaluation);
      kept.set(node, value);
      return value;
    },
  };
  return evaluation.single(formula.body);
}
