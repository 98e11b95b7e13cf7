import type { Book, BookTable } from '../record/book.js';
import { bookText } from './row-tests.js';

/** What a first look and a blind second one found on the same part, where both looked at it. */
export interface TwoLooks {
  /** The row of the second look, and that of the first among the checks. */
  readonly row: number;
  readonly firstRow: number;
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

/** A field of one table with, for each of its codes, the code that another table's dictionary has; 0 where it lacks the text. */
interface Translated {
  readonly codes: ArrayLike<number>;
  readonly as: Uint32Array;
  readonly size: number;
}

function translated(from: BookTable, to: BookTable, field: string): Translated {
  const own = bookText(from, field);
  const other = bookText(to, field).dictionary;
  return { codes: own.codes, as: codesIn(own.dictionary, other), size: other.length };
}

type Dictionary = readonly string[];

/** Dictionaries translated, the one from and the other into: tables that are narrowed keep theirs. */
const inOther = new WeakMap<Dictionary, WeakMap<Dictionary, Uint32Array>>();

function codesIn(own: Dictionary, other: Dictionary): Uint32Array {
  const ofOwn = inOther.get(own) ?? new WeakMap<Dictionary, Uint32Array>();
  inOther.set(own, ofOwn);
  const known = ofOwn.get(other);
  if (known !== undefined) return known;
  const numberOf = new Map(other.map((text, code) => [text, code]));
  const codes = Uint32Array.from(own, (text) => numberOf.get(text) ?? 0);
  ofOwn.set(other, codes);
  return codes;
}

/** What row of checks each row of rechecks repeats, one more than its number; 0 for none. Found once for the two tables. */
const repeated = new WeakMap<BookTable, { readonly checks: BookTable; readonly firstOf: Uint32Array }>();

/** Which first look each second one repeats: the same inspection, part and side. */
function firstLooks(checks: BookTable, rechecks: BookTable): (row: number) => number | null {
  const known = repeated.get(rechecks);
  const firstOf = known?.checks === checks ? known.firstOf : findFirstLooks(checks, rechecks);
  repeated.set(rechecks, { checks, firstOf });
  return (row) => (firstOf[row] === 0 ? null : firstOf[row]! - 1);
}

function findFirstLooks(checks: BookTable, rechecks: BookTable): Uint32Array {
  const inspection = translated(checks, rechecks, 'inspection');
  const component = translated(checks, rechecks, 'component');
  const side = translated(checks, rechecks, 'side');
  const keyOf = (craft: number, part: number, onSide: number): number =>
    (craft * component.size + part) * side.size + onSide;
  const [craftOf, partOf, sideOf] = ['inspection', 'component', 'side'].map((field) => bookText(rechecks, field).codes);
  const second = (row: number): number => keyOf(craftOf![row]!, partOf![row]!, sideOf![row]!);
  const wanted = new Set<number>();
  for (let row = 0; row < rechecks.rowCount; row++) wanted.add(second(row));
  const found = new Map<number, number>();
  for (let row = 0; row < checks.rowCount; row++) {
    const craft = inspection.as[inspection.codes[row]!]!;
    if (craft === 0) continue;
    const key = keyOf(craft, component.as[component.codes[row]!]!, side.as[side.codes[row]!]!);
    if (wanted.has(key)) found.set(key, row + 1);
  }
  return Uint32Array.from({ length: rechecks.rowCount }, (_, row) => found.get(second(row)) ?? 0);
}

/** What was paired for some rows: a page asks of the same ones for all of them and by groups. */
const paired = new WeakMap<Uint32Array, { readonly book: Book; readonly looks: PairedLooks }>();

/** Second looks among some rows of rechecks, each beside the first look at the same part and side. */
export function pairLooks(book: Book, rechecks: BookTable, rows: Uint32Array): PairedLooks {
  const known = paired.get(rows);
  if (known?.book === book) return known.looks;
  const looks = pairsAmong(book, rechecks, rows);
  paired.set(rows, { book, looks });
  return looks;
}

function pairsAmong(book: Book, rechecks: BookTable, rows: Uint32Array): PairedLooks {
  const checks = book.tables.get('checks')!;
  const firstOf = firstLooks(checks, rechecks);
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
    if (at === null || first === null) unpaired++;
    else pairs.push({ row, firstRow: at, inspection: inspections[row]!, first, second });
  }
  return { pairs, unpaired, open };
}
