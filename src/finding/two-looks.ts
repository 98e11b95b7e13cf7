import type { Book, BookTable } from '../record/book.js';
import { bookText } from './row-tests.js';

/** What a first look and a blind second one found on the same part, where both looked at it. */
export interface TwoLooks {
  /** The row of the second look. */
  readonly row: number;
  readonly inspection: number;
  readonly first: boolean;
  readonly second: boolean;
}

/** Second looks paired with the first ones, and those that could not be. */
export interface PairedLooks {
  readonly pairs: readonly TwoLooks[];
  /** Second looks at parts that the first did not look at, or of which no first look is recorded. */
  readonly unpaired: number;
  /** Second looks that did not look at the part themselves, or left open what they found. */
  readonly open: number;
}

const answerOf = (text: string): boolean | null => (text === 'yes' ? true : text === 'no' ? false : null);

/** The codes of a field of one table as another table's dictionary numbers them; 0 where it lacks the text. */
function translated(from: BookTable, to: BookTable, field: string): { codes: ArrayLike<number>; size: number } {
  const own = bookText(from, field);
  const numberOf = new Map(bookText(to, field).dictionary.map((text, code) => [text, code]));
  const map = own.dictionary.map((text) => numberOf.get(text) ?? 0);
  return { codes: Uint32Array.from(own.codes, (code) => map[code]!), size: numberOf.size };
}

/** Which first look each second one repeats: the same inspection, part and side. */
function firstLooks(checks: BookTable, rechecks: BookTable, rows: Uint32Array): (row: number) => number | null {
  const [inspection, component, side] = ['inspection', 'component', 'side'].map((field) =>
    translated(checks, rechecks, field),
  );
  const keyOf = (codes: readonly ArrayLike<number>[], row: number): number =>
    (codes[0]![row]! * component!.size + codes[1]![row]!) * side!.size + codes[2]![row]!;
  const second = ['inspection', 'component', 'side'].map((field) => bookText(rechecks, field).codes);
  const wanted = new Set(Array.from(rows, (row) => keyOf(second, row)));
  const found = new Map<number, number>();
  const first = [inspection!.codes, component!.codes, side!.codes];
  for (let row = 0; row < checks.rowCount; row++) {
    if (first[0]![row] === 0) continue;
    const key = keyOf(first, row);
    if (wanted.has(key)) found.set(key, row);
  }
  return (row) => found.get(keyOf(second, row)) ?? null;
}

/** Second looks among some rows of rechecks, each beside the first look at the same part and side. */
export function pairLooks(book: Book, rechecks: BookTable, rows: Uint32Array): PairedLooks {
  const checks = book.tables.get('checks')!;
  const firstOf = firstLooks(checks, rechecks, rows);
  const [settledFirst, settledSecond] = [bookText(checks, 'settled'), bookText(rechecks, 'settled')];
  const inspections = bookText(rechecks, 'inspection').codes;
  const pairs: TwoLooks[] = [];
  let unpaired = 0;
  let open = 0;
  for (const row of rows) {
    const second = answerOf(settledSecond.dictionary[settledSecond.codes[row]!]!);
    if (second === null) {
      open++;
      continue;
    }
    const at = firstOf(row);
    const first = at === null ? null : answerOf(settledFirst.dictionary[settledFirst.codes[at]!]!);
    if (first === null) unpaired++;
    else pairs.push({ row, inspection: inspections[row]!, first, second });
  }
  return { pairs, unpaired, open };
}
