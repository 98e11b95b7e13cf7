import type { ParentTable } from '../../record/book.js';
import type { Evaluation } from '../context.js';
import type { EachFunction, PlainFunction } from '../functions/declaration.js';
import { functionNamed } from '../functions/functions.js';
import type { FormulaKind } from '../kind.js';
import { no, yes } from '../missing.js';
import { isWrittenNumber, type Node } from '../tree.js';
import { conversion, convert } from '../unit/convert.js';
import type { Unit } from '../unit/unit.js';
import { planArithmetic } from '../value/arithmetic.js';
import type { EachNumber } from '../value/lift.js';
import { answersOf } from './condition.js';
import { decidedBy } from './decided-by.js';
import { drawnBy } from './drawn-by.js';
import { type HeldRows, heldOfParents, heldRows } from './held-rows.js';
import { answersOfParents, parentToAsk } from './parent-answers.js';
import { plainRows } from './plain-rows.js';
import { fieldValues, type RowNumbers, type RowsAsked, type RowValues } from './row-values.js';
import { type Conditions, everyRow } from './select-rows.js';
import { timeRows } from './time-rows.js';

function finite(value: number): number {
  return Number.isFinite(value) ? value : Number.NaN;
}

function valueAt(values: Float64Array | number, at: number): number {
  return typeof values === 'number' ? values : values[at]!;
}

/** Numbers a row, or one for all of them; NaN for missing; with their unit. */
function numbers(values: RowValues): { readonly values: Float64Array | number; readonly unit: Unit } {
  if (values.kind === 'number') return values;
  if (values.kind === 'truth') {
    const asNumbers = Float64Array.from(values.answers, (answer) =>
      answer === yes ? 1 : answer === no ? 0 : Number.NaN,
    );
    return { values: asNumbers, unit: [] };
  }
  if (values.kind !== 'constant') throw new Error('a number was not checked');
  const { value } = values;
  if (value.kind === 'number') return { values: value.value ?? Number.NaN, unit: value.unit };
  if (value.kind === 'truth') return { values: value.truth === null ? Number.NaN : Number(value.truth), unit: [] };
  throw new Error('a number was not checked');
}

function each(rule: EachNumber, operands: readonly (Float64Array | number)[], unit: Unit, length: number): RowNumbers {
  const [first, second, third] = [0, 1, 2].map((place) => operands[place] ?? Number.NaN);
  const values = new Float64Array(length);
  for (let at = 0; at < length; at += 1) {
    values[at] = finite(rule(valueAt(first!, at), valueAt(second!, at), valueAt(third!, at)));
  }
  return { kind: 'number', values, unit };
}

function callEach(declaration: EachFunction, nodes: readonly Node[], given: readonly RowValues[], length: number) {
  const taken = given.map(numbers);
  const lead = declaration.arguments[0]!.takes === 'truth' ? 1 : 0;
  const unit = taken[lead]!.unit;
  const operands = taken.map(({ values, unit: own }, place) => {
    if (place < lead || isWrittenNumber(nodes[place]!)) return values;
    const step = conversion(own, unit)!;
    if (step.factor === 1 && step.shift === 0) return values;
    return typeof values === 'number' ? convert(values, step) : values.map((value) => convert(value, step));
  });
  if (!declaration.more) return each(declaration.each, operands, unit, length);
  return operands.slice(1).reduce<RowNumbers>(
    (so, operand) => each(declaration.each, [so.values, operand], unit, length),
    each((value) => value, [operands[0]!], unit, length),
  );
}

/** The kind of a text, date or truth that a function gives for each row; null where it works on numbers. */
function plainKindOf(
  declaration: EachFunction | PlainFunction,
  given: readonly RowValues[],
): FormulaKind['kind'] | null {
  if (declaration.works === 'on values') return declaration.result.kind;
  const chosen = given.at(-1)!;
  const { kind } = chosen.kind === 'constant' ? chosen.value : chosen;
  return kind === 'text' || kind === 'date' ? kind : null;
}

/** What a part of a formula gives for each of some rows, or the constant it is for all of them. */
export function rowValuesOf(node: Node, asked: RowsAsked, evaluation: Evaluation): RowValues {
  const { table, rows } = asked;
  const valuesOf = (part: Node) => rowValuesOf(part, asked, evaluation);
  const single = (): RowValues => ({ kind: 'constant', value: evaluation.single(node) });
  switch (node.kind) {
    case 'number':
    case 'text':
    case 'lookup':
    case 'with':
      return single();
    case 'name':
      return table.fields.has(node.name) ? fieldValues(table, node.name, rows) : single();
    case 'negative': {
      const of = valuesOf(node.of);
      if (of.kind === 'constant') return single();
      const { values, unit } = numbers(of);
      return each((value) => -value, [values], unit, rows.length);
    }
    case 'arithmetic': {
      const [left, right] = [valuesOf(node.left), valuesOf(node.right)];
      if (left.kind === 'constant' && right.kind === 'constant') return single();
      const moved = timeRows(node, left, right, rows.length);
      if (moved !== null) return moved;
      const [one, other] = [numbers(left), numbers(right)];
      const plan = planArithmetic(node.operator, one.unit, other.unit);
      return each(plan.each, [one.values, other.values], plan.unit, rows.length);
    }
    case 'call': {
      const declaration = functionNamed(node.name);
      if (declaration === null || declaration.works === 'on the whole') return single();
      const given = node.arguments.map(valuesOf);
      if (given.every((values) => values.kind === 'constant')) return single();
      const kind = plainKindOf(declaration, given);
      return kind === null
        ? callEach(declaration as EachFunction, node.arguments, given, rows.length)
        : plainRows(declaration, kind, given, rows.length);
    }
    case 'rows':
    case 'broken':
      throw new Error('rows have no value for each row');
    default:
      return { kind: 'truth', answers: answersOf(node, valuesOf, rows.length) };
  }
}

function answersFor(condition: Node, asked: RowsAsked, evaluation: Evaluation): Uint8Array {
  const parent = parentToAsk(condition, asked);
  if (parent !== null) return answersOfParents(parentAnswers(condition, parent, evaluation), parent, asked.rows);
  return answersOf(condition, (part) => rowValuesOf(part, asked, evaluation), asked.rows.length);
}

function parentAnswers(condition: Node, { table }: ParentTable, evaluation: Evaluation): Uint8Array {
  return answersFor(condition, { table, rows: everyRow(table, evaluation.environment) }, evaluation);
}

function heldBy(condition: Node, asked: RowsAsked, evaluation: Evaluation): HeldRows {
  const parent = asked.rows.length === asked.table.rowCount ? parentToAsk(condition, asked) : null;
  const held = parent === null ? null : heldOfParents(parent, parentAnswers(condition, parent, evaluation));
  return held ?? heldRows(asked.rows, answersFor(condition, asked, evaluation));
}

/** What is known of a formula's conditions for rows. */
export function conditionsOf(evaluation: Evaluation): Conditions {
  return {
    answersFor: (condition, table, rows) => answersFor(condition, { table, rows }, evaluation),
    heldBy: (condition, table, rows) => heldBy(condition, { table, rows }, evaluation),
    decidedBy: (condition, table) => decidedBy(condition, table, evaluation),
    drawnBy: (condition, table, rows) =>
      drawnBy(
        condition,
        rows,
        (some) => (part) => rowValuesOf(part, { table, rows: some }, evaluation),
        (part) => decidedBy(part, table, evaluation).length > 0,
      ),
  };
}
