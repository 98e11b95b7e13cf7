import type { Answer } from '../missing.js';
import { answerOf, unknown, yes } from '../missing.js';
import type { RowTexts } from './row-values.js';

/** A comparison of two numbers that are both there. */
export type NumberTest = (one: number, other: number) => boolean;

/** The comparison that each operator stands for. */
export const numberTests: Readonly<Record<'is' | 'is not' | '<' | '<=' | '>' | '>=', NumberTest>> = {
  is: (one, other) => one === other,
  'is not': (one, other) => one !== other,
  '<': (one, other) => one < other,
  '<=': (one, other) => one <= other,
  '>': (one, other) => one > other,
  '>=': (one, other) => one >= other,
};

/** One answer for two numbers, NaN for missing. */
export function compareNumbers(test: NumberTest, one: number, other: number): Answer {
  return Number.isNaN(one) || Number.isNaN(other) ? unknown : answerOf(test(one, other));
}

/** An answer a row for numbers that may be the same in every row; NaN is missing. */
export function compareNumberRows(
  operator: keyof typeof numberTests,
  left: Float64Array | number,
  right: Float64Array | number,
  length: number,
): Uint8Array {
  const [less, same, more] = ordered(operator);
  const answers = new Uint8Array(length);
  for (let at = 0; at < length; at += 1) {
    const one = typeof left === 'number' ? left : left[at]!;
    const other = typeof right === 'number' ? right : right[at]!;
    // What is missing is neither less, nor more, nor the same.
    answers[at] = one < other ? less : one > other ? more : one === other ? same : unknown;
  }
  return answers;
}

/** What a comparison answers where the one number is less than, the same as, and more than the other. */
function ordered(operator: keyof typeof numberTests): readonly [less: Answer, same: Answer, more: Answer] {
  const test = numberTests[operator];
  return [answerOf(test(0, 1)), answerOf(test(0, 0)), answerOf(test(1, 0))];
}

/** An answer a row: whether its text is one of some texts. Each text of the dictionary is compared once. */
export function amongTexts({ codes, dictionary }: RowTexts, wanted: ReadonlySet<string>): Uint8Array {
  const ofCode = Uint8Array.from(dictionary, (text, code) => (code === 0 ? unknown : answerOf(wanted.has(text))));
  const answers = new Uint8Array(codes.length);
  for (let at = 0; at < codes.length; at += 1) answers[at] = ofCode[codes[at]!]!;
  return answers;
}

/** An answer a row: whether two texts are the same. */
export function sameTexts(left: RowTexts, right: RowTexts): Uint8Array {
  const codeOf = new Map(left.dictionary.map((text, code) => [text, code]));
  const asLeft = Int32Array.from(right.dictionary, (text, code) => (code === 0 ? 0 : (codeOf.get(text) ?? -1)));
  const answers = new Uint8Array(left.codes.length);
  for (let at = 0; at < answers.length; at += 1) {
    const one = left.codes[at]!;
    const other = asLeft[right.codes[at]!]!;
    answers[at] = one === 0 || other === 0 ? unknown : one === other ? yes : 0;
  }
  return answers;
}
