import { followsFrom, type MixedTotal, mixedTotals } from '../../statistic/disclosure/follows-from.js';
import { type Containment, containments, type Groups } from './containments.js';
import { impliedSets } from './implied-sets.js';
import { type NarrowSet, narrowSets } from './narrow-sets.js';
import type { RecordSets } from './record-sets.js';
import type { ToldCell } from './told-cell.js';
import type { ToldCells } from './told-cells.js';
import { isFew } from './told-value.js';

/**
 * The keys of what a public page may not show: whatever tells of fewer craft than `fewest` (none at all may be told), and
 * whatever such a number could be worked out from. Numbers of records are sums over the records in them, whatever they
 * measure: what is withheld must be no combination of what is shown, must stay open over at least `fewest` by adding up what
 * is shown, and no column may leave withheld records that are few together or of one row alone.
 */
export function withheldCells(
  { cells, tables }: ToldCells,
  book: readonly Always[],
  fewest: number,
): ReadonlySet<string> {
  const withheld = new Set(cells.filter((cell) => cell.isFew).map(({ key }) => key));
  // Whoever hides a number in one table hides cells that tell of another table too.
  const hidings = tables.map((sets) => new Hiding(sets, cells, book, withheld, fewest));
  for (let before = -1; before !== withheld.size; ) {
    before = withheld.size;
    for (const hiding of hidings) hiding.hide();
  }
  return withheld;
}

/** Rows of a table of which everybody knows how many there are. */
export interface Always {
  readonly table: string;
  readonly rows: Uint32Array;
}

/** What is hidden of the sets of one table, and by which cells they are told. */
class Hiding {
  readonly #sets: RecordSets;
  readonly #withheld: Set<string>;
  readonly #fewest: number;
  readonly #toldBy: ReadonlyMap<number, readonly ToldCell[]>;
  readonly #groups: readonly Groups[];
  /** The sets that must not be worked out. */
  readonly #hidden: Set<number>;
  readonly #always: ReadonlySet<number>;
  readonly #columns: readonly Containment[];
  readonly #mixed: readonly MixedTotal[];

  constructor(
    sets: RecordSets,
    cells: readonly ToldCell[],
    always: readonly Always[],
    withheld: Set<string>,
    fewest: number,
  ) {
    this.#sets = sets;
    this.#withheld = withheld;
    this.#fewest = fewest;
    this.#always = new Set(always.flatMap(({ table, rows }) => (table === sets.table ? [sets.numberOf(rows)] : [])));
    this.#toldBy = cellsBySet(cells, sets);
    this.#groups = groupsOf(cells, sets);
    const few = [...this.#toldBy.keys()].filter((number) => isFew(sets.sizeOf(number), fewest));
    this.#hidden = new Set([...few, ...impliedSets(sets, this.#groups, fewest)]);
    const { of, count } = sets.parts();
    this.#columns = containments(sets, this.#groups);
    this.#mixed = mixedTotals(of, count);
  }

  /** Hides what tells, until nothing hidden can be told from what is shown. */
  hide(): void {
    const open = (): readonly number[] => [...this.#hidden].filter((number) => !this.#isShown(number));
    for (;;) {
      if (this.#hideLone()) continue;
      if (this.#hideFirsts(narrowSets(this.#sets, this.#columns, this.#isShown, open(), this.#fewest))) continue;
      if (!this.#hideFirsts(this.#whatFollows(open()))) return;
    }
  }

  readonly #isShown = (number: number): boolean =>
    this.#always.has(number) || this.#toldBy.get(number)?.some(({ key }) => !this.#withheld.has(key)) === true;

  /** The hidden numbers that are a combination of shown ones, and of which, the smallest first. */
  #whatFollows(hidden: readonly number[]): readonly NarrowSet[] {
    const shown = [...this.#mixed.keys()].filter(this.#isShown);
    const found = followsFrom(
      shown.map((number) => this.#mixed[number]!),
      hidden.map((number) => this.#mixed[number]!),
    );
    return found.flatMap((from, at): NarrowSet[] => {
      const used = (from ?? []).map((place) => shown[place]!).filter((number) => this.#sets.sizeOf(number) > 0);
      return from === null ? [] : [{ hidden: hidden[at]!, by: this.#bySize(used) }];
    });
  }

  /** Hides the first set of each, but where one was just hidden that may do for both; whether any was. */
  #hideFirsts(narrow: readonly NarrowSet[]): boolean {
    let isAny = false;
    for (const { hidden, by } of narrow) {
      if (by.every(this.#isShown)) isAny = this.#hideFirst(hidden, by) || isAny;
    }
    return isAny;
  }

  /** Where the records hidden in a column are few together, or only one row's are, the smallest row shown goes with them. */
  #hideLone(): boolean {
    return this.#groups.some((group) => {
      if (group.length === 1) return false;
      const hidden = group.filter((number) => !this.#isShown(number));
      const records = hidden.reduce((sum, number) => sum + this.#sets.sizeOf(number), 0);
      if (hidden.length === 0 || (hidden.length > 1 && !isFew(records, this.#fewest))) return false;
      return this.#hideFirst(hidden[0]!, this.#bySize(group.filter(this.#isShown)));
    });
  }

  /** Hides the first of some sets that may be, those of the hidden one's own sheets before others. */
  #hideFirst(hidden: number, by: readonly number[]): boolean {
    const may = by.filter((number) => this.#isShown(number) && !this.#always.has(number));
    const beside = new Set((this.#toldBy.get(hidden) ?? []).map(({ sheet }) => sheet));
    const near = may.find((number) => this.#toldBy.get(number)!.some(({ sheet }) => sheet !== '' && beside.has(sheet)));
    const chosen = near ?? may[0];
    if (chosen === undefined) return false;
    this.#hidden.add(chosen);
    for (const { key } of this.#toldBy.get(chosen)!) this.#withheld.add(key);
    return true;
  }

  #bySize(numbers: readonly number[]): readonly number[] {
    return [...numbers].sort((one, other) => this.#sets.sizeOf(one) - this.#sets.sizeOf(other));
  }
}

/** The sets that the cells of one column tell of, each row its own; only where no two of them overlap. */
function groupsOf(cells: readonly ToldCell[], sets: RecordSets): readonly Groups[] {
  const groups = new Map<string, Set<number>>();
  for (const { sheet, column, told } of cells) {
    if (sheet === '') continue;
    told.forEach((one, place) => {
      if (one.sets !== sets || sets.sizeOf(one.number) === 0) return;
      const key = JSON.stringify([sheet, column, place]);
      groups.set(key, (groups.get(key) ?? new Set<number>()).add(one.number));
    });
  }
  const { of, count } = sets.parts();
  const doNotOverlap = (numbers: readonly number[]): boolean => {
    const taken = new Uint8Array(count);
    return numbers.every((number) => of[number]!.every((part) => ++taken[part]! === 1));
  };
  const distinct = new Map([...groups.values()].map((numbers) => [[...numbers].sort().join(' '), [...numbers]]));
  const columns = [...distinct.values()].filter(doNotOverlap);
  const inColumns = new Set(columns.flat());
  // A number by itself lies between those of the sets within it and around it.
  const alone = of.flatMap((_, number) => (inColumns.has(number) || sets.sizeOf(number) === 0 ? [] : [[number]]));
  return [...columns, ...alone];
}

function cellsBySet(cells: readonly ToldCell[], sets: RecordSets): ReadonlyMap<number, readonly ToldCell[]> {
  const toldBy = new Map<number, ToldCell[]>();
  for (const cell of cells) {
    for (const told of new Set(cell.told.map((one) => (one.sets === sets ? one.number : null)))) {
      if (told !== null) toldBy.set(told, [...(toldBy.get(told) ?? []), cell]);
    }
  }
  return toldBy;
}
