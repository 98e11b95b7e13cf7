/**
 * Where something is wrong. `line` counts physical lines from 1 (0: the file as a whole). `column` counts fields of a
 * table row, or characters of a document line, from 1; null where no single column is at fault. `field` is the column's
 * name as the file's header spells it, where there is one.
 */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number | null;
  readonly field: string | null;
}

/**
 * What follows from a problem: `stops` the file, document or command it was found in; `sets aside` the row (or fails the
 * figure) it was found in; `notes` leaves everything as it is and says so.
 */
export type Severity = 'stops' | 'sets aside' | 'notes';

/** A mistake in the user's input, as data: what is wrong, where, what was seen, what was wanted, and what to do. */
export interface Problem {
  /** A short name in words joined by hyphens, the same wherever this kind of mistake is found: `not-a-number`. */
  readonly code: string;
  readonly severity: Severity;
  readonly place: Place;
  /** The text as it stands in the input; `withheld` for a private cell. */
  readonly seen: string;
  /** What would have been right, as a phrase that follows "wanted": `a temperature in °F`. */
  readonly wanted: string;
  /** What the user can do, as a sentence. */
  readonly remedy: string;
}

/** The place of a file as a whole. */
export function wholeFile(file: string): Place {
  return { file, line: 0, column: null, field: null };
}

/** The place of one character of a document. */
export function inDocument(file: string, line: number, column: number): Place {
  return { file, line, column, field: null };
}

/** The place of one cell of an exported table. */
export function inTable(file: string, line: number, column: number | null, field: string | null): Place {
  return { file, line, column, field };
}
