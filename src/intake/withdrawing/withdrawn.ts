/** A file that is left out of a store, since all its rows belong to seasons that were withdrawn. */
export interface WithdrawnFile {
  readonly file: string;
  readonly fingerprint: string;
  readonly crosswalk: string;
  /** SHA-256 of the crosswalk's text, in hexadecimal. */
  readonly rules: string;
  /** The place of the file's rule in its crosswalk. */
  readonly rule: number;
  readonly seasons: readonly number[];
  readonly read: number;
}

/** The seasons withdrawn from a store until they are called back, and the files left out for it. */
export interface Withdrawn {
  readonly seasons: readonly number[];
  readonly files: readonly WithdrawnFile[];
}

/** Nothing withdrawn. */
export const nothingWithdrawn: Withdrawn = { seasons: [], files: [] };
