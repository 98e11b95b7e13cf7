import type { KnownName } from '../../notebook/known-names.js';
import type { ShippedPart } from './shipped-part.js';

/** A line that stands otherwise in the file than at the desk; null where one of them has no such line. */
export interface DifferentLine {
  readonly line: number;
  readonly here: string | null;
  readonly inFile: string | null;
}

/** A part as it is sent: without its HTML where the page has it already. */
export type SentPart = Omit<ShippedPart, 'html'> & { readonly kind: string; readonly html?: string };

/** All that an open page must know to show a notebook as it is. */
export interface DeskState {
  /** The file's name. */
  readonly file: string;
  /** The mark of the text that these parts show: an edit is made for one text and refused by another. */
  readonly version: string;
  readonly parts: readonly SentPart[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Whether what stands here is not in the file yet. */
  readonly unsaved: boolean;
  /** What the file says otherwise, where it was changed elsewhere; null where it was not. */
  readonly elsewhere: { readonly fingerprint: string; readonly lines: readonly DifferentLine[] } | null;
  /** Why the edit that was asked for was not made; null where it was. */
  readonly refused: string | null;
  /** The line on which to look next; null for the one edited. */
  readonly line: number | null;
  /** Sent only where the page has others. */
  readonly names?: readonly KnownName[];
  readonly namesMark: string;
}

/** What a page tells with every request: the marks of what it has, by part. */
export interface Having {
  readonly version: string;
  readonly marks: Readonly<Record<string, string>>;
  readonly namesMark: string;
}
