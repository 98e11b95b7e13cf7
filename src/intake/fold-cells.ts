import { carriersOf, craftKind } from './carriers.js';
import { trimmedEnd, trimmedStart } from './cell.js';
import type { Fold } from './crosswalk.js';
import type { Draft } from './draft.js';
import { Interner } from './interner.js';
import type { Saying } from './remark.js';
import { sayingOf } from './rules/saying-of.js';

/** What is said of a part that a craft of this kind does not have. */
export const impossiblePart: Saying = sayingOf('impossible-part');

/** Reads the cells of a wide checklist into the draft of the rows they belong to. */
export class FoldCells {
  readonly #draft: Draft;
  readonly #fold: Fold;
  readonly #raw = new Interner();
  /** By the text's number: the value's place from 1; 0 for a text that is none of them. */
  readonly #valueOf: number[] = [0];
  readonly #places = new Map<string, number>();
  /** By the value's place: whether the part was looked at, and so must be there. */
  readonly #looked: readonly boolean[];
  /** By the value's place: whether it names a finding without calling the part fouled. */
  readonly #contradicts: readonly boolean[];
  readonly #carriers: readonly Uint8Array[];
  readonly #missing: ReadonlySet<string>;

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
  }

  /** Puts what the cell of that folded column says; false where it says nothing known. */
  read(column: number, bytes: Uint8Array, cellStart: number, cellEnd: number, row: number): boolean {
    const start = trimmedStart(bytes, cellStart, cellEnd);
    const raw = this.#raw.codeOf(bytes, start, trimmedEnd(bytes, start, cellEnd));
    if (raw === this.#valueOf.length) {
      const text = this.#raw.textOf(raw);
      const empty = this.#missing.has(text) ? this.#places.get('') : undefined;
      this.#valueOf.push(this.#places.get(text) ?? empty ?? 0);
    }
    const value = this.#valueOf[raw]!;
    this.#draft.folded[row * this.#fold.columns.length + column] = value;
    return value !== 0;
  }

  /** The folded columns in which the row names a finding on a part that it does not call fouled. */
  unfouledFindings(row: number): readonly number[] {
    if (!this.#contradicts.includes(true)) return [];
    const width = this.#fold.columns.length;
    const columns = Array.from({ length: width }, (_, column) => column);
    return columns.filter((column) => this.#contradicts[this.#draft.folded[row * width + column]!]);
  }

  /** The folded columns in which the row says it looked at a part that its craft cannot have. */
  impossibleParts(row: number): readonly number[] {
    const type = this.#draft.columns.get('watercraft_type')?.values[row] ?? 0;
    const drive = this.#draft.columns.get('drive')?.values[row] ?? 0;
    const kind = craftKind(type, drive);
    const width = this.#fold.columns.length;
    const impossible: number[] = [];
    for (let column = 0; column < width; column++) {
      const value = this.#draft.folded[row * width + column]!;
      if (this.#looked[value] && this.#carriers[column]![kind] === 0) impossible.push(column);
    }
    return impossible;
  }
}
