import type { RootContent } from 'mdast';
import type { LocaleName } from '../record/written-numbers.js';
import type { ChartRequest } from './evaluated.js';

/** Text taken from the document, with where it begins: line and column count from 1. */
export interface Cell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

/** A row of an inputs table as written. */
export interface InputRow {
  readonly name: Cell;
  readonly value: Cell;
  readonly unit: Cell;
  readonly source: Cell;
  /** The lowest and highest plausible value; empty where nothing is said. */
  readonly low: Cell;
  readonly high: Cell;
}

/** A row of a selections table as written. */
export interface SelectionRow {
  readonly name: Cell;
  readonly rows: Cell;
}

/** A row of a figures table, or of the columns of a sheet, as written. */
export interface FormulaRow {
  readonly name: Cell;
  readonly formula: Cell;
  readonly shownAs: Cell;
}

/** In which order a sheet's rows stand, and how many of them. */
export interface SheetOrder {
  readonly column: Cell;
  readonly from: 'highest' | 'lowest';
  readonly most: number | null;
}

/** Something a finding is told in a sheet's sentence: the option, and a number, a name or a text in quotes. */
export interface ToldOption {
  readonly name: Cell;
  readonly value: Cell;
}

/** What fills a sheet: every group of some rows, or a finding asked of them. */
export type SheetMaker =
  | {
      readonly kind: 'each';
      readonly fields: readonly Cell[];
      readonly rows: Cell;
    }
  | {
      readonly kind: 'finding';
      readonly finding: Cell;
      readonly rows: Cell;
      readonly by: readonly Cell[];
      readonly options: readonly ToldOption[];
    };

/** A sheet as written: its sentence taken apart, and its columns (none for a finding). */
export interface SheetDeclaration {
  readonly name: Cell;
  /** What stands above its table for readers; empty where the sentence gives none. */
  readonly title: string;
  readonly sentence: string;
  readonly maker: SheetMaker;
  readonly order: SheetOrder | null;
  readonly columns: readonly FormulaRow[];
}

/** A place in prose where a value is to stand: `{name}`. */
export interface ProseValue {
  readonly name: Cell;
}

/** How a notebook wants to be computed: set at its head between two lines of three hyphens. */
export interface Settings {
  /** Whom the page is for, as a phrase. */
  readonly for: string;
  /** The seed of the resampling. */
  readonly seed: number;
  /** How many resamples. */
  readonly resamples: number;
  /**
   * The fields of records by which a reader of the page may narrow what it counts; with none named, inputs alone may be
   * changed. Null where the page stays as it was made.
   */
  readonly filters: readonly string[] | null;
  /** A page of any length, which it is where nothing is said, or a brief: one sheet of paper or one wide screen, up to the first thematic break. */
  readonly layout?: 'page' | 'brief';
  /** How its page writes numbers and money; `en-US` where nothing is said. */
  readonly locale?: LocaleName;
  /** Whether the page is for the public, so that small numbers of records are withheld. */
  readonly public: boolean;
  /** On a page for the public, numbers of fewer records than this are withheld; none at all is told. */
  readonly withhold_under: number;
}

/** One part of the document, in its order. */
export type Part =
  | { readonly kind: 'prose'; readonly node: RootContent }
  | { readonly kind: 'inputs'; readonly rows: readonly InputRow[] }
  | { readonly kind: 'selections'; readonly rows: readonly SelectionRow[] }
  | { readonly kind: 'figures'; readonly rows: readonly FormulaRow[] }
  | { readonly kind: 'sheet'; readonly sheet: SheetDeclaration }
  | { readonly kind: 'chart'; readonly chart: ChartRequest };

/** A notebook as written. */
export interface NotebookDocument {
  readonly file: string;
  readonly title: string;
  readonly settings: Settings;
  readonly parts: readonly Part[];
  readonly proseValues: readonly ProseValue[];
}
