import type { Element } from 'hast';
import type { ChartRequest, EvaluatedSheet, SheetColumn } from '../notebook/evaluated.js';
import type { DataTable } from './drawn.js';

/** A word that a chart's address may hold besides the sheet. */
export interface ChartOption {
  readonly word: string;
  /** A column of the sheet; a whole number; a list of values with commas between; or one of some words. */
  readonly takes: 'column' | 'number' | 'list' | readonly string[];
  readonly needed: boolean;
  /** What it does and what holds without it, as a sentence. */
  readonly meaning: string;
}

/** A column of the sheet and where it stands in each row. */
export interface PlacedColumn {
  readonly at: number;
  readonly column: SheetColumn;
}

/** A chart request whose options are checked: columns by their option's word, and the other options as written. */
export interface AskedChart {
  readonly request: ChartRequest;
  readonly sheet: EvaluatedSheet;
  readonly columns: ReadonlyMap<string, PlacedColumn>;
  readonly settings: ReadonlyMap<string, string>;
  /** How wide it is drawn, in pixels. */
  readonly width: number;
}

/** What a chart kind draws. */
export interface Drawing {
  readonly svg: Element;
  /** The caption, where what is drawn has to be named more closely than the request does. */
  readonly caption?: string;
  readonly reading: readonly string[];
  readonly specification: Readonly<Record<string, unknown>> | null;
  /** A table of its own, where the sheet's rows in their order would not say what is drawn. */
  readonly dataTable?: DataTable;
}

/** Why a request cannot be drawn as it stands: what was seen, what was wanted, and the remedy. */
export interface Unfit {
  readonly code: string;
  readonly seen: string;
  readonly wanted: string;
  readonly remedy: string;
}

/** One kind of chart. */
export interface ChartKind {
  readonly name: string;
  /** What it shows, as a sentence for the reference and for readers who do not see it. */
  readonly shows: string;
  readonly options: readonly ChartOption[];
  /** Whether it has no narrow drawing, since what it holds needs its width; no where absent. */
  readonly wideOnly?: true;
  readonly draw: (asked: AskedChart) => Drawing | Unfit;
}

/** Options that several kinds share. */
export const sharedOptions = {
  value: { word: 'value', takes: 'column', needed: true, meaning: 'The column of numbers to draw.' },
  low: {
    word: 'low',
    takes: 'column',
    needed: false,
    meaning: 'A column with the lower limits; without it the values’ own intervals are drawn.',
  },
  high: {
    word: 'high',
    takes: 'column',
    needed: false,
    meaning: 'A column with the upper limits; without it the values’ own intervals are drawn.',
  },
  by: {
    word: 'by',
    takes: 'column',
    needed: false,
    meaning: 'The column whose values each get a line of their own; without it, the second key column if there is one.',
  },
} as const satisfies Readonly<Record<string, ChartOption>>;
