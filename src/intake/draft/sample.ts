import type { Encoding } from '../source/encoding.js';

/** A bounded part of one exported file, cut into rows: what a draft is made from. */
export interface Sample {
  /** The path below the folder of exports. */
  readonly file: string;
  readonly encoding: Encoding;
  /** Whether the encoding was told by the bytes themselves. */
  readonly encodingIsSure: boolean;
  readonly delimiter: 'comma' | 'semicolon' | 'tab' | 'pipe';
  /** The physical line of the header, from 1. */
  readonly headerLine: number;
  /** Over how many rows the header runs. */
  readonly headerSpan: number;
  /** The headings; a column without one is called by its place, as the reader calls it. */
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Whether cells are merged over several rows below the header of a sheet. */
  readonly hasMergedRows: boolean;
  /** Whether the rows are all that the file has. */
  readonly isWhole: boolean;
}
