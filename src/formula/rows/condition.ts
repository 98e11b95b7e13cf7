import { waitEnding } from '../../record/book.js';
import { dayOf } from '../day.js';
import { type Answer, and, answerOf, no, not, or, unknown, yes } from '../missing.js';
import { type AmongNode, type BetweenNode, type ComparisonNode, isWrittenNumber, type Node } from '../tree.js';
import { conversion, convertToCompare } from '../unit/convert.js';
import type { Unit } from '../unit/unit.js';
import { amongTexts, compareNumberRows, compareNumbers, numberTests, sameTexts } from './compare-rows.js';
import type { RowValues } from './row-values.js';

/** What gives the values of a part of the formula for each of the rows. */
export type ValuesOf = (node: Node) => RowValues;

const table = (rule: (one: number, other: number) => Answer) =>
  Uint8Array.from({ length: 9 }, (_, pair) => rule(Math.floor(pair / 3), pair % 3));
const bothAnswers = table(and);
const eitherAnswers = table(or);

/** The first one's array is used again. */
function joinAnswers(operator: 'and' | 'or', left: Uint8Array, right: Uint8Array): Uint8Array {
  const rule = operator === 'and' ? bothAnswers : eitherAnswers;
  for (let at = 0; at < left.length; at += 1) left[at] = rule[left[at]! * 3 + right[at]!]!;
  return left;
}

function negateAnswers(answers: Uint8Array): Uint8Array {
  for (let at = 0; at < answers.length; at += 1) answers[at] = not(answers[at]!);
  return answers;
}

function missingAnswers(values: RowValues, length: number): Uint8Array {
  if (values.kind === 'text') return Uint8Array.from(values.codes, (code) => (code === 0 ? yes : no));
  if (values.kind === 'wait')
    return Uint8Array.from(values.ending, (ending) => (ending === waitEnding.unknown ? yes : no));
  if (values.kind === 'truth') return Uint8Array.from(values.answers, (answer) => (answer === unknown ? yes : no));
  if (values.kind === 'constant') return new Uint8Array(length).fill(numberOrText(values) === null ? yes : no);
  return Uint8Array.from(values.values, (value) => (Number.isNaN(value) ? yes : no));
}

function numberOrText(values: RowValues): number | string | null {
  if (values.kind !== 'constant') throw new Error('a value for each row is not one value');
  const { value } = values;
  if (value.kind === 'number') return value.value;
  if (value.kind === 'text') return value.text;
  if (value.kind === 'date') return value.day;
  if (value.kind === 'truth') return value.truth === null ? null : Number(value.truth);
  throw new Error(`${value.kind} has no place in a condition`);
}

/** Numbers, dates or moments of a side in the unit of the other, NaN for missing; a date may be written as text. */
function numbersOf(values: RowValues, written: boolean, unit: Unit): Float64Array | number {
  if (values.kind === 'constant') {
    const found = numberOrText(values);
    const own = values.value.kind === 'number' ? values.value.unit : unit;
    const number = typeof found === 'string' ? dayOf(found) : found;
    if (number === null) return Number.NaN;
    return written || values.value.kind !== 'number' ? number : convertToCompare(number, conversion(own, unit)!);
  }
  if (values.kind === 'text' || values.kind === 'truth' || values.kind === 'wait') {
    throw new Error(`a ${values.kind} was compared as a number`);
  }
  const taken = conversion(values.unit, unit)!;
  if (taken.factor === 1 && taken.shift === 0) return values.values;
  return values.values.map((value) => convertToCompare(value, taken));
}

function unitOf(values: RowValues): Unit {
  if (values.kind === 'number') return values.unit;
  return values.kind === 'constant' && values.value.kind === 'number' ? values.value.unit : [];
}

function compare(
  operator: ComparisonNode['operator'],
  [leftNode, rightNode]: readonly [Node, Node],
  valuesOf: ValuesOf,
  length: number,
): Uint8Array {
  const [left, right] = [valuesOf(leftNode), valuesOf(rightNode)];
  const textual = left.kind === 'text' || right.kind === 'text';
  if (textual) {
    const same = sameAsText(left, right, length);
    return operator === 'is not' ? negateAnswers(same) : same;
  }
  if (left.kind === 'constant' && right.kind === 'constant') {
    const [one, other] = [numberOrText(left), numberOrText(right)];
    if (typeof one === 'string' && typeof other === 'string') {
      return new Uint8Array(length).fill((one === other) === (operator === 'is') ? yes : no);
    }
  }
  // A single value is taken to the unit of the rows, rather than they to its own.
  const byRight = isWrittenNumber(leftNode) || (left.kind === 'constant' && right.kind !== 'constant');
  const unit = byRight ? unitOf(right) : unitOf(left);
  const [one, other] = [
    numbersOf(left, isWrittenNumber(leftNode), unit),
    numbersOf(right, isWrittenNumber(rightNode), unit),
  ];
  if (typeof one === 'number' && typeof other === 'number') {
    return new Uint8Array(length).fill(compareNumbers(numberTests[operator], one, other));
  }
  return compareNumberRows(operator, one, other, length);
}

function sameAsText(left: RowValues, right: RowValues, length: number): Uint8Array {
  if (left.kind === 'text' && right.kind === 'text') return sameTexts(left, right);
  const [texts, single] = left.kind === 'text' ? [left, right] : [right, left];
  if (texts.kind !== 'text') throw new Error('a text was compared with something else');
  const wanted = numberOrText(single);
  if (wanted === null) return new Uint8Array(length).fill(unknown);
  return amongTexts(texts, new Set([String(wanted)]));
}

/** The values that an input holds where it is a list; another value is the only one. */
function itemsOf(values: RowValues): readonly RowValues[] {
  if (values.kind !== 'constant' || values.value.kind !== 'list') return [values];
  return values.value.items.map((value) => ({ kind: 'constant', value }));
}

function among(node: AmongNode, valuesOf: ValuesOf, length: number): Uint8Array {
  const subject = valuesOf(node.of);
  const listed = node.values.flatMap((part) => itemsOf(valuesOf(part)).map((values) => ({ part, values })));
  if (subject.kind === 'text' && listed.every(({ values }) => values.kind === 'constant')) {
    const texts = listed.map(({ values }) => numberOrText(values)).filter((value) => typeof value === 'string');
    const answers = amongTexts(subject, new Set(texts));
    // A text that is missing from the list could be any: what equals none of the others is not known to be outside it.
    return texts.length === listed.length ? answers : joinAnswers('or', answers, new Uint8Array(length).fill(unknown));
  }
  return listed
    .map(({ part, values }) => {
      return compare('is', [node.of, part], (asked) => (asked === part ? values : valuesOf(asked)), length);
    })
    .reduce((answers, other) => joinAnswers('or', answers, other));
}

function between(node: BetweenNode, valuesOf: ValuesOf, length: number): Uint8Array {
  const low = compare('>=', [node.of, node.low], valuesOf, length);
  return joinAnswers('and', low, compare('<=', [node.of, node.high], valuesOf, length));
}

/**
 * An answer a row for a condition, in an array of its own. The rows may be a table's, a single one for conditions
 * outside `where`, or one for each resample. A list and a pair of ends include themselves.
 */
export function answersOf(node: Node, valuesOf: ValuesOf, length: number): Uint8Array {
  switch (node.kind) {
    case 'logic': {
      const left = answersOf(node.left, valuesOf, length);
      return joinAnswers(node.operator, left, answersOf(node.right, valuesOf, length));
    }
    case 'not':
      return negateAnswers(answersOf(node.of, valuesOf, length));
    case 'missing': {
      const answers = missingAnswers(valuesOf(node.of), length);
      return node.negated ? negateAnswers(answers) : answers;
    }
    case 'comparison':
      return compare(node.operator, [node.left, node.right], valuesOf, length);
    case 'among': {
      const answers = among(node, valuesOf, length);
      return node.negated ? negateAnswers(answers) : answers;
    }
    case 'between': {
      const answers = between(node, valuesOf, length);
      return node.negated ? negateAnswers(answers) : answers;
    }
    default: {
      const values = valuesOf(node);
      if (values.kind === 'truth') return values.answers.slice();
      if (values.kind !== 'constant' || values.value.kind !== 'truth') throw new Error('a condition was not checked');
      return new Uint8Array(length).fill(answerOf(values.value.truth));
    }
  }
}
