import type { RootContent } from 'mdast';
import type { Result } from '../formula/result.js';
import type { Problem } from '../problem/problem.js';
import type { LocaleName } from '../record/written-numbers.js';

/** A value that a person decides or assumes. */
export interface EvaluatedInput {
  readonly name: string;
  readonly value: Result;
  readonly unit: string;
  readonly source: string;
  /** The plausible range as written, `20 to 30`; nothing where absent. */
  readonly range?: string;
  readonly line: number;
}

/** Named rows of a table, such as the full inspections of a season. */
export interface EvaluatedSelection {
  readonly name: string;
  readonly formula: string;
  readonly table: string;
  /** How many there are; null where a public page may not tell. */
  readonly rows: number | null;
  readonly problems: readonly Problem[];
  readonly line: number;
}

/** One value by formula. */
export interface EvaluatedFigure {
  readonly name: string;
  readonly formula: string;
  /** A format by name: `whole`, `percent`, `per 1,000`, `dollars`. */
  readonly shownAs: string;
  readonly result: Result;
  readonly line: number;
}

/** A column of a sheet: a group's field (`key`) or a formula's or finding's column (`value`). */
export interface SheetColumn {
  readonly name: string;
  readonly label: string;
  readonly role: 'key' | 'value';
  /** Empty for keys and findings. */
  readonly formula: string;
  readonly shownAs: string;
  readonly meaning: string;
}

/** A row of a sheet; a cell a column, in the columns' order. Keys are text, number or date results. */
export interface SheetRow {
  readonly cells: readonly Result[];
}

/** A table filled once for every group, or by a finding. */
export interface EvaluatedSheet {
  readonly name: string;
  /** What stands above its table for readers; absent where its sentence gives none. */
  readonly title?: string;
  /** The sentence that declares it, as written. */
  readonly sentence: string;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
  /** Whether a page for the public may show nothing of it, so that it has no rows; no where absent. */
  readonly withheld?: true;
  /** Whether nothing of it could be computed, since it or what it stands on has a problem; no where absent. */
  readonly failed?: true;
  /** The columns that could not be computed for that reason, and do not stand among the others; none where absent. */
  readonly failedColumns?: readonly string[];
  /** Where the conclusion of a sheet of sensitivity turns, in the figure's own unit; absent on any other sheet. */
  readonly turnsAt?: number;
  /** What was left out, and the method, as sentences; empty where there is nothing to say. */
  readonly notes: readonly string[];
  readonly problems: readonly Problem[];
  readonly line: number;
}

/** A chart asked for by an image whose address names its kind and sheet. */
export interface ChartRequest {
  /** Unique on the page, made from its kind, sheet and value. */
  readonly name: string;
  readonly kind: string;
  readonly caption: string;
  readonly sheet: string;
  /** Further words of the address, such as `value=interception`. */
  readonly options: Readonly<Record<string, string>>;
  readonly line: number;
  readonly column: number;
}

/** One part of the document, in its order. Prose is an mdast node in which `{name}` still stands as written; the report puts the value there. */
export type Block =
  | { readonly kind: 'prose'; readonly node: RootContent }
  | { readonly kind: 'inputs'; readonly names: readonly string[] }
  | { readonly kind: 'selections'; readonly names: readonly string[] }
  | { readonly kind: 'figures'; readonly names: readonly string[] }
  | { readonly kind: 'sheet'; readonly name: string }
  | { readonly kind: 'chart'; readonly chart: ChartRequest };

/** A notebook with everything in it computed. */
export interface EvaluatedNotebook {
  /** The path as the user gave it. */
  readonly file: string;
  /** The file's name without its ending: `season`. */
  readonly name: string;
  readonly title: string;
  /** SHA-256 of the document, in hexadecimal. */
  readonly fingerprint: string;
  /** How its page writes numbers; `en-US` where nothing is said. */
  readonly locale?: LocaleName;
  readonly blocks: readonly Block[];
  readonly inputs: ReadonlyMap<string, EvaluatedInput>;
  readonly selections: ReadonlyMap<string, EvaluatedSelection>;
  readonly figures: ReadonlyMap<string, EvaluatedFigure>;
  readonly sheets: ReadonlyMap<string, EvaluatedSheet>;
  /** Every mistake in the document, in its order. */
  readonly problems: readonly Problem[];
}
