import { carriersOf, craftKind } from './carriers.js';
import { trimmedEnd, trimmedStart } from './cell.js';
import type { Fold, FoldList } from './crosswalk.js';
import type { Draft } from './draft.js';
import { saidInList } from './fold-list.js';
import { findingFields } from './impossible-part.js';
import { Interner } from './interner.js';
import type { Saying } from './remark.js';

/** What is said of a cell of a checklist that holds none of its marks. */
export const unknownMark: Saying = {
  code: 'unknown-code',
  reason: 'none of the known marks of the checklist',
  remedy: 'Mend the cell, or add the mark to the values under fold in the crosswalk.',
};

/** Reads the cells of a wide checklist into the draft of the rows they belong to. */
export class FoldCells {
  readonly #draft: Draft;
  readonly #fold: Fold;
  readonly #raw = new Interner();
  /** By column, then by the text's number: the value's place from 1; 0 for none known. Lists have each their own. */
  readonly #known: readonly number[][];
  readonly #places = new Map<string, number>();
  /** By the value's place: whether the part was looked at, and so must be there. */
  readonly #looked: readonly boolean[];
  /** By the value's place: whether it names a finding without calling the part fouled. */
  readonly #contradicts: readonly boolean[];
  readonly #carriers: readonly Uint8Array[];
  readonly #missing: ReadonlySet<string>;
  /** By column: the place of what a list says of a part that it does not name; 0 for a column that is no list. */
  readonly #unnamed: readonly number[];
  /** By column: the place of what is said of such a part that the craft cannot carry. */
  readonly #absent: readonly number[];
  /** By the value's place: whether it tells of something found. */
  readonly #found: readonly boolean[];
  /** The place of what any part is read as that the craft cannot carry and that is called clean; 0 where it is not read so. */
  readonly #readAsAbsent: number;

  constructor(draft: Draft, fold: Fold, missing: readonly string[]) {
    this.#draft = draft;
    this.#fold = fold;
    this.#missing = new Set(missing.map((text) => text.trim()));
    const values = [...fold.values];
    for (const [index, [text]] of values.entries()) this.#places.set(text, index + 1);
    const states = values.map(([, said]) => said.get('state'));
    this.#looked = [false, ...states.map((state) => state === 'clean' || state === 'fouled')];
    const found = values.map(([, said]) => said.has('finding') && said.get('state') !== 'fouled');
    this.#contradicts = [false, ...found];
    this.#carriers = fold.columns.map(({ component }) => carriersOf(component));
    const shared: number[] = [];
    this.#known = fold.columns.map(({ list }) => (list === null ? shared : []));
    this.#unnamed = fold.columns.map(({ list }) => (list === null ? 0 : this.#places.get(list.otherwise)!));
    this.#absent = fold.columns.map(({ list }) => (list === null ? 0 : this.#places.get(list.absent)!));
    const tells = (said: ReadonlyMap<string, string>) => findingFields.some((name) => said.has(name));
    this.#found = [false, ...values.map(([, said]) => said.get('state') === 'fouled' || tells(said))];
    this.#readAsAbsent = fold.absent === null ? 0 : this.#places.get(fold.absent)!;
  }

  /** Puts what the cell of that folded column says; false where it says nothing known. */
  read(column: number, bytes: Uint8Array, cellStart: number, cellEnd: number, row: number): boolean {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const raw = this.#raw.codeOf(bytes, start, trimmedEnd(bytes, start, cellEnd));
    const known = this.#known[column]!;
    let value = known[raw];
    if (value === undefined) {
      value = this.#placeOf(this.#raw.textOf(raw), this.#fold.columns[column]!.list);
      known[raw] = value;
    }
    this.#draft.folded[row * this.#fold.columns.length + column] = value;
    return value !== 0;
  }

  #placeOf(text: string, list: FoldList | null): number {
    const isMissing = this.#missing.has(text);
    if (list !== null) {
      const said = saidInList(list, isMissing ? '' : text);
      return said === null ? 0 : this.#places.get(said)!;
    }
    return this.#places.get(text) ?? (isMissing ? this.#places.get('') : undefined) ?? 0;
  }

  /** The folded columns in which the row names a finding on a part that it does not call fouled. */
  unfouledFindings(row: number): readonly number[] {
    if (!this.#contradicts.includes(true)) return [];
    const width = this.#fold.columns.length;
    const columns = Array.from({ length: width }, (_, column) => column);
    return columns.filter((column) => this.#contradicts[this.#draft.folded[row * width + column]!]);
  }

  /**
   * The folded columns in which the row says it looked at a part that its craft cannot have. One that a list does not name
   * becomes absent instead.
   */
  impossibleParts(row: number): readonly number[] {
    const type = this.#draft.columns.get('watercraft_type')?.values[row] ?? 0;
    const drive = this.#draft.columns.get('drive')?.values[row] ?? 0;
    const kind = craftKind(type, drive);
    const width = this.#fold.columns.length;
    const impossible: number[] = [];
    for (let column = 0; column < width; column++) {
      const value = this.#draft.folded[row * width + column]!;
      if (!this.#looked[value] || this.#carriers[column]![kind] === 1) continue;
      if (value === this.#unnamed[column]) this.#draft.folded[row * width + column] = this.#absent[column]!;
      else impossible.push(column);
    }
    return impossible;
  }

  /** Reads such a part as absent where the crosswalk says so and nothing was found on it; otherwise false. */
  takeAsAbsent(row: number, column: number): boolean {
    const cell = row * this.#fold.columns.length + column;
    if (this.#readAsAbsent === 0 || this.#found[this.#draft.folded[cell]!]) return false;
    this.#draft.folded[cell] = this.#readAsAbsent;
    return true;
  }
}
