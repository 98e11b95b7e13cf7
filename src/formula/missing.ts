/** The rule for missing values, in one place and sentence by sentence: the evaluation keeps it and the reference page tells it. */
export const missingRules: readonly string[] = [
  'A comparison with a missing value is neither true nor false but unknown. `is missing` and `is not missing` always know.',
  '`not`, `and` and `or` follow three-valued logic: unknown unless the other side settles it (Kleene 1952).',
  'A row is selected only when its condition is true. The rows left out as unknown are counted in the account.',
  'sum, mean, median, quantile, lowest, highest, earliest, latest, listed and distinct skip rows without the field, and count them in the account. Over a sheet’s column they skip rows without a value, and say how many.',
  'Arithmetic with a missing operand is missing, and a division by zero is missing; both say why.',
  'A function of texts, dates or numbers is missing where one of its arguments is; only `if` and `first_known` choose among them.',
  'A lookup is missing where the sheet has no row for the key, and says so. The missing group is found by a missing key.',
  'A sum over no rows is 0, because nothing was there to add; over rows of which none has the field it is missing. A mean, median, lowest or highest of no rows is missing.',
];

/** The answer that it is not so. */
export const no = 0;
/** The answer that it is so. */
export const yes = 1;
/** The answer that nobody knows, because a value is missing. */
export const unknown = 2;

/** One answer of a condition: `no`, `yes` or `unknown`. */
export type Answer = 0 | 1 | 2;

/** A truth as an answer; null is unknown. */
export function answerOf(truth: boolean | null): Answer {
  return truth === null ? unknown : truth ? yes : no;
}

/** An answer as a truth; unknown is null. */
export function truthOf(answer: number): boolean | null {
  return answer === unknown ? null : answer === yes;
}

/** The answer turned round; unknown stays unknown. */
export function not(answer: number): Answer {
  return answer === unknown ? unknown : answer === yes ? no : yes;
}

/** Whether both are so. */
export function and(one: number, other: number): Answer {
  if (one === no || other === no) return no;
  return one === unknown || other === unknown ? unknown : yes;
}

/** Whether at least one is so. */
export function or(one: number, other: number): Answer {
  if (one === yes || other === yes) return yes;
  return one === unknown || other === unknown ? unknown : no;
}
