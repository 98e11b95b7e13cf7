import type { CarriedFile, CarriedInput, CarriedValue, PageResults } from '../results/page-results.js';

/** Why a value may differ between two renderings. */
export type Cause = 'data' | 'formula' | 'input' | 'choice' | 'resampling' | 'program';

/** Every cause, in the order in which they are told. */
export const causes: readonly Cause[] = ['data', 'formula', 'input', 'choice', 'resampling', 'program'];

/** Where a value now lies as its former interval sees it; null where it had none, or where there is no number now. */
export type Beyond = 'above' | 'below' | 'within' | null;

/** How far a value moved; null where either is no number, or their units differ. */
export interface Moved {
  /** Now less before, in the value's unit. */
  readonly by: number | null;
  /** The same as a share of the former value; null where that was zero. */
  readonly relative: number | null;
  readonly beyond: Beyond;
}

/** Why something differs: what may have moved it, and which names of the notebook that concerns. */
export interface Why {
  /** None where nothing that the pages carry explains it. */
  readonly causes: readonly Cause[];
  /** Inputs that differ under it. */
  readonly inputs: readonly string[];
  /** Names under it, itself included, whose definitions differ. */
  readonly formulas: readonly string[];
}

/** A figure that is not as it was; null on the side where the notebook has no such figure. */
export interface ChangedFigure extends Moved, Why {
  readonly name: string;
  readonly shownAs: string;
  readonly before: CarriedValue | null;
  readonly after: CarriedValue | null;
}

/** A cell of a sheet that is not as it was. */
export interface ChangedCell extends Moved {
  /** What names its row. */
  readonly row: string;
  readonly column: string;
  readonly before: string;
  readonly after: string;
}

/** A sheet that is not as it was. */
export interface ChangedSheet extends Why {
  readonly name: string;
  /** On which side the notebook has it. */
  readonly there: 'both' | 'before' | 'after';
  readonly rowsBefore: number;
  readonly rowsAfter: number;
  readonly rowsAdded: readonly string[];
  readonly rowsRemoved: readonly string[];
  /** Cells that differ in six digits, those that moved most first. None too where only more digits differ, or where the sheet is too long to be carried. */
  readonly cells: readonly ChangedCell[];
}

/** A definition that is not as it was; null on the side where the notebook has no such name. */
export interface ChangedDefinition {
  readonly name: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** An input that is not as it was. */
export interface ChangedInput {
  readonly name: string;
  readonly before: CarriedInput | null;
  readonly after: CarriedInput | null;
}

/** How the source files of two renderings differ. */
export interface ChangedFiles {
  readonly added: readonly CarriedFile[];
  readonly removed: readonly CarriedFile[];
  readonly changed: readonly { readonly before: CarriedFile; readonly after: CarriedFile }[];
  /** The files are the same and the records are not: crosswalks, or rows mended or withdrawn, made others of them. */
  readonly readOtherwise: boolean;
}

/** What changed from one rendering of a page to another, by how much, and what may have moved it. */
export interface Comparison {
  readonly before: PageResults;
  readonly after: PageResults;
  readonly files: ChangedFiles;
  readonly inputs: readonly ChangedInput[];
  readonly definitions: readonly ChangedDefinition[];
  readonly figures: readonly ChangedFigure[];
  readonly sheets: readonly ChangedSheet[];
}
